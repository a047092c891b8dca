import type { Run } from "../base/run";
import { wrap } from "../text/fit";
import type { Typeface } from "../text/typeface";
import { type Box, mm } from "./paper";
import type { TextItem } from "./sheet";

export interface Columns {
  readonly count: number;
  /** mm */
  readonly gap: number;
  /** pt */
  readonly size: number;
}

/** Height in mm that the entries need in evenly filled columns on one page, a line to spare. */
export function columnsHeight(
  entries: readonly (readonly Run[])[],
  width: number,
  { count, gap, size }: Columns,
  typeface: Pick<Typeface, "measure">,
): number {
  const column = (width - gap * (count - 1)) / count - mm(size) * 1.2;
  const lines = entries.map((runs) => wrap(typeface, runs, size, column).length);
  const total = lines.reduce((sum, each) => sum + each, 0);
  return total === 0 ? 0 : (Math.ceil(total / count) + Math.max(...lines)) * mm(size) * 1.32;
}

/**
 * Sets entries one below the other in columns: on the first page in the first box, on all further pages in the last one.
 * Columns of a page are filled evenly where all that is left fits. Returns the items of each page; a box too low for a line
 * gives an empty page.
 */
export function flowColumns(
  entries: readonly (readonly Run[])[],
  boxes: readonly [Box, Box],
  { count, gap, size }: Columns,
  typeface: Pick<Typeface, "measure">,
): TextItem[][] {
  const leading = mm(size) * 1.32;
  const indent = mm(size) * 1.2;
  const pages: TextItem[][] = [];
  let queue = [...entries];
  while (queue.length > 0) {
    const box = pages.length === 0 ? boxes[0] : boxes[1];
    const width = (box.w - gap * (count - 1)) / count;
    const capacity = Math.floor(box.h / leading);
    const set = queue.map((runs) => wrap(typeface, runs, size, width - indent));
    const total = set.reduce((sum, lines) => sum + lines.length, 0);
    const rows = total <= capacity * count ? Math.ceil(total / count) : capacity;
    const items: TextItem[] = [];
    let [column, row, used] = [0, 0, 0];
    for (const lines of set) {
      if (row > 0 && row + lines.length > Math.max(rows, lines.length === 1 ? rows : 0) && column + 1 < count) {
        column++;
        row = 0;
      }
      if (row + lines.length > capacity) break;
      lines.forEach(({ runs }, i) => {
        const x = box.x + column * (width + gap) + (i > 0 ? indent : 0);
        items.push({ type: "text", runs, x, y: box.y + (row + i + 0.8) * leading, size, turn: 0, anchor: "start" });
      });
      row += lines.length;
      used++;
    }
    pages.push(items);
    queue = queue.slice(used);
    // A single entry longer than a page would never fit: stop instead of turning pages for ever.
    if (used === 0 && pages.length > 1) break;
  }
  return pages;
}
