import type { Range } from "../../base/range";
import { upTo } from "../../base/seed";
import type { Assembly, TileProof, Turn } from "../../prove/tiles";
import type { Pair } from "../../unit/unit";
import type { Deal, Dealt } from "../contract";
import type { Level } from "../options";
import type { Printed } from "../printed";
import type { Frame } from "./frame";
import type { TilesOptions } from "./options";

/** Words for outer edges that have no partner. */
export interface Decoys {
  readonly edges: readonly Edge[];
  /** How many were asked for. */
  readonly wanted: number;
  /** Decoys that the unit names but that answer a word on the tiles: left out. */
  readonly misfits: readonly { readonly text: string; readonly place: Range; readonly answers: readonly Pair[] }[];
}

/** What stands on one edge of a tile; a blank edge is undefined. */
export type Edge = Printed;

/** Edges clockwise from the top, as the tile stands in the solution. */
export type TileFace = readonly [n: Edge | undefined, e: Edge | undefined, s: Edge | undefined, w: Edge | undefined];

/** A tile as dealt: the cell where it belongs, and its quarter turns clockwise on the sheet. Its place in the list is its number. */
export interface DealtTile {
  readonly cell: number;
  readonly turn: Turn;
}

export interface TilesDeal extends Deal {
  readonly level: Level;
  readonly frame: Frame;
  /** By cell, row by row. */
  readonly solved: readonly TileFace[];
  readonly tiles: readonly DealtTile[];
  readonly decoys: Decoys;
  readonly proof: TileProof;
}

export interface DealtTiles extends Dealt<TilesDeal> {
  readonly options: TilesOptions;
  readonly pairs: readonly Pair[];
  /** The frame that was asked for, or the largest that fits; undefined where the pairs fill none. */
  readonly frame?: Frame;
}

export function quarter(turns: number): Turn {
  const turn = ((turns % 4) + 4) % 4;
  return turn === 1 ? 1 : turn === 2 ? 2 : turn === 3 ? 3 : 0;
}

/** The arrangement that is meant, as the prover names tiles: by their cell in the solution. */
export function intended(frame: Frame): Assembly {
  return { ...frame, cells: upTo(frame.rows * frame.columns).map((tile) => ({ tile, turn: 0 })) };
}
