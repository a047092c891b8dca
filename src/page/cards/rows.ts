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

/** How often sets lie one under the other on a sheet. */
export interface SharedRows {
  readonly sets: number;
  /** How far below the one before it each set lies, mm. */
  readonly apart: number;
}

/**
 * How many sets a box holds, each in rows of its own from its top, so that the cut between two of them is one straight line;
 * undefined where a set takes a sheet or more. No more than `most` cards stand on a sheet.
 */
export function shareRows(
  box: Box,
  places: readonly PlacedCard[],
  most = Number.POSITIVE_INFINITY,
): SharedRows | undefined {
  if (places.length === 0 || places.some(({ page }) => page > 0)) return undefined;
  const apart = Math.max(...places.map(({ y, h }) => y + h)) - box.y;
  const sets = Math.min(Math.floor(box.h / apart + 1e-6), Math.floor(most / places.length));
  return sets < 2 ? undefined : { sets, apart };
}

export function lowered(places: readonly PlacedCard[], by: number): PlacedCard[] {
  return places.map((place) => ({ ...place, y: place.y + by }));
}
