import { contains, type Range } from "../base/range";
import type { Unit } from "../unit/unit";

/** An item of a section that prints: what the editor selects and lights up as one. */
export interface Item {
  /** The item's own text. */
  readonly range: Range;
  /** Its lines, with what is nested in it. */
  readonly block: Range;
}

export function itemsOf(unit: Unit): readonly Item[] {
  return unit.sections.flatMap((section) => [...section.pairs, ...section.statements]);
}

/** The item whose lines hold the offset. The line ending belongs to the item, the start of the next line does not. */
export function itemAt(unit: Unit, offset: number): Item | undefined {
  return itemsOf(unit).find(
    (item) => contains(item.range, offset) || (offset >= item.block.start && offset < item.block.end),
  );
}

/** The item that a printed text was read from. */
export function itemOf(unit: Unit, source: Range): Item | undefined {
  return itemsOf(unit).find((item) => source.start >= item.block.start && source.end <= item.block.end);
}

/** The activity that an offset stands in, else the first of its section, as its place in the unit's order, from 0. */
export function activityAt({ activities, sections }: Unit, offset: number): number | undefined {
  const own = activities.findIndex(({ fence }) => contains(fence, offset));
  const section = sections.findIndex(({ range }) => contains(range, offset));
  const found = own >= 0 ? own : activities.findIndex((each) => section >= 0 && each.section === section);
  return found >= 0 ? found : undefined;
}
