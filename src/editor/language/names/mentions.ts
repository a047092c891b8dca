import { setOption } from "../../../activities/edits";
import { foreignName } from "../../../activities/foreign";
import { kindNamed } from "../../../activities/kinds";
import type { Range } from "../../../base/range";
import type { ActivityBlock, Section, Tie, Unit } from "../../../unit/unit";
import { yamlText } from "../../completion/options";
import { entryOf, listedIn, sectionNamed, sectionsOf, useOf } from "./listed";
import { keyOf, type Mention, type Named, type World } from "./named";
import { samePile } from "./piles";
import { activitiesOf, stationNamed } from "./titles";
import { cellText, headingText, personTitle, tieTarget } from "./writing";

/** All names in one file, in no order. What names nothing that is there is left out. */
export function mentionsIn(world: World, file: string): readonly Mention[] {
  const unit = world.units.get(file);
  if (!unit) return [];
  return [
    ...unit.sections.flatMap((section, index) => definitionsIn(world, unit, file, section, index)),
    ...unit.activities.flatMap((block, index) => [
      ...titleMentions(unit, file, block, index),
      ...fromMentions(world, unit, file, block),
      ...pileMentions(world, unit, file, block),
    ]),
    ...unit.stations.flatMap((block) => stationMentions(world, unit, file, block)),
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
  const key = keyOf(firstOf(world, named));
  const all = [...world.units.keys()].flatMap((file) => mentionsIn(world, file));
  const same = all.filter((mention) => keyOf(mention.named) === key);
  return [...same.filter(({ defines }) => defines), ...same.filter(({ defines }) => !defines)];
}

/** Of headings that name one pile, the one that stands for all. */
function firstOf(world: World, named: Named): Named {
  const name = named.what === "pile" ? nameOf(world, named) : undefined;
  return name === undefined ? named : (samePile(world, named, name)[0] ?? named);
}

/** The files in which something gets its name. */
export function filesOf(world: World, named: Named): readonly string[] {
  const name = named.what === "pile" ? nameOf(world, named) : undefined;
  const places = name === undefined ? [named] : samePile(world, named, name);
  return [...new Set(places.map(({ file }) => file))];
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
    case "activity":
      return activitiesOf(world, named.file)[named.activity]?.title;
  }
}

function definitionsIn(world: World, unit: Unit, file: string, section: Section, index: number): readonly Mention[] {
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
    ...section.piles.flatMap(({ name, heading }) =>
      samePile(world, at, name)
        .slice(0, 1)
        .map((first) => mention(first, headingRange(unit, heading), headingText)),
    ),
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

/** Where an activity gets its title: the option, or the fence's word where section and kind make the title. */
function titleMentions(unit: Unit, file: string, block: ActivityBlock, activity: number): readonly Mention[] {
  const named: Named = { what: "activity", file, section: block.section, activity };
  const title = entryOf(block, "title");
  const [listed] = title ? listedIn(unit, title) : [];
  if (listed) return [{ ...useOf(named, file, listed), defines: true }];
  const word = unit.text.indexOf("activity", block.fence.start);
  const place = setOption(block, unit.text, "title", "").range;
  const write = (name: string): string => setOption(block, unit.text, "title", yamlText(name, false)).text;
  return [{ named, file, range: { start: word, end: word + "activity".length }, defines: true, place, write }];
}

function fromMentions(world: World, unit: Unit, file: string, block: ActivityBlock): readonly Mention[] {
  const from = entryOf(block, "from");
  return (from ? listedIn(unit, from) : []).flatMap((listed): Mention[] => {
    const found = sectionNamed(world, file, listed.name);
    if (!found) return [];
    const other = foreignName(listed.name);
    const { inner, place } = listed;
    const sign = other && /#\s*/u.exec(unit.text.slice(place.start, place.end));
    const hash = sign ? sign.index + sign[0].length : 0;
    const range = hash > 0 ? { start: place.start + hash, end: inner.end } : inner;
    const write = (name: string): string => listed.write(other ? `${other.path}#${name}` : name);
    return [{ ...useOf({ what: "section", ...found }, file, listed), range, write }];
  });
}

/** Piles that the option of an activity names, of the sections that it sorts. */
function pileMentions(world: World, unit: Unit, file: string, block: ActivityBlock): readonly Mention[] {
  const piles = entryOf(block, "piles");
  if (!piles || !Array.isArray(piles.value) || !kindNamed(entryOf(block, "make")?.value)?.sortsPiles) return [];
  const sections = sectionsOf(world, file, block);
  return listedIn(unit, piles).flatMap((listed) =>
    sections
      .flatMap((at) => samePile(world, at, listed.name).slice(0, 1))
      .slice(0, 1)
      .map((first) => useOf(first, file, listed)),
  );
}

function stationMentions(world: World, unit: Unit, file: string, block: ActivityBlock): readonly Mention[] {
  const stations = entryOf(block, "stations");
  return (stations ? listedIn(unit, stations) : []).flatMap((listed): Mention[] => {
    const found = stationNamed(world, file, listed.name);
    const section = found && unit.activities[found.index]?.section;
    if (!found || section === undefined) return [];
    const use = useOf({ what: "activity", file, section, activity: found.index }, file, listed);
    // What names the kind still does after the title changed.
    return [found.byKind ? { ...use, write: () => unit.text.slice(listed.place.start, listed.place.end) } : use];
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
