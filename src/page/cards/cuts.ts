import type { LineItem, Sheet } from "../sheet";
import { joinStretches } from "./grid";

/** A cut runs on over a gap of at most this, as between cards with a gutter; mm. */
const widestGutter = 8;

/** How many straight cuts a sheet takes: its cut lines, with stretches of one line that follow each other counted once. */
export function cutsOf(sheet: Pick<Sheet, "items">): number {
  const lines = new Map<string, [number, number][]>();
  for (const item of sheet.items) {
    if (item.type !== "line" || item.role !== "cut") continue;
    const { key, stretch } = alongOf(item);
    const stretches = lines.get(key) ?? [];
    stretches.push(stretch);
    lines.set(key, stretches);
  }
  return [...lines.values()].reduce((sum, stretches) => sum + joinStretches(stretches, widestGutter).length, 0);
}

/** The endless line that a cut lies on, to a tenth of a millimetre, and its stretch of it. */
function alongOf({ x1, y1, x2, y2 }: LineItem): { readonly key: string; readonly stretch: [number, number] } {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  let [dx, dy] = [(x2 - x1) / length, (y2 - y1) / length];
  if (dx < -1e-6 || (Math.abs(dx) <= 1e-6 && dy < 0)) [dx, dy] = [-dx, -dy];
  const away = x1 * dy - y1 * dx;
  const ends = [x1 * dx + y1 * dy, x2 * dx + y2 * dy];
  const key = [dx * 100, dy * 100, away * 10].map((value) => Math.round(value)).join(" ");
  return { key, stretch: [Math.min(...ends), Math.max(...ends)] };
}

/** How many rectangles the upright and level cut lines of a sheet close: the pieces that it is cut into. */
export function cutPiecesOf(sheet: Pick<Sheet, "items">): number {
  const lines = sheet.items.flatMap((item) => (item.type === "line" && item.role === "cut" ? [item] : []));
  const across = lines.flatMap(({ x1, x2, y1, y2 }) => (y1 === y2 ? [{ at: y1, from: x1, to: x2 }] : []));
  const down = lines.flatMap(({ x1, x2, y1, y2 }) => (x1 === x2 ? [{ at: x1, from: y1, to: y2 }] : []));
  const rows = inOrder(across.map(({ at }) => at));
  let count = 0;
  rows.slice(1).forEach((bottom, i) => {
    const top = rows[i] ?? bottom;
    const sides = inOrder(down.filter((line) => covers(line, top, bottom)).map(({ at }) => at));
    sides.slice(1).forEach((right, j) => {
      const left = sides[j] ?? right;
      const edge = (y: number): boolean => across.some((line) => near(line.at, y) && covers(line, left, right));
      if (edge(top) && edge(bottom)) count++;
    });
  });
  return count;
}

/** mm */
const tolerance = 0.01;

function covers({ from, to }: { readonly from: number; readonly to: number }, start: number, end: number): boolean {
  return Math.min(from, to) <= start + tolerance && Math.max(from, to) >= end - tolerance;
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < tolerance;
}

function inOrder(places: readonly number[]): number[] {
  return [...places].sort((a, b) => a - b).filter((place, i, all) => i === 0 || !near(place, all[i - 1] ?? place));
}
