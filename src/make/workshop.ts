import type { Deal, DealtActivity, View } from "../activities/contract";
import type { Finding } from "../check/finding";
import type { Sheet } from "../page/sheet";
import type { TypefaceAssets } from "../text/typeface";
import type { Unit } from "../unit/unit";

/*
 * The engine as the editor and the command line see it: bytes and text in, findings, drawings and files out.
 */

/** One unit file. `name` is its base name without `.unit.md`. */
export interface UnitFile {
  readonly name: string;
  readonly text: string;
}

/** What lies around a unit. Everything is read beforehand; the engine opens nothing. */
export interface Surroundings {
  /** Nearest `cutwork.yml` first. */
  readonly settings: readonly { readonly path: string; readonly text: string }[];
  /** Pictures by their path as written in the unit; a missing one is a finding. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  /** The last `NAME.pieces.json` in the output folder, as text. */
  readonly pieces?: string;
  /** The pieces files of other units in the output folder. */
  readonly neighbours: readonly { readonly name: string; readonly text: string }[];
}

export const nothingAround: Surroundings = { settings: [], pictures: new Map(), neighbours: [] };

/** A unit read, dealt, proven and checked. */
export interface Reading {
  readonly file: UnitFile;
  readonly around: Surroundings;
  readonly unit: Unit;
  readonly activities: readonly DealtActivity[];
  readonly findings: readonly Finding[];
}

export interface MadeFile {
  /** File name without folder. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface MakeOptions {
  /** A kind or a title: make only these activities. */
  readonly only?: string;
  /** One set of everything. */
  readonly trial?: boolean;
  /** One file a stock for the whole unit. */
  readonly merge?: boolean;
  /** Called before each file; throw to stop. Files are returned only when all are done. */
  readonly onStep?: (done: number, total: number, name: string) => void | Promise<void>;
}

export interface Workshop {
  /** Reads, deals, proves and checks. Never throws. */
  read(file: UnitFile, around: Surroundings): Reading;
  /** Paths of the pictures that a text asks for, so that the caller can load them. */
  picturesIn(text: string): readonly string[];
  /** The sheets of one copy of a deal. `second` is empty where no second solution is known. */
  view(reading: Reading, activity: DealtActivity, deal: Deal, view: View): readonly Sheet[];
  /** A sheet as a standalone SVG element, sized in mm. Piece areas carry `data-piece`, texts `data-start` and `data-end`. */
  draw(sheet: Sheet): string;
  /** All files of a unit, pieces file included. Throws only what `onStep` throws. */
  make(reading: Reading, options: MakeOptions): Promise<readonly MadeFile[]>;
}

/** Opens the engine: instantiates the shaper and loads the faces. */
export async function openWorkshop(assets: TypefaceAssets): Promise<Workshop> {
  throw new Error(`not wired yet: ${Object.keys(assets).length}`);
}
