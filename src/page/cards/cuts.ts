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
