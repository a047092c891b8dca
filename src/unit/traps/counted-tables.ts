import type { LineIndex } from "../../base/range";
import { drop, type Problems } from "../problems";
import type { SourceText } from "../source-text";
import type { Problem } from "../unit";
import { textOf } from "./lines";
import { cellsOf } from "./tables";

/*
 * Tables of pairs with a column before them that counts their rows, as spreadsheets have it.
 */

const count = /^(\d+)[.)]?$/;

const firstCell = /^([ \t]*\|)?([^|\\]*\|[ \t]*)/;

/** Takes the first column out of a table of three whose first cells count from one; undefined for any other. `rows`: how many. */
function withoutNumbers(
  lines: LineIndex,
  first: number,
): { readonly rows: number; readonly fix: Problem["fixes"][number] } | undefined {
  const edits: { range: { start: number; end: number }; text: string }[] = [];
  let number = first;
  for (; number < lines.count; number++) {
    const text = textOf(lines, number);
    const cells = cellsOf(text.trim());
    if (cells.length !== 3) break;
    const below = number - first - 1;
    if (below > 0 && Number(count.exec(cells[0] ?? "")?.[1]) !== below) return undefined;
    const [, lead = "", cell = ""] = firstCell.exec(text) ?? [];
    if (cell === "") return undefined;
    const start = lines.start(number) + lead.length;
    edits.push({ range: { start, end: start + cell.length }, text: lead === "" ? "" : " " });
  }
  const rows = number - first - 2;
  if (rows < 3 || cellsOf(textOf(lines, first).trim()).slice(1).includes("")) return undefined;
  return { rows, fix: { title: "Take the column of numbers out", edits, drops: true } };
}

/** `|  | Wort | word |` and below it `| 1 | …`: numbers would be persons. Three and six rows may be the persons of a verb. */
export function countedForms(
  lines: LineIndex,
  first: number,
  corner: SourceText | undefined,
  problems: Problems,
): void {
  if (corner?.text !== "") return;
  const counted = withoutNumbers(lines, first);
  if (!counted || counted.rows < 4 || counted.rows === 6) return;
  problems.trap(
    "not-a-table",
    lines.line(first),
    "This is read as a table of forms whose persons are the numbers. Without their column it is a table of pairs.",
    counted.fix,
  );
}

/** A table of three columns at least with a full corner is a note; told where its section has nothing else. */
export function notedTable(lines: LineIndex, heads: readonly SourceText[], problems: Problems): void {
  const [corner] = heads;
  if (!corner || heads.length < 3 || heads.some(({ text }) => text === "")) return;
  const counted = withoutNumbers(lines, lines.lineAt(corner.whole.start));
  problems.trap(
    "not-a-table",
    corner.whole,
    counted
      ? "This table is a note: a table of pairs has two columns."
      : "This table is a note: a table of forms has an empty top left cell.",
    counted?.fix ?? drop("Empty this cell", corner.whole),
  );
}
