import type { Box } from "../page/paper";
import type { Piece } from "./contract";

/** Where a piece stands: mm, page of the copy's piece sheets from 0. */
type Place = Box & { readonly page: number };

/** Pieces for learners to write on, one at each place: no text, and `solution` is the kind's own empty one. */
export function blankPieces(places: readonly Place[], solution: unknown): Piece[] {
  return places.map(({ page, x, y, w, h }) => ({
    faces: [{ side: "front", text: "" }],
    at: [{ page, x, y, w, h, turn: 0, side: "front" }],
    solution,
    blank: true,
  }));
}
