import type { LineIndex } from "../../base/range";
import { drop, insert, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { textOf } from "./lines";
import { pairsOfRows } from "./rows-as-pairs";

/*
 * Lines of a paragraph that were meant as a table.
 */

const hyphens = /^\|?[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?$/;

/** Number of cells of a row; 0 where no bar stands in it. */
export function width(row: string): number {
  const bars = row.replace(/\\\|/g, "").match(/\|/g)?.length ?? 0;
  if (bars === 0) return 0;
  return bars + 1 - (row.startsWith("|") ? 1 : 0) - (row !== "|" && /(?<!\\)\|$/.test(row) ? 1 : 0);
}

/** The cells of a row as written, without its outer bars. */
export const cellsOf = (row: string): string[] =>
  row
    .trim()
    .replace(/^\||(?<!\\)\|$/g, "")
    .split(/(?<!\\)\|/)
    .map((cell) => cell.trim());

export const delimiter = (cells: number): string => `|${" --- |".repeat(cells)}`;

export const isHyphens = (row: string): boolean => hyphens.test(row) && row.includes("|");

/** A table whose row of hyphens is missing or has another number of cells than its heads. */
export function nearlyTable(lines: LineIndex, [first, after]: readonly [number, number], problems: Problems): void {
  const rows = Array.from({ length: after - first }, (_, i) => {
    const { start, end } = lines.line(first + i);
    return lines.text.slice(start, end).trim();
  });
  const at = rows.findIndex((row, i) => i > 0 && isHyphens(row) && width(rows[i - 1] ?? "") > 1);
  if (at > 0) {
    const cells = width(rows[at - 1] ?? "");
    const { start, end } = lines.line(first + at);
    const corner = cornerBefore(rows.slice(at - 1));
    const head = lines.line(first + at - 1);
    const lead = textOf(lines, first + at - 1).search(/\S/);
    problems.trap(
      "not-a-table",
      { start, end },
      `This is no table: its row of hyphens needs as many cells as its heads, which are ${cells}.`,
      ...(corner === undefined
        ? []
        : [write("Put an empty cell before the heads", { start: head.start + lead, end: head.end }, corner)]),
      {
        ...write(`Write “${delimiter(cells)}”`, { start, end }, delimiter(cells)),
        // Where the rows have as many cells as the hyphens, it is a head that is missing.
        ...(corner === undefined && rows.slice(at + 1).some((row) => width(row) > cells)
          ? { unsure: true as const }
          : {}),
      },
    );
    return;
  }
  const framed = (row: string): boolean => /^\|.*(?<!\\)\|$/.test(row) && !isHyphens(row);
  const [head = "", ...below] = rows;
  const cells = width(head);
  if (cells < 2 || !framed(head) || !below.some(framed) || width(below[0] ?? "") !== cells) return;
  // What has no outer bars is a row where all that stands there is one.
  if (!framed(below[0] ?? "") && !below.every((row) => width(row) === cells)) return;
  const put = insert(`Put “${delimiter(cells)}” under it`, lines.line(first).end, lines.newline + delimiter(cells));
  const all = Array.from({ length: after - first }, (_, i) => first + i);
  // Of two columns the first row may be a pair like those below it.
  const pairs = cells === 2 && cellsOf(head).every(Boolean) ? pairsOfRows(lines, all, [first, after]) : undefined;
  problems.trap(
    "not-a-table",
    lines.line(first),
    "This is no table: a row of hyphens belongs under its heads.",
    ...(pairs ? [{ ...put, unsure: true as const }, pairs] : [put]),
  );
}

/** The heads of forms with the empty corner above the persons, where just that is missing; `rows` are the heads, hyphens and rows. */
function cornerBefore([head = "", below = "", ...body]: readonly string[]): string | undefined {
  const columns = width(below);
  // One that stands there already shows that another head is missing.
  if (columns !== width(head) + 1 || columns < 3 || body.length === 0 || cellsOf(head)[0] === "") return undefined;
  if (!body.every((row) => width(row) === columns)) return undefined;
  return `|  | ${cellsOf(head).join(" | ")} |`;
}

/** A text right below a table, of which Markdown makes a row with one cell. The lines that are rows. */
export function barredRows(lines: LineIndex, rows: readonly number[], problems: Problems): number[] {
  const barred = rows.filter((number) => width(textOf(lines, number).trim()) > 0);
  const first = rows.find((number) => !barred.includes(number));
  if (first === undefined) return barred;
  const last = barred.at(-1) ?? 0;
  problems.trap(
    "not-a-table",
    lines.line(first),
    "No bar stands in this line, so that it is no row; right below a table Markdown makes one of it.",
    ...(last > first ? [] : [insert("Put a blank line before it", lines.start(first), lines.newline)]),
  );
  return barred;
}

/** Rows of a table below a blank line, which ends it. `above` is the line behind the table. Whether these are such rows. */
export function partedRows(
  lines: LineIndex,
  above: number | undefined,
  [first, after]: readonly [number, number],
  problems: Problems,
): boolean {
  if (above === undefined || above > first) return false;
  const columns = columnsAbove(lines, above);
  for (let number = first; number < after; number++) {
    const text = textOf(lines, number);
    const framed = /^[ \t]{0,3}\|.*\S.*(?<!\\)\|[ \t]*$/.test(text);
    // Without its outer bars a row has as many cells as those above, of few words each.
    const cells = text.trim().split(/(?<!\\)\|/);
    const short = cells.every((cell) => cell.trim().split(/\s+/).length < 4 && /^[^.:;!?]*\p{L}[^.:;!?]*$/u.test(cell));
    if (!framed && !(columns > 1 && width(text.trim()) === columns && cells.length === columns && short)) return false;
  }
  let last = above - 1;
  while (last > 0 && textOf(lines, last).trim() === "") last--;
  problems.trap(
    "not-a-table",
    lines.line(first),
    "The blank line above ends the table, so that this row is not read.",
    write("Take the blank line out", { start: lines.line(last).end, end: lines.line(first - 1).end }, ""),
  );
  return true;
}

/** Cells of a table's rows, by the line behind it. */
function columnsAbove(lines: LineIndex, after: number): number {
  let last = after - 1;
  while (last > 0 && textOf(lines, last).trim() === "") last--;
  return width(textOf(lines, last).trim());
}

/** `| eu | meço   peso |`: a bar is missing between two forms of a row, so that its last cell is empty or not there. */
export function gapInCell(
  lines: LineIndex,
  line: number,
  cells: readonly SourceText[],
  columns: number,
  problems: Problems,
): void {
  const last = cells[columns - 1];
  if (last && last.text !== "") return;
  const { start, end } = lines.line(line);
  const row = lines.text.slice(start, end);
  const gap = /(?<=[^\s|])(?:[^\S\n]{2,}|\t)(?=[^\s|])/u.exec(row);
  if (!gap) return;
  const range = { start: start + gap.index, end: start + gap.index + gap[0].length };
  const empty = /\|[ \t]*(?=\|[ \t]*$)/u.exec(row);
  problems.trap(
    "gap-in-cell",
    range,
    "No bar stands in this gap: both words are in one cell, and the last cell of the row is empty.",
    {
      title: "Put a bar there",
      edits: [
        { range, text: " | " },
        ...(last && empty
          ? [{ range: { start: start + empty.index, end: start + empty.index + empty[0].length }, text: "" }]
          : []),
      ],
    },
    write("Leave one space", range, " "),
  );
}

/** `|  | foi | viu |`: nothing says whose forms these are. */
export function noPerson(
  lines: LineIndex,
  line: number,
  [person, ...forms]: readonly SourceText[],
  problems: Problems,
): void {
  if (person?.text !== "" || forms.every(({ text }) => text === "")) return;
  problems.trap(
    "empty-answer",
    lines.line(line),
    "This row has no person, so that nothing says which form is asked for.",
    // Only the writer knows whose forms these are.
    drop("Take the row out", { start: lines.start(line), end: lines.start(line + 1) }),
  );
}

const noForm = /^(?:[\p{Pd}−×∅Ø/]+|\*|…|\.{2,}|_{2,}|\[(?:\.{2,}|…|_{2,}|\s*)\])$/u;

/** `| eu | — |`, `| eu | [...] |`: a sign that says that there is no form would be one. Whether the cell is such. */
export function dashInCell(cell: SourceText, problems: Problems): boolean {
  if (!noForm.test(cell.text)) return false;
  problems.trap(
    "dash-in-cell",
    cell.whole,
    `“${cell.text}” is read as a form and printed; where there is none the cell stays empty.`,
    write("Empty this cell", cell.whole, " ".repeat(cell.text.length)),
  );
  return true;
}
