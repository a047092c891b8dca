import type { LineIndex } from "../../base/range";
import type { Problems } from "../problems";
import { numerals } from "./doubtful-signs";
import { textOf } from "./lines";
import { cellsOf } from "./tables";

/*
 * Tables of two columns whose heads are missing: their rows were meant as pairs.
 */

/** What would be read otherwise behind a bullet than in a cell. */
const otherwise = /[=＝]|^(?:[-+*>#[<|]|\d{1,9}[.)](?:\s|$)|`{3})/u;

type PairsFix = Parameters<Problems["trap"]>[3];

/** Writes rows of two filled cells as items, instead of all lines from `first` to `after`; undefined where a row is none. */
export function pairsOfRows(
  lines: LineIndex,
  rows: readonly number[],
  [first, after]: readonly [number, number],
): PairsFix | undefined {
  const items = rows.map((number) => {
    const cells = cellsOf(textOf(lines, number)).map((cell) => cell.replace(/\\\|/g, "|"));
    const [left = "", right = ""] = cells;
    const fits = cells.length === 2 && left !== "" && right !== "" && !cells.some((cell) => otherwise.test(cell));
    return fits ? `- ${left} = ${right}` : undefined;
  });
  if (items.length === 0 || !items.every((item) => item !== undefined)) return undefined;
  const range = { start: lines.start(first), end: lines.line(after - 1).end };
  return { title: "Make pairs of the rows", edits: [{ range, text: items.join(lines.newline) }], unsure: true };
}

/** `|  |  |` above rows of two words each: a table without heads is a note. */
export function withoutHeads(
  lines: LineIndex,
  rows: readonly number[],
  [first, after]: readonly [number, number],
  problems: Problems,
): void {
  // A plan has its times or minutes on one side.
  const isPair = (number: number): boolean => {
    const [left = "", right = ""] = cellsOf(textOf(lines, number).replace(/<!--.*?-->/g, ""));
    return /\p{L}/u.test(left) && /\p{L}/u.test(right) && numerals(left) === numerals(right);
  };
  if (rows.length < 2 || !rows.every(isPair)) return;
  const fix = pairsOfRows(lines, rows, [first, after]);
  problems.tell(
    "pairs",
    "not-a-table",
    lines.line(first),
    "This table is a note, since a head of it is empty: a table of pairs has two.",
    ...(fix ? [fix] : []),
  );
}
