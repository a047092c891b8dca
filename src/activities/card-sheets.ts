import { cardCuts, lowered, type PlacedCard, shareRows } from "../page/cards";
import { sheetOf } from "../page/document";
import type { Box, Paper } from "../page/paper";
import type { Sheet, SheetItem } from "../page/sheet";
import type { Deal, DealRequest, Press, Sharing } from "./contract";
import { activityPage, folio, setLabel, setsLabel, stateOf } from "./sheet-page";

/* Sheets of cards: of one set page by page, and of several small sets that lie on one sheet. */

/** What lies on a sheet: for each set on it where its cards are, mm. */
export interface SheetParts {
  /** What the sheet says of the sets on it. */
  readonly set: string;
  readonly index: number;
  readonly pages: number;
  readonly parts: readonly { readonly copy: number | undefined; readonly places: readonly PlacedCard[] }[];
}

type Draw = (parts: SheetParts) => Sheet;

/** The sheets of one copy, whose cards lie so page by page. */
export function copySheets(
  pages: readonly (readonly PlacedCard[])[],
  copy: number | undefined,
  draw: Draw,
): readonly Sheet[] {
  const set = setLabel(copy);
  return pages.map((places, index) => draw({ set, index, pages: pages.length, parts: [{ copy, places }] }));
}

/** Sets of a few rows on one sheet, each in rows of its own; undefined where a set takes more than half. */
export function sharedSheet(
  box: Box,
  [places = [], ...more]: readonly (readonly PlacedCard[])[],
  draw: Draw,
  most?: number,
): Sharing | undefined {
  const shared = more.length > 0 ? undefined : shareRows(box, places, most);
  if (!shared) return undefined;
  const sheet = (copies: readonly (number | undefined)[]): Sheet => {
    const parts = copies.map((copy, i) => ({ copy, places: lowered(places, i * shared.apart) }));
    return draw({ set: setsLabel(copies), index: 0, pages: 1, parts });
  };
  return { ...shared, sheet };
}

/** One sheet of cards with its title line, cut lines and what is drawn on each card. */
export function cardSheet(
  request: DealRequest,
  deal: Deal,
  press: Press,
  { set, index, pages, parts }: SheetParts,
  drawCard: (place: PlacedCard, copy: number | undefined) => readonly SheetItem[],
  { paper, cut = true }: { readonly paper?: Paper; readonly cut?: boolean } = {},
): Sheet {
  const state = [...stateOf(request, deal).slice(0, -1), set, deal.code];
  const page = { ...activityPage(request, press, "Cards", state), ...(paper ? { paper } : {}), stock: "card" as const };
  const label = `${request.title}, ${state.join(" · ")}, ${folio(index, pages)}`;
  const cards = parts.flatMap(({ copy, places }) => places.flatMap((place) => drawCard(place, copy)));
  const cuts = cut ? cardCuts(parts.flatMap(({ places }) => places)) : [];
  return sheetOf({ ...page, label }, index, pages, [...cuts, ...cards]);
}
