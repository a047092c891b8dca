import type { Box } from "../paper";
import type { PlacedCard } from "./grid";

export interface CardRows {
  readonly pages: number;
  /** In the order of the cards. */
  readonly places: readonly PlacedCard[];
}

/**
 * Packs cards of one height and different widths (mm) into rows from the box's left edge: each row is a strip that is cut off
 * first and then cut across. The widest cards go first, each into the first row with room, so that few rows are needed
 * (first-fit decreasing). Undefined where a card is wider or higher than the box.
 */
export function packRows(box: Box, widths: readonly number[], height: number): CardRows | undefined {
  const perPage = Math.floor(box.h / height + 1e-6);
  if (perPage < 1 || widths.some((width) => width > box.w + 1e-6)) return undefined;
  const rows: { used: number }[] = [];
  const placed = widths
    .map((w, card) => ({ w, card }))
    .sort((a, b) => b.w - a.w || a.card - b.card)
    .map(({ w, card }): PlacedCard => {
      let index = rows.findIndex(({ used }) => used + w <= box.w + 1e-6);
      if (index < 0) index = rows.push({ used: 0 }) - 1;
      const row = rows[index];
      const x = box.x + (row?.used ?? 0);
      if (row) row.used += w;
      const page = Math.floor(index / perPage);
      return { card, page, x, y: box.y + (index % perPage) * height, w, h: height };
    });
  return { pages: Math.ceil(rows.length / perPage), places: placed.sort((a, b) => a.card - b.card) };
}
