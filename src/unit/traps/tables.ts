import type { LineIndex } from "../../base/range";
import { drop, insert, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { textOf } from "./lines";

/*
 * Lines of a paragraph that were meant as a table.
 */

const hyphens = /^\|?[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?$/;

/** Number of cells of a row; 0 where no bar stands in it. */
function width(row: string): number {
  const bars = row.replace(/\\\|/g, "").match(/\|/g)?.length ?? 0;
  if (bars === 0) return 0;
  return bars + 1 - (row.startsWith("|") ? 1 : 0) - (row !== "|" && /(?<!\\)\|$/.test(row) ? 1 : 0);
}

/** A table whose row of hyphens is missing or has another number of cells than its heads. */
export function nearlyTable(lines: LineIndex, [first, after]: readonly [number, number], problems: Problems): void {
  const rows = Array.from({ length: after - first }, (_, i) => {
    const { start, end } = lines.line(first + i);
    return lines.text.slice(start, end).trim();
  });
  const delimiter = (cells: number): string => `|${" --- |".repeat(cells)}`;
  const isHyphens = (row: string): boolean => hyphens.test(row) && row.includes("|");
  const at = rows.findIndex((row, i) => i > 0 && isHyphens(row) && width(rows[i - 1] ?? "") > 1);
  if (at > 0) {
    const cells = width(rows[at - 1] ?? "");
    const { start, end } = lines.line(first + at);
    problems.trap(
      "not-a-table",
      { start, end },
      `This is no table: its row of hyphens needs as many cells as its heads, which are ${cells}.`,
      write(`Write “${delimiter(cells)}”`, { start, end }, delimiter(cells)),
    );
    return;
  }
  const framed = (row: string): boolean => /^\|.*(?<!\\)\|$/.test(row) && !isHyphens(row);
  const [head = "", below = ""] = rows;
  const cells = width(head);
  if (cells < 2 || !framed(head) || !framed(below) || width(below) !== cells) return;
  problems.trap(
    "not-a-table",
    lines.line(first),
    "This is no table: a row of hyphens belongs under its heads.",
    insert(`Put “${delimiter(cells)}” under it`, lines.line(first).end, lines.newline + delimiter(cells)),
  );
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
  for (let number = first; number < after; number++)
    if (!/^[ \t]{0,3}\|.*\S.*(?<!\\)\|[ \t]*$/.test(textOf(lines, number))) return false;
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

/** A table of three columns at least with a full corner is a note; told where its section has nothing else. */
export function notedTable(heads: readonly SourceText[], problems: Problems): void {
  const [corner] = heads;
  if (!corner || heads.length < 3 || heads.some(({ text }) => text === "")) return;
  problems.trap(
    "not-a-table",
    corner.whole,
    "This table is a note: a table of forms has an empty top left cell.",
    drop("Empty this cell", corner.whole),
  );
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
