import type { Range } from "../base/range";
import type { Sheet } from "../page/sheet";
import type { Proof } from "../prove/proof";

/** The kinds that exist now; the schemas hold the same names. */
export type KindName = "tiles";

export type Side = "n" | "e" | "s" | "w" | "front" | "back";

/** What can be looked at: pieces as they are printed, the solution, and where there is one a second solution. */
export type View = "dealt" | "solved" | "second";

/** One arrangement of an activity with its printed texts. Kinds extend it with what they need. */
export interface Deal {
  /** Six characters; changes when the arrangement or a printed text does. */
  readonly code: string;
  readonly level: string;
  /** From 1. */
  readonly version: number;
  /** Copies to print, or `by copier`: one master whose marks leave the copy out. */
  readonly copies: number | "by copier";
  /** Which attempt of the seed's sequence was taken, from 0. */
  readonly attempt: number;
  readonly proof: Proof<unknown>;
}

/** One activity of a unit with its deals; empty where it cannot be dealt (its findings say why). */
export interface DealtActivity {
  /** Index in `Unit.activities`. */
  readonly index: number;
  readonly make: KindName;
  readonly title: string;
  /** In short what it makes, for lists: `4 × 4 tiles`. */
  readonly summary: string;
  readonly deals: readonly Deal[];
}

/** A printed face of a piece: its text and the place in the unit it comes from. */
export interface Face {
  readonly side: Side;
  readonly text: string;
  readonly source?: Range;
}

export interface DealSheets {
  readonly view: View;
  readonly sheets: readonly Sheet[];
}
