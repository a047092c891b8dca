import type { LineIndex } from "../../base/range";
import type { Problems } from "../problems";
import type { Problem } from "../unit";
import { textOf } from "./lines";

/*
 * Signs that nobody sees in what begins a line: marks of direction, breaks without width. Arabic and Hebrew word processors, chats
 * and web pages leave them, and Markdown takes them for text.
 */

const hidden = "\\u00ad\\u061c\\u200b-\\u200f\\u202a-\\u202e\\u2060-\\u2064\\u2066-\\u2069\\ufeff";
const some = new RegExp(`[${hidden}]`);
const all = new RegExp(`[${hidden}]`, "g");

/** Such signs at the beginning of a text. */
export const hiddenHead = new RegExp(`^[${hidden}]+`);

/** The sign of a pair with such signs beside it, which keep white space from standing there. */
const equals = new RegExp(`[\\s${hidden}]+[=＝][\\s${hidden}]+`, "u");

/** Where something hidden stands beside the “ = ” of a text, with the white space round it. */
export function hiddenEquals(text: string): { readonly start: number; readonly end: number } | undefined {
  const match = some.test(text) ? equals.exec(text) : null;
  return match && some.test(match[0]) ? { start: match.index, end: match.index + match[0].length } : undefined;
}

/** What Markdown reads at the beginning of a line. */
const head =
  /^[ \t>]*(?:(?:[-*+]|\d{1,9}[.)])[ \t]+(?:\[[ xX]?\](?:[ \t]+|(?=\p{L})))?|#{1,6}[ \t]+|(?:`{3,}|~{3,})[ \t]*(?:\p{L}+|$)|\|(?=.*\|))/u;
const fence = /^[ \t>]*(`{3,}|~{3,})/;

/**
 * Looks at the lines from one on up to another, which begin outside of any block, as if nothing hidden stood in them. What was told
 * of such a line, from the problem `known` on, has the same cause.
 */
export function hiddenSigns(lines: LineIndex, from: number, after: number, known: number, problems: Problems): void {
  if (!some.test(lines.text.slice(lines.start(from), lines.line(after - 1).end))) return;
  let inside: string | undefined;
  for (let number = from; number < after; number++) {
    const text = textOf(lines, number);
    // A byte order mark is no part of the first line.
    const bare = text.replace(all, (sign, at) => (number === 0 && at === 0 && sign === "\ufeff" ? sign : ""));
    const mark = fence.exec(bare)?.[1];
    const within = inside !== undefined && !(mark?.startsWith(inside) && bare.trim() === mark);
    if (!within) lineHead(lines, number, bare, known, problems);
    if (inside === undefined) inside = mark;
    else if (!within) inside = undefined;
  }
}

function lineHead(lines: LineIndex, number: number, bare: string, known: number, problems: Problems): void {
  const text = textOf(lines, number);
  const length = bare.length < text.length ? (head.exec(bare)?.[0].trimEnd().length ?? 0) : 0;
  if (length === 0) return;
  const { start, end } = lines.line(number);
  const edits: Problem["fixes"][number]["edits"][number][] = [];
  let [at, seen] = [0, 0];
  // What follows a mark with nothing but white space between them belongs to the text, but for what keeps it from being white space.
  for (; seen < length || (seen === length && some.test(text[at] ?? "") && !isText(text, at)); at++) {
    if (!some.test(text[at] ?? "") || (number === 0 && at === 0 && text[at] === "\ufeff")) seen++;
    else edits.push({ range: { start: start + at, end: start + at + 1 }, text: "" });
  }
  if (edits.length === 0) return;
  const told = problems.list.splice(known).filter(({ range }) => range.start < start || range.start > end);
  problems.list.push(...told);
  const begin = start + (text.length - text.replace(/^[ \t>]+/, "").length);
  problems.tell(
    // Without its heading or its fence a section is not in use.
    /^[ \t>]*(?:##[ \t]|[`~])/.test(bare) ? undefined : true,
    "hidden-sign",
    { start: begin, end: start + at },
    "A sign that nobody sees stands in what begins this line, so that it is not read as it looks.",
    { title: "Take what is hidden out", edits },
  );
}

/** Whether what is hidden at a place stands right before a text, and not before white space. */
function isText(text: string, at: number): boolean {
  return !/^\s/.test(text.slice(at).replace(all, ""));
}
