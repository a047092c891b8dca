import activitySchema from "../../schemas/activity.schema.json";
import frontSchema from "../../schemas/front-matter.schema.json";
import { validateActivity, validateFrontMatter } from "../base/generated/validators";
import type { Range } from "../base/range";
import { Relation } from "../match/relation";
import type { ActivityBlock, Entry, Section, Unit } from "../unit/unit";
import type { ActivityKind, DealRequest } from "./contract";
import { kindNamed } from "./kinds";
import { type CommonOptions, defaultsOf, type OptionFault, type OptionSchema, resolve, sift } from "./options";

/** What the unit's front matter says, as far as it is valid. */
export interface UnitFacts {
  readonly title?: string;
  /** BCP 47; `und` where the unit does not say. */
  readonly teaches: string;
  readonly explains: string;
  readonly classes: readonly number[];
}

/** A section that `from` names and that the unit does not have. */
export interface UnknownSection {
  readonly name: string;
  readonly range: Range;
}

/** One activity block, understood as far as it can be. */
export interface PlannedActivity {
  readonly index: number;
  readonly block: ActivityBlock;
  readonly title: string;
  readonly kind?: ActivityKind;
  readonly faults: readonly OptionFault[];
  readonly unknown: readonly UnknownSection[];
  readonly sections: readonly Section[];
  /** Undefined where the kind is unknown or an option leaves nothing to deal from. */
  readonly request?: DealRequest;
}

export interface UnitPlan {
  readonly facts: UnitFacts;
  readonly faults: readonly OptionFault[];
  readonly relation: Relation;
  readonly activities: readonly PlannedActivity[];
}

/** Options that a unit's front matter may set for all of its activities. */
const inherited = Object.keys(frontSchema.properties).filter(
  (key) => key !== "title" && key in activitySchema.properties,
);

/** Works out what each activity of a unit asks for. Wrong options are left out and named in `faults`. */
export function planUnit(unit: Unit): UnitPlan {
  const front = sift(unit.front, validateFrontMatter);
  const facts = factsOf(front.good);
  const relation = new Relation(unit.sections.flatMap((section) => section.pairs));
  const shared = front.good.filter((entry) => inherited.includes(entry.key));
  const titles = new Titles();
  const activities = unit.activities.map((block, index) =>
    planActivity(unit, block, index, { facts, relation, shared, titles }),
  );
  return { facts, faults: front.faults, relation, activities };
}

interface Around {
  readonly facts: UnitFacts;
  readonly relation: Relation;
  readonly shared: readonly Entry[];
  readonly titles: Titles;
}

function planActivity(unit: Unit, block: ActivityBlock, index: number, around: Around): PlannedActivity {
  const make = valueIn(block.options.entries, "make");
  const kind = kindNamed(make);
  const { good, faults } = sift(block.options, kind?.validate ?? validateActivity);
  const { sections, unknown } = findSections(unit, block, good);
  const heading = sections[0]?.name ?? "";
  const title = around.titles.take(
    String(valueIn(good, "title") ?? [heading, kind?.name ?? "activity"].filter(Boolean).join(" – ")),
  );
  const planned = { index, block, title, faults, unknown, sections };
  if (!kind) return planned;
  const options = resolve<CommonOptions>(
    [good, around.shared],
    defaultsFor(kind.schema),
    block.options,
    (value): value is CommonOptions => kind.validate(value),
  );
  if (!options || sections.length === 0) return { ...planned, kind };
  const { relation, facts } = around;
  return { ...planned, kind, request: { ...facts, unit, index, block, title, sections, relation, options } };
}

function defaultsFor(schema: OptionSchema): Record<string, unknown> {
  return { ...defaultsOf(activitySchema), ...defaultsOf(schema) };
}

function valueIn(entries: readonly Entry[], key: string): unknown {
  return entries.find((entry) => entry.key === key)?.value;
}

function factsOf(entries: readonly Entry[]): UnitFacts {
  const text = (key: string): string | undefined => {
    const value = valueIn(entries, key);
    return typeof value === "string" ? value : undefined;
  };
  const classes = valueIn(entries, "classes");
  const title = text("title");
  return {
    ...(title === undefined ? {} : { title }),
    teaches: text("teaches") ?? "und",
    explains: text("explains") ?? "en",
    classes: Array.isArray(classes) ? classes.map(Number) : [],
  };
}

function findSections(
  unit: Unit,
  block: ActivityBlock,
  good: readonly Entry[],
): { sections: readonly Section[]; unknown: readonly UnknownSection[] } {
  const from = good.find((entry) => entry.key === "from");
  if (!from) {
    const own = unit.sections[block.section];
    return { sections: own ? [own] : [], unknown: [] };
  }
  const names = Array.isArray(from.value) ? from.value.map(String) : [String(from.value)];
  const sections: Section[] = [];
  const unknown: UnknownSection[] = [];
  names.forEach((name, i) => {
    const found = unit.sections.find((section) => section.name === name.replace(/\s+/gu, " ").trim());
    if (found) sections.push(found);
    else unknown.push({ name, range: from.items[i] ?? from.valueRange });
  });
  return { sections, unknown };
}

/** Makes titles unique by numbers: “Food – tiles”, “Food – tiles 2”. */
class Titles {
  private readonly taken = new Set<string>();

  take(title: string): string {
    let unique = title;
    for (let i = 2; this.taken.has(unique); i++) unique = `${title} ${i}`;
    this.taken.add(unique);
    return unique;
  }
}
