import type { Range } from "../base/range";
import type { Item, Unit } from "../unit/unit";

/** The innermost item that a place stands in; of the unit's own text alone. */
export function itemAt({ sections }: Unit, { start }: Range): Item | undefined {
  const section = sections.find(({ range }) => range.start <= start && start < range.end);
  if (!section) return undefined;
  const { pairs, statements, events, piles } = section;
  const all: readonly Item[] = [
    ...pairs,
    ...statements,
    ...events,
    ...events.flatMap(({ free }) => free),
    ...piles.flatMap(({ members }) => members.map(({ item }) => item)),
  ];
  return all
    .filter(({ block }) => block.start <= start && start < block.end)
    .sort((a, b) => a.block.end - a.block.start - (b.block.end - b.block.start))[0];
}
