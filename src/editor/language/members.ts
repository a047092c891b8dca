import type { Range } from "../../base/range";
import type {
  ActivityBlock,
  Answer,
  FormsTable,
  Item,
  Pair,
  Pile,
  Section,
  Statement,
  StoryEvent,
  Unit,
} from "../../unit/unit";

/** One thing that a section holds, with its place from the first to the last line that belongs to it. */
export type Member =
  | { readonly shape: "pair"; readonly item: Pair; readonly block: Range }
  | { readonly shape: "statement"; readonly item: Statement; readonly block: Range }
  | { readonly shape: "event"; readonly item: StoryEvent; readonly block: Range }
  | { readonly shape: "text"; readonly item: Item & Answer; readonly block: Range }
  | { readonly shape: "table"; readonly table: FormsTable; readonly block: Range };

/** All of a section in the order of the text. Plain items count in piles only: elsewhere they are notes. */
export function membersOf({ pairs, statements, events, piles, tables }: Section): readonly Member[] {
  const members: Member[] = [
    ...pairs.map((item): Member => ({ shape: "pair", item, block: item.block })),
    ...statements.map((item): Member => ({ shape: "statement", item, block: item.block })),
    ...events.map((item): Member => ({ shape: "event", item, block: item.block })),
    ...tables.map((table): Member => ({ shape: "table", table, block: table.range })),
    ...piles.flatMap((pile) =>
      pile.members.flatMap((member): Member[] =>
        member.shape === "text" ? [{ shape: "text", item: member.item, block: member.item.block }] : [],
      ),
    ),
  ];
  return members.sort((a, b) => a.block.start - b.block.start);
}

/** From a pile's heading to the end of its last item. */
export function pileRange(unit: Unit, { heading, members }: Pile): Range {
  const start = lineStart(unit, heading.start);
  return { start, end: textEnd(unit, { start, end: members.at(-1)?.item.block.end ?? heading.end }) };
}

/** Activities of a section by its index; -1 for those above the first. */
export function activitiesIn(unit: Unit, section: number): readonly { block: ActivityBlock; index: number }[] {
  return unit.activities.map((block, index) => ({ block, index })).filter(({ block }) => block.section === section);
}

export function lineStart(unit: Unit, offset: number): number {
  return unit.lines.start(unit.lines.lineAt(offset));
}

/** The end of a range without the white space that it ends with: a block's line ending belongs to no symbol. */
export function textEnd(unit: Unit, { start, end }: Range): number {
  return start + unit.text.slice(start, end).trimEnd().length;
}

export function within(outer: Range, inner: Range): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}
