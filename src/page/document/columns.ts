import { mm } from "../paper";
import type { SheetItem } from "../sheet";
import type { Columns } from "./blocks";
import type { Setting } from "./paragraphs";
import { type Part, slack } from "./part";
import { drawWords, firstBaseline, leading, type SetWords, setWords } from "./words";

/*
 * Short entries in columns, filled evenly where all that is left fits the page, else to the page's foot.
 */

interface Grid {
  readonly count: number;
  readonly gap: number;
  readonly width: number;
  readonly indent: number;
  readonly lineHeight: number;
}

/** A line of an entry; the first hangs out by the indent. */
interface Line {
  readonly set: SetWords;
  readonly index: number;
}

type Entry = readonly Line[];

export function columnsPart(block: Columns, setting: Setting): Part | undefined {
  const size = block.size ?? setting.size;
  const count = Math.max(1, Math.floor(block.count));
  const gap = block.gap ?? 6;
  const width = Math.max(1, (setting.width - gap * (count - 1)) / count);
  const indent = Math.min(mm(size) * 1.2, width / 4);
  const entries = block.entries
    .map((words): Entry => {
      const set = setWords(setting.typeface, words, size, width - indent);
      return set.lines.map((_, index) => ({ set, index }));
    })
    .filter((entry) => entry.length > 0);
  if (entries.length === 0) return undefined;
  const grid = { count, gap, width, indent, lineHeight: mm(size) * leading };
  return entriesPart(entries, grid, 0.16 * size);
}

/** Fewer rows than these never stand alone at the foot or the head of a page. */
const fewest = 2;

function entriesPart(entries: readonly Entry[], grid: Grid, above: number): Part {
  const rows = evenRows(entries, grid.count);
  const longest = Math.max(...entries.map((entry) => entry.length));
  return {
    above,
    height: rows * grid.lineHeight,
    least: (rows < 2 * fewest ? rows : Math.min(rows, Math.max(longest, fewest), 3)) * grid.lineHeight,
    draw: (x, y) => draw(fill(entries, grid.count, rows).columns, grid, x, y),
    split(available) {
      const most = Math.floor(available / grid.lineHeight + slack);
      if (most < 1 || fill(entries, grid.count, most).rest.length === 0) return undefined;
      const leavesEnough = (capacity: number): boolean =>
        evenRows(fill(entries, grid.count, capacity).rest, grid.count) >= fewest;
      let capacity = most;
      while (capacity > fewest && !leavesEnough(capacity)) capacity--;
      if (!leavesEnough(capacity)) capacity = most;
      const { columns, rest } = fill(entries, grid.count, capacity);
      if (columns.every((column) => column.length === 0)) return undefined;
      return [filledPart(columns, grid, above), entriesPart(rest, grid, 0)];
    },
  };
}

function filledPart(columns: readonly (readonly Line[])[], grid: Grid, above: number): Part {
  const height = Math.max(...columns.map((column) => column.length)) * grid.lineHeight;
  return { above, height, least: height, draw: (x, y) => draw(columns, grid, x, y) };
}

/** The least number of rows at which all entries find room. */
function evenRows(entries: readonly Entry[], count: number): number {
  const total = entries.reduce((sum, entry) => sum + entry.length, 0);
  let rows = Math.ceil(total / count);
  while (fill(entries, count, rows).rest.length > 0) rows++;
  return rows;
}

/** Entries in columns of so many rows; an entry stays whole unless a column cannot hold it. */
function fill(
  entries: readonly Entry[],
  count: number,
  rows: number,
): { readonly columns: readonly (readonly Line[])[]; readonly rest: readonly Entry[] } {
  const columns: Line[][] = Array.from({ length: count }, () => []);
  const queue = [...entries];
  for (const column of columns) {
    for (let next = queue[0]; next; next = queue[0]) {
      const room = rows - column.length;
      if (next.length > room && (column.length > 0 || room < 1)) break;
      column.push(...next.slice(0, room));
      queue.shift();
      if (next.length > room) queue.unshift(next.slice(room));
    }
  }
  return { columns, rest: queue };
}

function draw(columns: readonly (readonly Line[])[], grid: Grid, x: number, y: number): SheetItem[] {
  return columns.flatMap((column, c) =>
    column.flatMap(({ set, index }, row) => {
      const one = { ...set, lines: set.lines.slice(index, index + 1) };
      const hang = index > 0 && !set.rightToLeft ? grid.indent : 0;
      // Read from right to left, the first line begins at the right edge and the others hang in from there.
      const right = set.rightToLeft && index === 0 ? grid.indent : 0;
      const left = x + c * (grid.width + grid.gap) + hang + right;
      const baseline = y + row * grid.lineHeight + firstBaseline(grid);
      return drawWords(one, left, baseline, grid.width - grid.indent, "start");
    }),
  );
}
