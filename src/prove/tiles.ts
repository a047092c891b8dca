import type { Proof } from "./proof";

export { alignedTo, differences, isAssembly, sameAssembly, turned } from "./assembly";
export { type Difficulty, type DifficultyOptions, difficultyOf } from "./difficulty";
export { proveTiles, TileSearch } from "./prove-tiles";

/** Clockwise quarter turns of a tile as placed. */
export type Turn = 0 | 1 | 2 | 3;

/** Printed edge texts of one tile, clockwise from the top: north, east, south, west. Equal numbers print alike. */
export type TileEdges = readonly [number, number, number, number];

export interface TilePuzzle {
  readonly rows: number;
  readonly columns: number;
  /** rows × columns tiles. */
  readonly tiles: readonly TileEdges[];
  /**
   * For each edge text the texts that it fits; may hold the text itself; an empty or missing list fits nothing. Read as
   * symmetric: it is enough that one of two texts names the other.
   */
  readonly partners: readonly (readonly number[])[];
  /** `fixed`: every tile shows which way is up, so that only turn 0 is possible. */
  readonly turn: "free" | "fixed";
  /** The learners are not told rows × columns: every other frame of the same area counts too. */
  readonly frameUntold?: boolean;
  /** The only texts that may face out; absent: any. */
  readonly outer?: readonly number[];
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
  /** Stop after this many solutions (default 2; less would settle nothing and counts as 2). `Infinity` counts all. */
  readonly cap?: number;
  /** Search nodes, that is tiles laid down, to spend (default 200,000). */
  readonly budget?: number;
  /** Told of every visible assembly as the search meets it, once each and in no promised turn of the grid; not of the intended one. */
  readonly found?: (assembly: Assembly) => void;
}

export type TileProof = Proof<Assembly>;
