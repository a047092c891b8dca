import { contains, type Range } from "../../base/range";
import type { Answer, Item, Mapping, Unit } from "../../unit/unit";
import { type Member, membersOf, pileRange, textEnd, within } from "./members";

/**
 * What to select around an offset, from the smallest to the whole unit: part, answer, side, item, the item with what is under
 * it, its list, its pile, its section. Each lies within the next, none twice.
 */
export function selectionsAt(unit: Unit, offset: number): readonly Range[] {
  const section = unit.sections.find(({ range }) => offset >= range.start && offset < Math.max(range.end, range.start));
  const members = section ? membersOf(section) : [];
  const found: Range[] = [{ start: 0, end: unit.text.length }];
  if (section) {
    found.push({ start: section.range.start, end: textEnd(unit, section.range) }, section.heading);
    for (const pile of section.piles) found.push(pileRange(unit, pile), pile.heading);
  }
  for (const list of listsOf(unit, members)) found.push(list);
  for (const member of members) {
    if (contains(member.block, offset)) found.push(...memberRanges(unit, member));
  }
  for (const { fence, body, options } of [...unit.activities, ...unit.stations]) {
    found.push(fence, { start: body.start, end: textEnd(unit, body) }, ...mappingRanges(options));
  }
  found.push(...mappingRanges(unit.front));
  return nested(
    found.filter((range) => contains(range, offset)),
    offset,
  );
}

/** From the smallest to the largest; of two that cross, the smaller stays. */
function nested(ranges: readonly Range[], offset: number): readonly Range[] {
  const bySize = [...ranges].sort((a, b) => a.end - a.start - (b.end - b.start));
  const chain: Range[] = [];
  for (const range of bySize) {
    const inner = chain.at(-1);
    if (range.start === range.end && range.start !== offset) continue;
    if (!inner) chain.push(range);
    else if (within(range, inner) && range.end - range.start > inner.end - inner.start) chain.push(range);
  }
  return chain;
}

/** Items of one shape with nothing but blank lines between them. */
function listsOf(unit: Unit, members: readonly Member[]): readonly Range[] {
  const lists: { start: number; end: number; shape: Member["shape"] }[] = [];
  for (const { block, shape } of members) {
    const last = lists.at(-1);
    const together = last?.shape === shape && unit.text.slice(last.end, block.start).trim() === "";
    if (last && together) last.end = Math.max(last.end, block.end);
    else lists.push({ ...block, shape });
  }
  return lists.map(({ start, end }) => ({ start, end: textEnd(unit, { start, end }) }));
}

function memberRanges(unit: Unit, member: Member): readonly Range[] {
  const block = { start: member.block.start, end: textEnd(unit, member.block) };
  switch (member.shape) {
    case "pair": {
      const { left, right, examples, orders } = member.item;
      const sides = [left, right].flatMap(({ range, answers }) => [range, ...answers.flatMap(answerRanges)]);
      const below = [...examples, ...orders].map(({ range }) => range);
      return [block, ...itemRanges(member.item), ...sides, ...below];
    }
    case "statement": {
      const { correction, mark, range } = member.item;
      // A statement's range is what it says; with its mark it is the item.
      const whole = { start: mark.start, end: range.end };
      return [block, ...itemRanges(member.item), whole, ...(correction ? [correction.range] : [])];
    }
    case "event":
      return [block, ...itemRanges(member.item), ...member.item.free.flatMap(itemRanges)];
    case "text":
      return [block, ...itemRanges(member.item)];
    case "table": {
      const { columns, persons, forms } = member.table;
      const cells = [...columns, ...persons, ...forms.flat()].flatMap((cell) => (cell ? [cell.range] : []));
      const rows = cells.map(({ start }) => unit.lines.line(unit.lines.lineAt(start)));
      return [block, ...cells, ...rows];
    }
  }
}

function itemRanges({ range, ties, by }: Item): readonly Range[] {
  return [range, ...ties.flatMap((tie) => [tie.range, tie.target]), ...(by ? [by.range] : [])];
}

function answerRanges({ range, parts }: Answer): readonly Range[] {
  return [range, ...parts.map((part) => part.range)];
}

function mappingRanges({ range, entries }: Mapping): readonly Range[] {
  return [
    range,
    ...entries.flatMap(({ keyRange, valueRange, items }) => [
      { start: keyRange.start, end: Math.max(keyRange.end, valueRange.end) },
      keyRange,
      valueRange,
      ...items,
    ]),
  ];
}
