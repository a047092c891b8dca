import type { Box, Paper } from "../paper";
import type { QuarterTurn } from "../sheet";
import { inset } from "./box";
import type { PlacedCard } from "./grid";

/*
 * Printing on the back of cards. Fronts and backs may differ by a millimetre each way, so backs carry no frames.
 */

/** The edge about which the printer turns the paper. */
export type Duplex = "long" | "short";

/** What stands on a back keeps clear of the cut by so much, mm. */
export const backClearance = 3;

export interface PlacedBack extends PlacedCard {
  /** How the back's content must be turned so that the card turns over like a page of a book. */
  readonly turn: QuarterTurn;
}

/**
 * Where the backs of placed cards lie on the page's other side, as that side is seen; `paper` as the fronts were printed on.
 * About the upright edge left and right change places; about the other, top and bottom do and the backs stand upside down.
 */
export function backsOf(
  places: readonly PlacedCard[],
  duplex: Duplex,
  paper: Pick<Paper, "width" | "height">,
): PlacedBack[] {
  const upright = paper.width <= paper.height === (duplex === "long");
  return places.map((place) =>
    upright
      ? { ...place, x: paper.width - place.x - place.w, turn: 0 }
      : { ...place, y: paper.height - place.y - place.h, turn: 2 },
  );
}

/** Where content may stand on a back. */
export function backBox(back: Box): Box {
  return inset(back, backClearance);
}
