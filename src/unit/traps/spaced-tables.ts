import type { LineIndex } from "../../base/range";
import { type Problems, write } from "../problems";
import { textOf } from "./lines";

/*
 * A table of forms that is laid out with white space instead of bars: a note, or code where its head stands far in.
 */

/** Words of one cell, parted from the next by a tab or at least two spaces. */
const gap = /\t\s*|[^\S\n]{2,}/u;

const isCell = (cell: string): boolean => cell !== "" && cell.split(/\s+/).length <= 3 && !/[|｜.!?:;,=＝]/u.test(cell);

/**
 * `       medir   pesar` above `eu     meço    peso` and at least one more such row, in the lines of a paragraph or of code. Whether it is
 * one.
 */
export function spacedForms(lines: LineIndex, [from, after]: readonly [number, number], problems: Problems): boolean {
  // A head that stands far in is code, which ends where the paragraph begins.
  const first = from > 0 && /^\s+\S/.test(textOf(lines, from - 1)) ? from - 1 : from;
  let last = after - 1;
  while (last > first && textOf(lines, last).trim() === "") last--;
  if (last - first < 2) return false;
  const head = textOf(lines, first);
  const heads = head.trim().split(gap);
  if (!/^[^\S\n]{2,}|^\t/u.test(head) || heads.length < 2 || !heads.every(isCell)) return false;
  const indent = head.length - head.trimStart().length;
  const rows: string[][] = [];
  for (let number = first + 1; number <= last; number++) {
    const text = textOf(lines, number);
    const row = text.trim().split(gap);
    // The heads stand over the forms, behind the persons.
    if (text.length - text.trimStart().length >= indent) return false;
    if (row.length !== heads.length + 1 || !row.every(isCell)) return false;
    rows.push(row);
  }
  const written = [["", ...heads], ["", ...heads].map(() => "---"), ...rows].map((row) => `| ${row.join(" | ")} |`);
  const range = { start: lines.start(first), end: lines.line(last).end };
  problems.trap(
    "not-a-table",
    lines.line(first),
    "This is no table: bars part its cells, and a row of hyphens stands under its heads.",
    write("Write it as a table", range, written.join(lines.newline)),
  );
  return true;
}
