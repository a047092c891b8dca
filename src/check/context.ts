import type { Deal, Dealt, ItemShape, Press } from "../activities/contract";
import { hasClaims } from "../activities/dealt-claims";
import type { PlannedActivity, UnitPlan } from "../activities/plan";
import type { Section, Unit } from "../unit/unit";

/** An activity that was dealt, with what was planned. */
export interface CheckedActivity {
  readonly plan: PlannedActivity;
  readonly dealt: Dealt<Deal>;
}

/** What general rules look at. */
export interface CheckContext {
  readonly unit: Unit;
  readonly plan: UnitPlan;
  readonly activities: readonly CheckedActivity[];
  readonly press: Press;
  /** Deals that stand in the pieces files of the output folder, other than this unit's own current ones. */
  readonly printed: readonly PrintedDeal[];
  /** Severity or `off` by code; codes that are not named keep what their rule says. */
  readonly severities: ReadonlyMap<string, string>;
}

/** A deal of an earlier or another export. */
export interface PrintedDeal {
  readonly unit: string;
  readonly code: string;
  readonly activity: string;
  readonly level: string;
  readonly version: number;
  readonly seed: number;
  readonly attempt: number;
  /** It is a current deal of this very unit's pieces file. */
  readonly own: boolean;
}

const inPlan = new WeakMap<UnitPlan, readonly Section[]>();

/** Sections that some activity uses, in the unit's order. Rules ask often, so each plan is looked through once. */
export function sectionsInUse({ unit, plan }: CheckContext): readonly Section[] {
  const known = inPlan.get(plan);
  if (known) return known;
  const used = new Set(plan.activities.flatMap((activity) => activity.sections));
  const sections = unit.sections.filter((section) => used.has(section));
  inPlan.set(plan, sections);
  return sections;
}

/** Whether a place stands in a section that some activity uses, of which one sorts the piles, or takes items of a shape. */
export function inUse(context: CheckContext, offset: number, of: "any" | "piles" | ItemShape = "any"): boolean {
  const at = ({ range }: Section): boolean => range.start <= offset && offset < range.end;
  if (of === "any") return sectionsInUse(context).some(at);
  return context.plan.activities.some(({ kind, sections }) => {
    // What kind it was to be may not be known yet.
    const takes = of === "piles" ? kind?.sortsPiles : !kind || kind.takes.includes(of);
    return takes && sections.some(at);
  });
}

/** A section with no more than activities take of it: notes may have the shape of an item too. */
export function takenOf(context: CheckContext, section: Section): Section {
  const takes = (shape: "piles" | ItemShape): boolean => inUse(context, section.range.start, shape);
  const { pairs, statements, events, piles, tables } = section;
  return {
    ...section,
    pairs: takes("pairs") ? pairs : [],
    statements: takes("statements") ? statements : [],
    events: takes("events") ? events : [],
    piles: takes("piles") ? piles : [],
    tables: takes("tables") ? tables : [],
  };
}

/** Whether an activity deals statements of a section. */
export function dealsStatements({ activities }: CheckContext, section: Section): boolean {
  return activities.some(({ plan, dealt }) => plan.sections.includes(section) && hasClaims(dealt));
}
