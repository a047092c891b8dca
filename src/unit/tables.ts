import type { LineIndex, Range } from "../base/range";
import { commentMeaning } from "./comments";
import { type Env, scan } from "./inline";
import type { ItemReader } from "./items";
import { readAnswer, readPhrase } from "./phrases";
import { type Problems, write } from "./problems";
import { SourceText } from "./source-text";
import { countedForms } from "./traps/counted-tables";
import { acrossEmphasis } from "./traps/emphasis";
import { judgedRows } from "./traps/judged-pairs";
import { lowEndings } from "./traps/loose-signs";
import { linkedPictures, secondPictures } from "./traps/pictures";
import { printedCounters, printedDot } from "./traps/printed-counters";
import { lostCorner, namelessColumn } from "./traps/table-heads";
import { barredRows, dashInCell, gapInCell, noPerson } from "./traps/tables";
import { textTraps } from "./traps/text-traps";
import type { Answer, FormsTable, Pair, Phrase } from "./unit";

/** Where a table stands: its lines, and whether its head has an empty first cell. */
export interface RawTable {
  readonly firstLine: number;
  readonly afterLine: number;
}

/** A row's cells as texts; `\|` is a bar in them. */
export type Row = readonly SourceText[];

/** A forms table (empty top left cell) or pairs (two columns with two heads); any other is a note without pairs. */
export function readTable(
  lines: LineIndex,
  { firstLine, afterLine }: RawTable,
  context: {
    readonly env: Env;
    readonly problems: Problems;
    readonly items: ItemReader;
    readonly link: (cell: SourceText) => void;
  },
): { forms: FormsTable } | { pairs: Pair[]; heads: Row } {
  const row = (line: number): Row => splitRow(lines.text, lines.line(line));
  const head = row(firstLine);
  const heads = head.map(({ text }) => text);
  const isForms = isFormsHead(heads);
  const isPairs = isPairsHead(heads);
  const below = Array.from({ length: Math.max(0, afterLine - firstLine - 2) }, (_, i) => firstLine + 2 + i);
  const written = below.filter((line) => lines.text.slice(lines.start(line), lines.line(line).end).trim() !== "");
  if (lostCorner(lines, firstLine, head, written.map(row), context.problems)) return { pairs: [], heads: head };
  if (!isForms && !isPairs) {
    const rows = written.map((line) => ({ line, cells: row(line) }));
    namelessColumn(lines, firstLine, head, rows, context.problems);
    return { pairs: [], heads: head };
  }
  const bodyLines = barredRows(lines, written, context.problems);
  for (const line of bodyLines) {
    for (const [i, cell] of row(line).slice(0, head.length).entries()) {
      if (isForms && i > 0 && dashInCell(cell, context.problems)) continue;
      textTraps(cell, context.env, context.problems);
      context.link(cell);
      if (isForms && i > 0 && !cell.text.includes("__"))
        lowEndings(cell, scan(cell.text, context.env).mask, true, context.problems);
      if (!isPairs) continue;
      const part = i === 0 ? "left" : "right";
      printedDot(cell, context.problems);
      acrossEmphasis(cell, part, context.env, context.problems);
      linkedPictures(cell, part, context.env, context.problems);
      secondPictures(cell, part, context.env, context.problems);
    }
  }
  for (const line of bodyLines) tooMany(lines, line, row(line), head.length, context.problems);
  if (isForms) {
    countedForms(lines, firstLine, head[0], context.problems);
    for (const line of bodyLines) {
      gapInCell(lines, line, row(line), head.length, context.problems);
      noPerson(lines, line, row(line), context.problems);
    }
    const forms = readForms(lines, head, bodyLines.map(row), { firstLine, afterLine }, context.env);
    return { forms: once(forms, context.problems) };
  }
  const counted = bodyLines.flatMap((line) =>
    row(line)
      .slice(0, 1)
      .map((text) => ({ raw: { text }, shape: "pair" as const })),
  );
  printedCounters(counted, context.problems);
  const whole = { start: lines.start(firstLine), end: lines.line(afterLine - 1).end };
  judgedRows(lines, head, bodyLines.map(row), whole, context.problems);
  return { pairs: bodyLines.flatMap((line) => readPairRow(lines, line, row(line), context)), heads: head };
}

/** Whether a table whose first line begins at an offset is a forms table or pairs, so that it is read where it stands alone. */
export function isReadTable(lines: LineIndex, firstLine: number, afterLine: number, at: number): boolean {
  const head = splitRow(lines.text, { start: at, end: lines.line(firstLine).end }).map(({ text }) => text);
  return afterLine - firstLine > 2 && head.length >= 2 && (isFormsHead(head) || isPairsHead(head));
}

const isFormsHead = (head: readonly string[]): boolean =>
  head.length >= 2 && head.every((text, i) => (text === "") === (i === 0));
const isPairsHead = (head: readonly string[]): boolean => head.length === 2 && head.every((text) => text !== "");

/** Splits a row at bars that no backslash escapes (GFM: also in code). Outer bars bound no cell. */
function splitRow(file: string, { start, end }: Range): Row {
  let from = start;
  let to = end;
  while (from < to && /\s/.test(file.charAt(from))) from++;
  while (to > from && /\s/.test(file.charAt(to - 1))) to--;
  if (file.charAt(from) === "|") from++;
  if (to > from && file.charAt(to - 1) === "|" && file.charAt(to - 2) !== "\\") to--;
  const cells: SourceText[] = [];
  let dropped: number[] = [];
  let cell = from;
  const close = (at: number): void => {
    let [a, b] = [cell, at];
    while (a < b && /\s/.test(file.charAt(a))) a++;
    while (b > a && /\s/.test(file.charAt(b - 1))) b--;
    cells.push(SourceText.without(file, a, b, dropped));
    dropped = [];
    cell = at + 1;
  };
  for (let i = from; i < to; i++) {
    if (file.charAt(i) === "\\" && file.charAt(i + 1) === "|") dropped.push(i++);
    else if (file.charAt(i) === "|") close(i);
  }
  close(to);
  return cells;
}

/** The table without the columns and persons that stand in it a second time: which form is meant cannot be told there. */
function once({ columns, persons, forms, range }: FormsTable, problems: Problems): FormsTable {
  const kept = (heads: readonly Phrase[], what: string): boolean[] => {
    const known = new Set<string>();
    return heads.map(({ text, range: place }) => {
      const again = text !== "" && known.has(text);
      known.add(text);
      const message = `The ${what} “${text}” stands in this table twice; only the first one is read.`;
      if (again) problems.trap("twice-in-table", place, message);
      return !again;
    });
  };
  const column = kept(columns, "column");
  const person = kept(persons, "person");
  if (![...column, ...person].includes(false)) return { columns, persons, forms, range };
  return {
    range,
    columns: columns.filter((_, i) => column[i]),
    persons: persons.filter((_, i) => person[i]),
    forms: forms.filter((_, i) => person[i]).map((row) => row.filter((_, i) => column[i])),
  };
}

function tooMany(lines: LineIndex, line: number, cells: Row, columns: number, problems: Problems): void {
  const extra = cells[columns];
  const last = cells[columns - 1];
  if (!extra || !last) return;
  if (commentBehind(lines, last, extra, columns === 2, problems)) return;
  const { end } = lines.line(line);
  const tail = lines.text.slice(last.source(0), end);
  const closed = last.source(0) + (/\|\s*$/.test(tail) ? tail.lastIndexOf("|") : tail.length);
  const barred = (title: string, from: SourceText | undefined, to: number) => {
    const range = { start: (from ?? last).source(0), end: to };
    const text = lines.text.slice(range.start, range.end).replace(/(?<!\\)\|/g, "\\|");
    return { ...write(title, range, text), unsure: true as const };
  };
  const bar = (cell: SourceText): number => lines.text.lastIndexOf("|", cell.source(0) - 1);
  // A bar may be one of the sentence on the left, or what is over a further answer or a note.
  const left = columns === 2 ? [barred("Cut the left side at the bars", cells[0], bar(cells.at(-1) ?? extra))] : [];
  problems.add(
    "too-many-cells",
    { start: extra.source(0), end: Math.max(extra.source(0) + 1, closed) },
    `This row has ${cells.length} cells, the table has ${columns} columns; what is over is not read. A bar in a cell is written \\|.`,
    ...(cells.slice(columns).every(({ text }) => text === "")
      ? [write("Take the empty cells out", { start: bar(extra) + 1, end: closed + 1 }, "")]
      : [barred("Write the bar as \\|", last, closed), ...left]),
  );
}

/** `| roda | wheel | <!-- by: K7 -->`: nothing but a comment stands behind the last bar. Whether it does. */
function commentBehind(
  lines: LineIndex,
  last: SourceText,
  extra: SourceText,
  moves: boolean,
  problems: Problems,
): boolean {
  if (!/^<!--.*-->$/.test(extra.text)) return false;
  const meaning = commentMeaning(extra.text);
  // Other comments mean nothing anywhere.
  if (!meaning) return true;
  const range = extra.whole;
  const bar = lines.text.lastIndexOf("|", range.start);
  const end = last.text === "" ? bar : last.whole.end;
  const edits = [
    { range: { start: end, end }, text: ` ${extra.text}` },
    { range: { start: bar + 1, end: range.end }, text: "" },
  ];
  problems.trap(
    "misplaced-comment",
    range,
    "A comment counts at the end of the row's last cell, before the bar; behind it, it says nothing.",
    ...(moves ? [{ title: "Move it into the cell", edits }] : []),
  );
  return true;
}

/** A comment that means something in the left cell of a pair: it counts in the right one only. */
function commentLeft(left: SourceText, right: SourceText, env: Env, problems: Problems): void {
  for (const { start, end } of scan(left.text, env).comments) {
    const comment = left.text.slice(start, end);
    if (!commentMeaning(comment)) continue;
    const at = right.whole.end;
    const from = start - (/[^\S\n]*$/.exec(left.text.slice(0, start))?.[0].length ?? 0);
    problems.trap(
      "misplaced-comment",
      left.range(start, end),
      "A comment counts at the end of the row's last cell; here it says nothing.",
      {
        title: "Move it to the end of the row",
        edits: [
          { range: { start: left.source(from), end: left.source(start) + comment.length }, text: "" },
          { range: { start: at, end: at }, text: ` ${comment}` },
        ],
      },
    );
  }
}

function readForms(
  lines: LineIndex,
  head: Row,
  rows: readonly Row[],
  { firstLine, afterLine }: RawTable,
  env: Env,
): FormsTable {
  const phrase = (cell: SourceText | undefined): Phrase => {
    if (!cell) return { range: { start: lines.start(firstLine), end: lines.start(firstLine) }, runs: [], text: "" };
    return readPhrase({ source: cell, mask: [], env }, { start: 0, end: cell.text.length });
  };
  const form = (cell: SourceText | undefined): Answer | undefined => {
    if (!cell || cell.text === "") return undefined;
    const { mask } = scan(cell.text, env);
    return readAnswer({ source: cell, mask, env }, { start: 0, end: cell.text.length }, false);
  };
  return {
    range: { start: lines.start(firstLine), end: lines.line(afterLine - 1).end },
    columns: head.slice(1).map(phrase),
    persons: rows.map((row) => phrase(row[0])),
    forms: rows.map((row) => head.slice(1).map((_, i) => form(row[i + 1]))),
  };
}

/** A row of a table of pairs, read like an item `left = right`. */
function readPairRow(
  lines: LineIndex,
  line: number,
  [left, right]: Row,
  { env, problems, items }: { readonly env: Env; readonly problems: Problems; readonly items: ItemReader },
): Pair[] {
  const whole = lines.line(line);
  const block = { start: whole.start, end: lines.start(line + 1) };
  if (!left || !right || left.text === "" || right.text === "") {
    problems.add("empty-answer", whole, "Nothing is written here. Each side of a pair needs a word or a picture.");
    return [];
  }
  if (left.text.includes("<!--")) commentLeft(left, right, env, problems);
  return items.tableRow(left, right, block, env);
}
