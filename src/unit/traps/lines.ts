import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../../base/range";

/*
 * Whole lines of a file, as traps look at them and move them.
 */

type Edit = { readonly range: Range; readonly text: string };

/** A line without its ending. */
export function textOf(lines: LineIndex, number: number): string {
  const { start, end } = lines.line(number);
  return lines.text.slice(start, end);
}

/** Whether a fenced block has a line that ends it: then it has a line more than its content and its head. */
export function isClosed({ map, content }: Token): boolean {
  const [first, after] = map ?? [0, 0];
  const written = content.split("\n").length - (content === "" || content.endsWith("\n") ? 1 : 0);
  return after - first - 1 > written;
}

/** Takes up to `width` characters of white space from the beginning of lines. */
export function cutEdits(lines: LineIndex, from: number, after: number, width: number): Edit[] {
  const edits: Edit[] = [];
  for (let number = from; number < after; number++) {
    const text = textOf(lines, number);
    const own = Math.min(width, text.length - text.trimStart().length);
    const start = lines.start(number);
    if (own > 0) edits.push({ range: { start, end: start + own }, text: "" });
  }
  return edits;
}

/** Puts a blank line above and below lines where there is none. */
export function blankAround(lines: LineIndex, first: number, after: number): Edit[] {
  const newline = lines.newline;
  const blank = (number: number): boolean => number < 0 || number >= lines.count || textOf(lines, number).trim() === "";
  const put = (offset: number): Edit => ({ range: { start: offset, end: offset }, text: newline });
  return [
    ...(blank(first - 1) ? [] : [put(lines.line(first - 1).end)]),
    ...(blank(after) ? [] : [put(lines.line(after - 1).end)]),
  ];
}
