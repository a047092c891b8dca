import activitySchema from "../../schemas/activity.schema.json";
import frontSchema from "../../schemas/front-matter.schema.json";
import { validateActivity, validateFrontMatter, validateSettings } from "../base/generated/validators";
import type { Range } from "../base/range";
import { finished, mapped, type Steps } from "../base/steps";
import { Relation } from "../match/relation";
import type { ActivityBlock, Entry, Mapping, Section, Unit } from "../unit/unit";
import type { ActivityKind, DealRequest } from "./contract";
import { adopt, foreignName, foreignUnit } from "./foreign";
import { kindNamed } from "./kinds";
import {
  type CommonOptions,
  defaultsOf,
  type OptionFault,
  type OptionSchema,
  type ResolvedOptions,
  resolve,
  sift,
} from "./options";
import { ownSeed } from "./own-seed";
import { keysIn, pairsOf } from "./supply";

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
  /** The other unit's file, where that is what is missing. */
  readonly file?: string;
  /** What the other unit has. */
  readonly among?: readonly string[];
  /** The section of the other unit that has a deeper heading of this name. */
  readonly inside?: { readonly section: string; readonly heading: string };
  /** The other unit's file, where it is named with no section of it, or with one behind another sign than `#`. */
  readonly whole?: { readonly path: string; readonly section?: string };
}

/** One activity block, understood as far as it can be. */
export interface PlannedActivity {
  readonly index: number;
  readonly block: ActivityBlock;
  readonly title: string;
  readonly kind?: ActivityKind;
  readonly faults: readonly OptionFault[];
  readonly unknown: readonly UnknownSection[];
  /** Its options cannot all be read, so that what it is about is not known. */
  readonly lost: boolean;
  readonly sections: readonly Section[];
  /** Undefined where the kind is unknown or an option leaves nothing to deal from. */
  readonly request?: DealRequest;
}

export interface UnitPlan {
  readonly facts: UnitFacts;
  readonly faults: readonly OptionFault[];
  readonly relation: Relation;
  readonly activities: readonly PlannedActivity[];
  /** Severity or `off` by code, as the unit and the settings above it say. */
  readonly severities: ReadonlyMap<string, string>;
  /** Places where sections of other units are named: what is found in those stands here, and cannot be mended here. */
  readonly adopted: readonly Range[];
}

/** Options that a unit's front matter may set for all of its activities. */
const inherited = Object.keys(frontSchema.properties).filter(
  (key) => key !== "title" && key in activitySchema.properties,
);

/** What stands outside of the unit and says how to plan it. */
export interface PlanContext {
  /** `cutwork.yml` files read, the nearest first. */
  readonly settings: readonly Mapping[];
  /** Other units by their path as written in `from`. */
  readonly units: ReadonlyMap<string, Unit>;
}

/** Works out what each activity of a unit asks for. Wrong options are left out and named in `faults`. */
export function planUnit(unit: Unit, context: PlanContext = { settings: [], units: new Map() }): UnitPlan {
  return finished(planning(unit, context));
}

/** The same with a pause after each section and activity. */
export function* planning(unit: Unit, { settings, units }: PlanContext): Steps<UnitPlan, undefined> {
  const front = sift(unit.front, validateFrontMatter);
  const outer = settings.map((mapping) => sift(mapping, validateSettings).good);
  const facts = factsOf([front.good, ...outer]);
  const shared = [front.good, ...outer].map((layer) => layer.filter((entry) => inherited.includes(entry.key)));
  const sources = yield* mapped(unit.activities, (block) => {
    const kind = kindNamed(valueIn(block.options.entries, "make"));
    const { good, faults } = sift(block.options, kind?.validate ?? validateActivity);
    // An activity whose options cannot all be read, or whose `from` is wrong, would be about the wrong words.
    const lost = block.options.broken || faults.some(({ entry }) => entry.key === "from");
    const found = lost ? { sections: [], unknown: [], lost } : findSections(unit, block, good, units);
    return { lost: false, block, kind, good, faults, ...found };
  });
  const foreign = [...new Set(sources.flatMap(({ sections }) => sections))].filter(
    (section) => !unit.sections.includes(section),
  );
  const sections = [...unit.sections, ...foreign];
  const keys = yield* mapped(sections, keysIn);
  const relation = new Relation(sections.flatMap(pairsOf), keys);
  yield;
  const titles = new Titles();
  const activities = yield* mapped(sources, (source, index) => {
    const nth = sources.slice(0, index).filter(({ kind }) => kind === source.kind).length;
    return planActivity(unit, { ...source, nth }, index, { facts, relation, shared, titles });
  });
  const severities = new Map<string, string>();
  for (const layer of [...outer].reverse().concat([front.good])) {
    for (const [code, severity] of Object.entries(valueIn(layer, "severities") ?? {}))
      severities.set(code, String(severity));
  }
  const adopted = foreign.map(({ heading }) => heading);
  return { facts, faults: front.faults, relation, activities, severities, adopted };
}

interface Around {
  readonly facts: UnitFacts;
  readonly relation: Relation;
  readonly shared: readonly (readonly Entry[])[];
  readonly titles: Titles;
}

interface Source {
  readonly block: ActivityBlock;
  readonly kind: ActivityKind | undefined;
  /** How many of its kind stand before it in the unit. */
  readonly nth: number;
  readonly good: readonly Entry[];
  readonly faults: readonly OptionFault[];
  readonly sections: readonly Section[];
  readonly unknown: readonly UnknownSection[];
  readonly lost: boolean;
}

function planActivity(unit: Unit, source: Source, index: number, around: Around): PlannedActivity {
  const { block, kind, nth, good, faults, sections, unknown, lost } = source;
  const heading = sections[0]?.name ?? "";
  const written = valueIn(good, "title") ?? [heading, kind?.name ?? "activity"].filter(Boolean).join(" – ");
  const title = around.titles.take(String(written).replace(/\s+/gu, " ").trim());
  const planned = { index, block, title, faults, unknown, lost, sections };
  if (!kind) return planned;
  const options = resolve<CommonOptions>(
    [good, ...around.shared],
    defaultsFor(kind.schema),
    block.options,
    (value): value is CommonOptions => kind.validate(value),
  );
  if (!options || sections.length === 0) return { ...planned, kind };
  const { relation, facts } = around;
  return {
    ...planned,
    kind,
    request: {
      ...facts,
      refused: faults.map(({ entry }) => entry.key),
      unit,
      index,
      block,
      title,
      sections,
      relation,
      options: good.some(({ key }) => key === "seed") ? options : withSeed(options, nth),
    },
  };
}

function withSeed(options: ResolvedOptions<CommonOptions>, nth: number): ResolvedOptions<CommonOptions> {
  return { ...options, value: { ...options.value, seed: ownSeed(options.value.seed, nth) } };
}

const defaults = new WeakMap<OptionSchema, Readonly<Record<string, unknown>>>();

function defaultsFor(schema: OptionSchema): Readonly<Record<string, unknown>> {
  const known = defaults.get(schema) ?? { ...defaultsOf(activitySchema), ...defaultsOf(schema) };
  defaults.set(schema, known);
  return known;
}

function valueIn(entries: readonly Entry[], key: string): unknown {
  return entries.find((entry) => entry.key === key)?.value;
}

/** The facts of several layers, the first that states one winning. */
function factsOf(layers: readonly (readonly Entry[])[]): UnitFacts {
  const entries = layers.flat();
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
  units: ReadonlyMap<string, Unit>,
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
    const range = from.items[i] ?? from.valueRange;
    const other = foreignName(name);
    const own = unit.sections.some((section) => section.name === name.replace(/\s+/gu, " ").trim());
    const whole = own ? undefined : foreignUnit(name);
    const path = (other ?? whole)?.path;
    const source = path === undefined ? unit : units.get(path);
    const trimmed = (other?.section ?? name).replace(/\s+/gu, " ").trim();
    const found = whole ? undefined : source?.sections.find((section) => section.name === trimmed);
    const around = other && source?.sections.find(({ piles }) => piles.some((pile) => pile.name === trimmed));
    if (found) sections.push(other ? adopt(found, range, other.path) : found);
    else
      unknown.push({
        name,
        range,
        ...(path !== undefined && !source ? { file: path } : {}),
        ...(path !== undefined && source ? { among: source.sections.map((section) => `${path}#${section.name}`) } : {}),
        ...(around ? { inside: { section: `${path}#${around.name}`, heading: trimmed } } : {}),
        ...(whole ? { whole } : {}),
      });
  });
  return { sections, unknown };
}

/** Paths of other units that the activities of a unit name. */
export function foreignPaths(unit: Unit): string[] {
  const names = unit.activities.flatMap(({ options }) => valueIn(options.entries, "from") ?? []).flat();
  return [...new Set(names.flatMap((name) => (foreignName(String(name)) ?? foreignUnit(String(name)))?.path ?? []))];
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
