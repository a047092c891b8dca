import type { LineIndex } from "../../base/range";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import type { Together } from "../together";
import { textOf } from "./lines";
import { cellsOf, delimiter, isHyphens, width } from "./tables";

/*
 * Tables whose heads, or rows, stand so far in that Markdown makes code of them.
 */

const farIn = /^(?: {4,}|\t| {1,3}\t)[ \t]*\S/;

/**
 * `      medir | pesar` right above the lines of a paragraph that are rows, with a row of hyphens or none. Whether they are such.
 */
export function farHeads(lines: LineIndex, [first, after]: readonly [number, number], problems: Problems): boolean {
  const line = first > 0 ? lines.line(first - 1) : undefined;
  const text = line ? lines.text.slice(line.start, line.end) : "";
  if (!line || !farIn.test(text) || width(text.trim()) < 2) return false;
  // A row below others is told as such.
  if (first > 1 && width(textOf(lines, first - 2).trim()) > 1) return false;
  const heads = cellsOf(text);
  const named = heads[0] === "" ? heads.slice(1) : heads;
  const rows = Array.from({ length: after - first }, (_, i) => textOf(lines, first + i).trim());
  const hyphens = isHyphens(rows[0] ?? "");
  const [body = "", ...others] = rows.slice(hyphens ? 1 : 0);
  const columns = width(body);
  if (columns < 2 || ![body, ...others].every((row) => width(row) === columns) || named.includes("")) return false;
  if (hyphens && width(rows[0] ?? "") !== columns) return false;
  // Of forms the corner above the persons may be left out.
  if (columns !== heads.length && (columns !== named.length + 1 || named.length < 2)) return false;
  const put = columns === heads.length ? heads : ["", ...named];
  const written = `| ${put.join(" | ")} |${hyphens ? "" : lines.newline + delimiter(columns)}`;
  problems.trap(
    "not-a-table",
    line,
    "This is no table: the spaces before its heads make code of them.",
    write("Write the heads as a row", line, written),
  );
  return true;
}

/** Code right below a table that is rows of it. `above` is the line behind the table. Whether it is. */
export function farRows(
  lines: LineIndex,
  above: number | undefined,
  [first]: readonly [number, number],
  problems: Problems,
): boolean {
  if (above !== first) return false;
  const line = lines.line(first);
  const edits = [];
  for (let number = first; number < lines.count && width(textOf(lines, number).trim()) > 1; number++) {
    const text = textOf(lines, number);
    const lead = text.length - text.trimStart().length;
    const start = lines.start(number);
    if (farIn.test(text)) edits.push({ range: { start, end: start + lead }, text: "" });
  }
  if (edits.length === 0) return false;
  problems.trap("not-a-table", line, "The spaces before this row make code of it, and end the table.", {
    title: "Take the spaces out",
    edits,
  });
  return true;
}

/**
 * Whether all rows of a table have one cell more than there are heads, and none of the cells is empty: the empty one above the
 * persons of a table of forms was left out.
 */
export function lostCorner(
  lines: LineIndex,
  line: number,
  heads: readonly SourceText[],
  rows: readonly (readonly SourceText[])[],
  problems: Problems,
): boolean {
  const isOneMore = (row: readonly SourceText[]): boolean =>
    row.length === heads.length + 1 && row.every(({ text }) => text !== "" && !text.startsWith("<!--"));
  if (heads.length < 2 || heads.some(({ text }) => text === "") || rows.length < 2 || !rows.every(isOneMore))
    return false;
  const edits = [line, line + 1].map((number, i) => {
    const start = lines.start(number) + textOf(lines, number).search(/\S/);
    const cell = i === 0 ? "" : "--- ";
    return { range: { start, end: start }, text: lines.text[start] === "|" ? `| ${cell}` : `| ${cell}| ` };
  });
  problems.trap(
    "too-many-cells",
    lines.line(line),
    "Each row below has one cell more than there are heads, so that the last ones are not read. Above the persons of a table of forms stands an empty cell.",
    { title: "Put an empty cell before the heads", edits },
  );
  return true;
}

/**
 * `| o rio | the river |` above the row of hyphens: heads that begin as the left and right sides of the section's pairs do are a pair,
 * which is not read. What the columns are called nobody else knows.
 */
export function pairAsHeads(
  lines: LineIndex,
  line: number,
  [left, right]: readonly SourceText[],
  bullets: Together,
  problems: Problems,
): void {
  if (!left || !right || !bullets.mostlyPairs || !bullets.beginAsSides(left.text, right.text)) return;
  const { start, end } = lines.line(line);
  const below = lines.line(line + 1);
  problems.trap(
    "not-a-table",
    { start, end },
    "Above the row of hyphens stand the heads of a table, and these look like a pair: it is not read.",
    {
      title: "Put heads above it",
      edits: [
        { range: { start, end: start }, text: `| 1 | 2 |${lines.newline}${delimiter(2)}${lines.newline}` },
        { range: { start: end, end: below.end }, text: "" },
      ],
      unsure: true,
    },
  );
}

/**
 * A table with an empty top left cell and a further empty head, which is no table of forms: without a name no form of that column can be
 * asked for. A last column in which nothing stands may go.
 */
export function namelessColumn(
  lines: LineIndex,
  line: number,
  heads: readonly SourceText[],
  rows: readonly { readonly line: number; readonly cells: readonly SourceText[] }[],
  problems: Problems,
): void {
  const texts = heads.map(({ text }) => text);
  const at = texts.indexOf("", 1);
  if (texts[0] !== "" || at < 0 || texts.slice(1).every((text) => text === "") || rows.length === 0) return;
  const last = texts.length - 1;
  const isSpare = at === last && last > 1 && rows.every(({ cells }) => (cells[last]?.text ?? "") === "");
  const cut = (number: number) => {
    const [, kept] = /^(.*(?<!\\)\|)[^|]*\|[ \t]*$/u.exec(textOf(lines, number)) ?? [];
    const { start, end } = lines.line(number);
    return kept === undefined ? [] : [{ range: { start: start + kept.length, end }, text: "" }];
  };
  const whole = [line, line + 1, ...rows.flatMap((row) => (row.cells.length > last ? [row.line] : []))];
  const edits = whole.flatMap(cut);
  problems.trap(
    "not-a-table",
    lines.line(line),
    `This is no table of forms: above its column ${at + 1} stands no word, so that nothing of it is read.`,
    ...(isSpare && edits.length === whole.length ? [{ title: "Take the empty column out", edits }] : []),
  );
}
