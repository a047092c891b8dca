import type { Box } from "./paper";
import type { LineItem } from "./sheet";

/** A block of equal squares that share their cut lines, on as many pages as needed. */
export interface SquarePacking {
  readonly columns: number;
  readonly rows: number;
  readonly pages: number;
  /** Edge length in mm. */
  readonly side: number;
}

/** How many squares of a side fit a box, and the pages for `count` of them; undefined where not one fits. */
export function packSquares(box: Box, side: number, count: number): SquarePacking | undefined {
  const slack = 1e-6;
  const columns = Math.floor(box.w / side + slack);
  const rows = Math.floor(box.h / side + slack);
  if (columns < 1 || rows < 1) return undefined;
  return { columns, rows, side, pages: Math.ceil(count / (columns * rows)) };
}

/**
 * Packings worth choosing from, by the largest side (down to 0.5 mm) at which the squares still fill the same number of
 * pages; fewest pages first.
 */
export function squarePackings(
  box: Box,
  count: number,
  limits: { readonly min: number; readonly max: number },
): SquarePacking[] {
  const best = new Map<number, SquarePacking>();
  for (let side = limits.max; side >= limits.min; side -= 0.5) {
    const packing = packSquares(box, side, count);
    if (packing && !best.has(packing.pages)) best.set(packing.pages, packing);
  }
  return [...best.values()].sort((a, b) => a.pages - b.pages);
}

export interface PlacedSquare {
  /** From 0. */
  readonly page: number;
  readonly x: number;
  readonly y: number;
}

/** Top left corners in mm, row by row; each page's block hangs from the box's top, centred across. */
export function placeSquares(box: Box, packing: SquarePacking, count: number): PlacedSquare[] {
  const perPage = packing.columns * packing.rows;
  return Array.from({ length: count }, (_, i) => {
    const page = Math.floor(i / perPage);
    const onPage = i % perPage;
    const columns = Math.min(packing.columns, Math.min(perPage, count - page * perPage));
    const left = box.x + (box.w - columns * packing.side) / 2;
    return {
      page,
      x: left + (onPage % packing.columns) * packing.side,
      y: box.y + Math.floor(onPage / packing.columns) * packing.side,
    };
  });
}

/** The cut lines of one page that holds `count` squares: each shared edge once, as long as it can run. Hairlines of 0.25 pt. */
export function squareCuts(squares: readonly PlacedSquare[], side: number): LineItem[] {
  const across = new Map<number, number[]>();
  const down = new Map<number, number[]>();
  const add = (map: Map<number, number[]>, at: number, from: number): void => {
    const key = Math.round(at * 1000) / 1000;
    const starts = map.get(key) ?? [];
    if (!starts.some((start) => Math.abs(start - from) < 1e-6)) starts.push(from);
    map.set(key, starts);
  };
  for (const { x, y } of squares) {
    add(across, y, x);
    add(across, y + side, x);
    add(down, x, y);
    add(down, x + side, y);
  }
  const lines: LineItem[] = [];
  const cut = (x1: number, y1: number, x2: number, y2: number): void => {
    lines.push({ type: "line", role: "cut", x1, y1, x2, y2, weight: 0.25 });
  };
  for (const [y, starts] of sorted(across)) for (const [a, b] of stretches(starts, side)) cut(a, y, b, y);
  for (const [x, starts] of sorted(down)) for (const [a, b] of stretches(starts, side)) cut(x, a, x, b);
  return lines;
}

function sorted(map: Map<number, number[]>): [number, number[]][] {
  return [...map].sort(([a], [b]) => a - b);
}

/** Joins unit stretches that touch. */
function stretches(starts: readonly number[], side: number): [number, number][] {
  const out: [number, number][] = [];
  for (const start of [...starts].sort((a, b) => a - b)) {
    const last = out.at(-1);
    if (last && Math.abs(last[1] - start) < 1e-6) last[1] = start + side;
    else out.push([start, start + side]);
  }
  return out;
}
