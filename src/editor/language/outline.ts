import type { Range } from "../../base/range";
import type { Pile, Section, Unit } from "../../unit/unit";
import { activitiesIn, type Member, membersOf, pileRange, textEnd, within } from "./members";

export type OutlineKind =
  | "section"
  | "pile"
  | "pair"
  | "statement"
  | "event"
  | "text"
  | "table"
  | "column"
  | "activity"
  | "stations";

/** One line of the outline. `select` lies within `range`, and so do the children's ranges. */
export interface OutlineEntry {
  readonly kind: OutlineKind;
  readonly name: string;
  /** Counts, or what else is worth knowing in a few words; may be empty. */
  readonly detail: string;
  readonly range: Range;
  readonly select: Range;
  readonly children: readonly OutlineEntry[];
}

/** What the outline takes from the last dealing, by index of the activity. */
export interface ActivityFacts {
  readonly index: number;
  readonly title: string;
  readonly summary: string;
}

export function outlineOf(unit: Unit, facts: readonly ActivityFacts[]): readonly OutlineEntry[] {
  const above = [...activityEntries(unit, -1, facts), ...stationEntries(unit, -1)];
  const sections = unit.sections.map((section, index) => sectionEntry(unit, section, index, facts));
  return [...inOrder(above), ...sections];
}

function sectionEntry(unit: Unit, section: Section, index: number, facts: readonly ActivityFacts[]): OutlineEntry {
  const piles = section.piles.map((pile) => ({ pile, range: pileRange(unit, pile) }));
  const inPiles = new Set(section.piles.flatMap(({ members }) => members.map(({ item }) => item)));
  const lone = membersOf(section).filter((member) => member.shape === "table" || !inPiles.has(member.item));
  const activities = [...activityEntries(unit, index, facts), ...stationEntries(unit, index)];
  const pileEntries = piles.map(({ pile, range }) => {
    // A table or an activity between a pile's items stands under it, so that ranges nest as the text does.
    const inner = [...lone.map((member) => memberEntry(unit, member)), ...activities].filter((entry) =>
      within(range, entry.range),
    );
    return pileEntry(unit, pile, range, inner);
  });
  const free = [...lone.map((member) => memberEntry(unit, member)), ...activities].filter(
    (entry) => !piles.some(({ range }) => within(range, entry.range)),
  );
  return {
    kind: "section",
    name: section.name || "Section",
    detail: countsOf(unit, section, index),
    range: { start: section.range.start, end: Math.max(textEnd(unit, section.range), section.heading.end) },
    select: section.heading,
    children: inOrder([...free, ...pileEntries]),
  };
}

function pileEntry(unit: Unit, pile: Pile, range: Range, inner: readonly OutlineEntry[]): OutlineEntry {
  const members = pile.members.map((member) => memberEntry(unit, { ...member, block: member.item.block }));
  return {
    kind: "pile",
    name: pile.name || "Pile",
    detail: count(pile.members.length, "item"),
    range,
    select: pile.heading,
    children: inOrder([...members, ...inner]),
  };
}

function memberEntry(unit: Unit, member: Member): OutlineEntry {
  const range = { start: member.block.start, end: textEnd(unit, member.block) };
  const { name, detail, select } = labelOf(member);
  const children =
    member.shape === "table"
      ? member.table.columns.map(
          ({ text, range: place }): OutlineEntry => ({
            kind: "column",
            name: text,
            detail: "",
            range: place,
            select: place,
            children: [],
          }),
        )
      : [];
  return { kind: member.shape, name: name || "…", detail, range, select, children };
}

function labelOf(member: Member): { readonly name: string; readonly detail: string; readonly select: Range } {
  switch (member.shape) {
    case "pair": {
      const { left, right, range } = member.item;
      return { name: left.answers[0].text, detail: right.answers[0].text, select: range };
    }
    case "statement":
      return { name: member.item.text, detail: member.item.truth ? "true" : "false", select: member.item.range };
    case "event": {
      const { text, free, range } = member.item;
      return { name: text, detail: free.length > 0 ? `${free.length} in any order` : "", select: range };
    }
    case "text":
      return { name: member.item.text, detail: "", select: member.item.range };
    case "table": {
      const { columns, persons, range } = member.table;
      const name = columns.map(({ text }) => text).join(", ");
      return { name, detail: `${count(columns.length, "column")}, ${count(persons.length, "row")}`, select: range };
    }
  }
}

function activityEntries(unit: Unit, section: number, facts: readonly ActivityFacts[]): OutlineEntry[] {
  return activitiesIn(unit, section).map(({ block, index }) => {
    const known = facts.find((each) => each.index === index);
    const make = block.options.entries.find(({ key }) => key === "make")?.value;
    const name = known?.title ?? (typeof make === "string" ? make : "Activity");
    return fenceEntry("activity", name, known?.summary ?? "", block.fence);
  });
}

function stationEntries(unit: Unit, section: number): OutlineEntry[] {
  return unit.stations
    .filter((block) => block.section === section)
    .map(({ fence }) => fenceEntry("stations", "Stations", "", fence));
}

function fenceEntry(kind: OutlineKind, name: string, detail: string, range: Range): OutlineEntry {
  return { kind, name, detail, range, select: range, children: [] };
}

function inOrder(entries: readonly OutlineEntry[]): readonly OutlineEntry[] {
  return [...entries].sort((a, b) => a.range.start - b.range.start);
}

/** `24 pairs, 2 activities`. */
export function countsOf(unit: Unit, section: Section, index: number): string {
  const { pairs, statements, events, piles, tables } = section;
  return [
    count(pairs.length, "pair"),
    count(statements.length, "statement"),
    count(events.length, "event"),
    count(new Set(piles.map(({ name }) => name)).size, "pile"),
    count(tables.length, "forms table"),
    count(activitiesIn(unit, index).length, "activity", "activities"),
  ]
    .filter((each) => !each.startsWith("0 "))
    .join(", ");
}

export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
