import { validateBoard } from "../../base/generated/validators";
import type { CommonOptions, ResolvedOptions } from "../options";

/** Options of `board`, as `board.schema.json` describes them. */
export interface BoardOptions extends CommonOptions {
  readonly make: "board";
  /** `auto` or rows × columns. */
  readonly grid: string;
  readonly show: "word" | "gloss";
  readonly clue: "word" | "gloss" | "example";
  readonly facing: "side" | "opposite";
  readonly boards: "same" | "different";
  readonly distractors?: number | readonly string[];
  readonly players: 2 | 3;
  readonly slip: "score" | "none";
}

function isBoardOptions(value: unknown): value is BoardOptions {
  return validateBoard(value);
}

/** The options of a request as board options; the plan has checked them against the schema. */
export function boardOptions({ value }: ResolvedOptions<CommonOptions>): BoardOptions {
  if (!isBoardOptions(value)) throw new TypeError("options of a board were not checked");
  return value;
}

export interface Grid {
  readonly rows: number;
  readonly columns: number;
}

/** Rows × columns as written, or undefined for `auto`. */
export function writtenGrid(grid: string): Grid | undefined {
  const match = /^(\d+) ?[x×] ?(\d+)$/.exec(grid);
  return match ? { rows: Number(match[1]), columns: Number(match[2]) } : undefined;
}

export function cellsIn({ rows, columns }: Grid): number {
  return rows * columns;
}

/** The grid of most cells up to so many, of those the squarest; undefined where there are fewer than four. */
export function largestGrid(cells: number): Grid | undefined {
  let best: Grid | undefined;
  for (let rows = 2; rows <= 10; rows++) {
    for (let columns = rows; columns <= Math.min(10, rows + 2) && rows * columns <= cells; columns++) {
      const size = best ? cellsIn(best) : 0;
      if (rows * columns > size || (rows * columns === size && best && columns < best.columns))
        best = { rows, columns };
    }
  }
  return best;
}
