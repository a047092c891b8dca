import type { Item, Unit } from "../../unit/unit";

/**
 * Whether an item stands in the section of another one and says all that the other says and nothing more, with what stands below it:
 * then taking it out takes nothing of the writer's. Blocks are whole lines.
 */
export function isWrittenTwice({ text, sections }: Unit, first: Item, again: Item): boolean {
  const written = ({ block }: Item): string => text.slice(block.start, block.end).replace(/\s+/gu, " ").trim();
  const holds = ({ block }: Item) =>
    sections.findIndex(({ range }) => range.start <= block.start && block.end <= range.end);
  return holds(first) === holds(again) && written(first) === written(again);
}
