import type { ItemShape } from "../activities/contract";
import type { PlannedActivity, UnitPlan } from "../activities/plan";
import type { Finding } from "../base/finding";
import type { Range } from "../base/range";
import type { Section, Unit } from "../unit/unit";

/**
 * Those of some findings that concern the named activities: about them, about items that they use, and about what can be put down
 * to no item. `only` is a kind or a title; without it every finding counts. Errors among them keep an export back.
 */
export function concerning(
  findings: readonly Finding[],
  unit: Unit,
  plan: UnitPlan,
  only: string | undefined,
): readonly Finding[] {
  if (only === undefined) return findings;
  const made = plan.activities.filter(({ kind, title }) => only === kind?.name || only === title);
  return findings.filter(({ activities, range, also = [] }) =>
    activities
      ? made.some(({ index }) => activities.includes(index))
      : [range, ...also].some((place) => concerns(place, unit, plan, made)),
  );
}

function concerns(range: Range, unit: Unit, { activities }: UnitPlan, made: readonly PlannedActivity[]): boolean {
  const own = activities.find(({ block }) => holds(block.fence, range));
  if (own) return made.includes(own);
  // A plan of stations stands in the guide, which is only written with the whole unit.
  if (unit.stations.some(({ fence }) => holds(fence, range))) return false;
  const section = unit.sections.find((each) => holds(each.range, range));
  if (!section) return true;
  const shape = shapeAt(section, range);
  return made.some(
    ({ kind, sections }) =>
      sections.includes(section) && kind !== undefined && (shape === undefined || kind.takes.includes(shape)),
  );
}

/** The shape of the item that a place stands in; undefined where it stands in none. */
function shapeAt({ pairs, statements, events, tables }: Section, place: Range): ItemShape | undefined {
  if (statements.some(({ block }) => holds(block, place))) return "statements";
  if (pairs.some(({ block }) => holds(block, place))) return "pairs";
  if (events.some(({ block }) => holds(block, place))) return "events";
  return tables.some(({ range }) => holds(range, place)) ? "tables" : undefined;
}

function holds({ start, end }: Range, place: Range): boolean {
  return start <= place.start && place.start < end;
}
