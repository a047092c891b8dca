import { inset } from "../cards/box";
import { cardCuts, packGrid, placeGrid } from "../cards/grid";
import { bodyBox } from "../furniture";
import type { Box } from "../paper";
import type { Sheet, SheetItem } from "../sheet";
import type { Block } from "./blocks";
import { type DocumentPage, heightOfBlocks, setInBox, sheetOf } from "./document";
import type { Measure } from "./words";

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

/** A slip whose height comes from its rows to write in. */
export interface WritingSlip {
  /** Its blocks, with rows of a height in mm; all slips are as high as the first. */
  readonly blocks: (row: number, index: number) => readonly Block[];
  /** mm; a row may be as low as `least` where that saves sheets. */
  readonly row: { readonly usual: number; readonly least: number };
  /** Slips side by side. */
  readonly across: number;
  /** Clear of the cuts, mm. */
  readonly padding: number;
  /** pt */
  readonly size: number;
}

/** Heights of rows are whole multiples of this, mm. */
const step = 0.1;

/** Slips to write on, as wide as `across` of them fit the page. Nothing is clipped: what is too high gets smaller. */
export function setWritingSlips(slip: WritingSlip, count: number, page: DocumentPage, typeface: Measure): Sheet[] {
  const { blocks, across, padding, size } = slip;
  const body = bodyBox(page.paper, page.margin);
  const w = body.w / across;
  const heightAt = (row: number): number =>
    heightOfBlocks(blocks(row, 0), w - 2 * padding, typeface, size) + 2 * padding;
  const row = rowFor(slip, count, body.h, heightAt);
  const h = Math.min(body.h, heightAt(row));
  const draw = (box: Box, index: number) => setInBox(blocks(row, index), box, typeface, { size, least: 5 }).items;
  return setSlips({ w, h, padding, draw }, count, page);
}

/** The usual height of a row, or so much less that one more slip finds room below the others, where that saves a sheet. */
function rowFor(
  { row: { usual, least }, across }: WritingSlip,
  count: number,
  room: number,
  heightAt: (row: number) => number,
): number {
  const down = Math.max(1, Math.floor(room / heightAt(usual) + 1e-6));
  const sheets = (rows: number): number => Math.ceil(count / (rows * across));
  if (sheets(down + 1) === sheets(down)) return usual;
  for (let i = 1; usual - i * step > least - step / 2; i++) {
    const row = Math.round((usual - i * step) / step) * step;
    if ((down + 1) * heightAt(row) <= room + 1e-6) return row;
  }
  return usual;
}
