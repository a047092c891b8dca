import { foreignName } from "../../../activities/foreign";
import type { Range } from "../../../base/range";
import type { Entry, Section, Tie, Unit } from "../../../unit/unit";
import { yamlText } from "../../completion/options";
import { cellText, headingText, personTitle, tieTarget } from "./writing";

/** Units that may name each other, by a key of their file. */
export interface World {
  readonly units: ReadonlyMap<string, Unit>;
  /** The key of the file that a path written in another file means. */
  resolve(file: string, path: string): string | undefined;
}

/** What has a name, by its place in its unit: counted from 0. */
export type Named = { readonly file: string; readonly section: number } & (
  | { readonly what: "section" }
  /** The first pile of that name in its section; all of one name are one. */
  | { readonly what: "pile"; readonly pile: number }
  | { readonly what: "column"; readonly table: number; readonly column: number }
  | { readonly what: "person"; readonly table: number; readonly row: number }
);

/** A place where something is named. */
export interface Mention {
  readonly named: Named;
  readonly file: string;
  /** The name itself, as written. */
  readonly range: Range;
  /** Where the name is given rather than used. */
  readonly defines: boolean;
  /** What a new name takes the place of, and how it is written there; undefined where it cannot be. */
  readonly place: Range;
  write(name: string): string | undefined;
}

/** The key by which two are the same. */
export function keyOf(named: Named): string {
  const { file, section, what } = named;
  const inner =
    what === "section"
      ? []
      : what === "pile"
        ? [named.pile]
        : [named.table, what === "column" ? named.column : named.row];
  return [what, section, ...inner, file].join(" ");
}

/** All names in one file, in no order. What names nothing that is there is left out. */
export function mentionsIn(world: World, file: string): readonly Mention[] {
  const unit = world.units.get(file);
  if (!unit) return [];
  return [
    ...unit.sections.flatMap((section, index) => definitionsIn(unit, file, section, index)),
    ...unit.activities.flatMap(({ options }) => {
      const from = options.entries.find(({ key }) => key === "from");
      return from ? fromMentions(world, unit, file, from) : [];
    }),
    ...tiesOf(unit).flatMap((tie) => tieMentions(unit, file, tie)),
  ];
}

/** The smallest name at an offset. */
export function mentionAt(world: World, file: string, offset: number): Mention | undefined {
  return mentionsIn(world, file)
    .filter(({ range }) => range.start <= offset && offset <= range.end)
    .sort((a, b) => a.range.end - a.range.start - (b.range.end - b.range.start))[0];
}

/** All places that name one thing, over all files; those that give the name come first. */
export function mentionsOf(world: World, named: Named): readonly Mention[] {
  const key = keyOf(named);
  const all = [...world.units.keys()].flatMap((file) => mentionsIn(world, file));
  const same = all.filter((mention) => keyOf(mention.named) === key);
  return [...same.filter(({ defines }) => defines), ...same.filter(({ defines }) => !defines)];
}

/** The name as it is read; undefined where the unit does not have it. */
export function nameOf(world: World, named: Named): string | undefined {
  const section = world.units.get(named.file)?.sections[named.section];
  switch (named.what) {
    case "section":
      return section?.name;
    case "pile":
      return section?.piles[named.pile]?.name;
    case "column":
      return section?.tables[named.table]?.columns[named.column]?.text;
    case "person":
      return section?.tables[named.table]?.persons[named.row]?.text;
  }
}

function definitionsIn(unit: Unit, file: string, section: Section, index: number): readonly Mention[] {
  const mention = (named: Named, range: Range, write: Mention["write"]): Mention => ({
    named,
    file,
    range,
    defines: true,
    place: range,
    write,
  });
  const at = { file, section: index };
  const cell = (name: string): string | undefined => cellText(name);
  return [
    mention({ ...at, what: "section" }, headingRange(unit, section.heading), headingText),
    ...section.piles.map(({ name, heading }) => {
      const pile = section.piles.findIndex((each) => each.name === name);
      return mention({ ...at, what: "pile", pile }, headingRange(unit, heading), headingText);
    }),
    ...section.tables.flatMap(({ columns, persons }, table) => [
      ...columns.map(({ range }, column) => mention({ ...at, what: "column", table, column }, range, cell)),
      ...persons.map(({ range }, row) => mention({ ...at, what: "person", table, row }, range, cell)),
    ]),
  ].filter(({ range }) => range.end > range.start);
}

/** A heading's text without the comments at its end. */
function headingRange({ text }: Unit, { start, end }: Range): Range {
  const written = text.slice(start, end).replace(/(\s*<!--.*?-->)+\s*$/u, "");
  return { start, end: start + written.length };
}

function fromMentions(world: World, unit: Unit, file: string, from: Entry): readonly Mention[] {
  const list = Array.isArray(from.value);
  const values: readonly unknown[] = Array.isArray(from.value) ? from.value : [from.value];
  const flow = list && unit.text.charAt(from.valueRange.start) === "[";
  return values.flatMap((value, i): Mention[] => {
    const place = list ? from.items[i] : from.valueRange;
    if (typeof value !== "string" || !place) return [];
    const other = foreignName(value);
    const target = other ? world.resolve(file, other.path) : file;
    const wanted = (other?.section ?? value).replace(/\s+/gu, " ").trim();
    const section = target === undefined ? undefined : world.units.get(target)?.sections;
    const index = section?.findIndex(({ name }) => name === wanted) ?? -1;
    if (target === undefined || index < 0) return [];
    const raw = unit.text.slice(place.start, place.end);
    const quote = /^["']/.exec(raw)?.[0] ?? "";
    const inner = { start: place.start + quote.length, end: place.end - quote.length };
    const hash = other ? raw.indexOf("#") + 1 : 0;
    const range = hash > 0 ? { start: place.start + hash, end: inner.end } : inner;
    const write = (name: string): string => {
      const whole = other ? `${other.path}#${name}` : name;
      if (quote === '"') return JSON.stringify(whole);
      return quote === "'" ? `'${whole.replaceAll("'", "''")}'` : yamlText(whole, flow);
    };
    return [{ named: { what: "section", file: target, section: index }, file, range, defines: false, place, write }];
  });
}

/** The ties of all items, wherever they stand. */
export function tiesOf(unit: Unit): readonly Tie[] {
  return unit.sections.flatMap(({ pairs, statements, events, piles }) => [
    ...[...pairs, ...statements, ...events, ...events.flatMap(({ free }) => free)].flatMap(({ ties }) => ties),
    ...piles.flatMap(({ members }) => members.flatMap(({ shape, item }) => (shape === "text" ? item.ties : []))),
  ]);
}

/** The column that a tie leads to; undefined where there is none, or more than one. */
export function columnOf(
  unit: Unit,
  { section, column }: Pick<Tie, "section" | "column">,
): { readonly section: number; readonly table: number; readonly column: number } | undefined {
  const found = unit.sections.flatMap(({ name, tables }, index) =>
    section !== undefined && name !== section
      ? []
      : tables.flatMap(({ columns }, table) =>
          columns.flatMap(({ text }, at) => (text === column ? [{ section: index, table, column: at }] : [])),
        ),
  );
  return found.length === 1 ? found[0] : undefined;
}

function tieMentions(unit: Unit, file: string, tie: Tie): readonly Mention[] {
  const found = columnOf(unit, tie);
  if (!found) return [];
  const { text } = unit;
  const { target } = tie;
  const angled = text.charAt(target.start - 1) === "<";
  const place = angled ? { start: target.start - 1, end: target.end + 1 } : target;
  const slash = tie.section === undefined ? -1 : text.slice(target.start, target.end).indexOf("/");
  const at = { file, section: found.section };
  const use = (named: Named, range: Range, where: Range, write: Mention["write"]): Mention => ({
    named,
    file,
    range,
    defines: false,
    place: where,
    write,
  });
  const column = use(
    { ...at, what: "column", table: found.table, column: found.column },
    { start: target.start + slash + (slash < 0 ? 2 : 1), end: target.end },
    place,
    (name) => tieTarget(name, tie.section),
  );
  const section =
    tie.section === undefined
      ? []
      : [
          use(
            { ...at, what: "section" },
            { start: target.start + 1, end: slash < 0 ? target.end : target.start + slash },
            place,
            (name) => (name.includes("/") ? undefined : tieTarget(tie.column, name)),
          ),
        ];
  const row = unit.sections[found.section]?.tables[found.table]?.persons.findIndex((each) => each.text === tie.person);
  const after = text.slice(place.end, tie.range.end);
  const title = /^\s+(["'(][\s\S]*["')])\)$/u.exec(after)?.[1];
  if (row === undefined || row < 0 || title === undefined) return [column, ...section];
  const start = place.end + after.indexOf(title);
  const whole = { start, end: start + title.length };
  const inner = { start: start + 1, end: whole.end - 1 };
  return [column, ...section, use({ ...at, what: "person", table: found.table, row }, inner, whole, personTitle)];
}
