import { inset } from "../cards/box";
import { cardCuts, packGrid, placeGrid } from "../cards/grid";
import { bodyBox } from "../furniture";
import type { Box } from "../paper";
import type { Sheet, SheetItem } from "../sheet";
import { type DocumentPage, sheetOf } from "./document";

export interface Slip {
  /** mm */
  readonly w: number;
  readonly h: number;
  /** Clear of the cuts on all sides, mm; 4 if left out. */
  readonly padding?: number;
  /** Draws slip `index` (from 0) in the box inside its padding. */
  readonly draw: (box: Box, index: number) => readonly SheetItem[];
}

/**
 * Equal slips, as many a page as fit, with shared cut lines; the last page holds only those that are left. A slip that is larger than the page's body is cut down to it.
 */
export function setSlips(slip: Slip, count: number, page: DocumentPage): Sheet[] {
  const box = bodyBox(page.paper, page.margin);
  const size = { w: Math.min(slip.w, box.w), h: Math.min(slip.h, box.h) };
  const grid = packGrid(box, size, count);
  if (!grid) return [];
  const places = placeGrid(box, grid, count);
  return Array.from({ length: grid.pages }, (_, i) => {
    const here = places.filter((place) => place.page === i);
    const slips = here.flatMap((place) => slip.draw(inset(place, slip.padding ?? 4), place.card));
    return sheetOf(page, i, grid.pages, [...cardCuts(here), ...slips]);
  });
}
