import { validateTiles } from "../../base/generated/validators";
import type { CommonOptions, Level, ResolvedOptions } from "../options";
import type { Frame } from "./frame";

/** Options of `tiles`, as `tiles.schema.json` describes them. */
export interface TilesOptions extends CommonOptions {
  readonly make: "tiles";
  /** `auto` or rows × columns. */
  readonly grid: string;
  readonly frame: "told" | "untold";
  readonly fill: "words" | "blank";
  readonly outer: "blank" | "decoys";
  readonly decoys?: number | readonly string[];
  readonly turn: "free" | "fixed";
  /** mm */
  readonly size?: number;
}

export function isTilesOptions(value: unknown): value is TilesOptions {
  return validateTiles(value);
}

/** The options of a request as tiles options; the plan has checked them against the schema. */
export function tilesOptions(options: ResolvedOptions<CommonOptions>): TilesOptions {
  const { value } = options;
  if (!isTilesOptions(value)) throw new TypeError("options of tiles were not checked");
  return value;
}

/** Rows × columns as written, or undefined for `auto`. */
export function writtenFrame(grid: string): Frame | undefined {
  const match = /^(\d+) ?[x×] ?(\d+)$/.exec(grid);
  return match ? { rows: Number(match[1]), columns: Number(match[2]) } : undefined;
}

export function writeFrame({ rows, columns }: Frame): string {
  return `${rows} x ${columns}`;
}

/** The level of each deal before versions: those asked for, or the one that `outer` and `decoys` amount to. */
export function levelsOf(options: TilesOptions): readonly Level[] {
  if (options.levels) return options.levels;
  return [options.outer === "decoys" || (options.decoys !== undefined && options.decoys !== 0) ? "hard" : "gentle"];
}
