import type { Proof } from "./proof";

/** Clockwise quarter turns of a tile as placed. */
export type Turn = 0 | 1 | 2 | 3;

/** Printed edge texts of one tile, clockwise from the top: north, east, south, west. Equal numbers print alike. */
export type TileEdges = readonly [number, number, number, number];

export interface TilePuzzle {
  readonly rows: number;
  readonly columns: number;
  /** rows × columns tiles. */
  readonly tiles: readonly TileEdges[];
  /** For each edge text the texts that it fits; symmetric, may hold the text itself; an empty list fits nothing. */
  readonly partners: readonly (readonly number[])[];
  /** `fixed`: every tile shows which way is up, so that only turn 0 is possible. */
  readonly turn: "free" | "fixed";
  /** The learners are not told rows × columns: every other frame of the same area counts too. */
  readonly frameUntold?: boolean;
}

/** Tile index and turn for every cell, row by row. Edge `e` of a tile turned by t shows at side (e + t) mod 4. */
export interface Assembly {
  readonly rows: number;
  readonly columns: number;
  readonly cells: readonly { readonly tile: number; readonly turn: Turn }[];
}

export interface TileProofOptions {
  /** The arrangement that the teacher means; a second one is one that is not this, up to turning the whole grid. */
  readonly intended?: Assembly;
  /** Stop after this many solutions (default 2). */
  readonly cap?: number;
  /** Search nodes to spend (default 200,000). */
  readonly budget?: number;
}

export type TileProof = Proof<Assembly>;
