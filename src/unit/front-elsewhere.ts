import type { LineIndex } from "../base/range";
import { type FrontLines, settingsIn } from "./front-lines";
import type { Problems } from "./problems";

/*
 * Front matter whose first line of hyphens is missing, or that Markdown shows as a heading or a block: below a comment or a title, or
 * in a fence, or in braces.
 */

const setting = /^(?:\s*$|\s*#|[\w-]+[ \t]*:(?:[ \t]|$)|[ \t]+\S|- )/u;

/** Settings that surely were meant as front matter and do not begin as it does. They are told, and read all the same. */
export function frontElsewhere(
  lines: LineIndex,
  textOf: (number: number) => string,
  first: number,
  problems: Problems,
): FrontLines | undefined {
  return (
    inBraces(lines, textOf, first, problems) ??
    unopened(lines, textOf, first, problems) ??
    misplaced(lines, textOf, first, problems) ??
    belowTitle(lines, textOf, first, problems)
  );
}

/** Settings at the beginning of a file with no line of hyphens above them, and perhaps none below. */
function unopened(
  lines: LineIndex,
  textOf: (number: number) => string,
  first: number,
  problems: Problems,
): FrontLines | undefined {
  let after = first;
  while (after < lines.count && /^(?:[a-z][\w-]*[ \t]*:(?:[ \t]|$)|[ \t]+\S|- )/u.test(textOf(after))) after++;
  const closed = after < lines.count && /^-{3,}\s*$/.test(textOf(after));
  const ends = closed || after === lines.count || /^(?:\s*$|#|```)/.test(textOf(after));
  if (!ends || settingsIn(textOf, first, after) < (closed ? 1 : 2)) return undefined;
  const newline = lines.newline;
  const from = lines.text.startsWith("\uFEFF") ? 1 : 0;
  const begin = { start: from, end: Math.max(from, lines.start(first)) };
  const last = closed ? lines.line(after) : { start: lines.line(after - 1).end, end: lines.line(after - 1).end };
  problems.add(
    "unreadable-yaml",
    { start: begin.end, end: lines.line(first).end },
    "Front matter stands between two lines of three hyphens, the first of which is missing; so it is not read.",
    {
      title: "Write three hyphens",
      edits: [
        { range: begin, text: `---${newline}` },
        { range: last, text: closed ? "---" : `${newline}---` },
      ],
    },
  );
  return { first, after, body: closed ? after + 1 : after };
}

/** Below a comment or a title, or in a fence. */
function misplaced(
  lines: LineIndex,
  textOf: (number: number) => string,
  first: number,
  problems: Problems,
): FrontLines | undefined {
  const above = belowNotes(lines, textOf, first);
  const fence = above === first ? /^(?:`{3,}|~{3,})(?=[ \t]*(?:ya?ml)?[ \t]*$)/iu.exec(textOf(first))?.[0] : undefined;
  if (above === first && fence === undefined) return undefined;
  if (fence === undefined && !/^---\s*$/.test(textOf(above))) return undefined;
  const ends = (number: number): boolean => textOf(number).trimEnd() === (fence ?? "---");
  let close = above + 1;
  while (close < lines.count && !ends(close) && setting.test(textOf(close))) close++;
  if (close >= lines.count || !ends(close) || settingsIn(textOf, above + 1, close) < (fence === undefined ? 1 : 2))
    return undefined;
  const from = lines.text.startsWith("\uFEFF") ? 1 : 0;
  const head = { start: Math.max(from, lines.start(above)), end: lines.line(above).end };
  if (fence !== undefined)
    problems.add("unreadable-yaml", head, "Front matter stands between two lines of three hyphens, not in a block.", {
      title: "Write three hyphens",
      edits: [head, lines.line(close)].map((range) => ({ range, text: "---" })),
    });
  else {
    const settings = lines.text.slice(head.start, lines.line(close).end);
    problems.add(
      "unreadable-yaml",
      head,
      "Front matter begins in the first line of a file, with nothing before it; so it is not read.",
      toBeginning(lines, { start: head.start, after: close + 1 }, settings),
    );
  }
  return { first: above + 1, after: close, body: close + 1 };
}

/** Two settings at least in lines of their own, below a title, with no hyphens. */
function belowTitle(
  lines: LineIndex,
  textOf: (number: number) => string,
  first: number,
  problems: Problems,
): FrontLines | undefined {
  const above = belowNotes(lines, textOf, first);
  if (above === first) return undefined;
  let after = above;
  while (after < lines.count && /^(?:[a-z][\w-]*[ \t]*:(?:[ \t]|$)|[ \t]+\S|- )/u.test(textOf(after))) after++;
  const ends = after === lines.count || /^(?:\s*$|#|```)/.test(textOf(after));
  if (!ends || settingsIn(textOf, above, after) < 2) return undefined;
  const { newline } = lines;
  const start = lines.start(above);
  const settings = lines.text.slice(start, lines.line(after - 1).end);
  problems.add(
    "unreadable-yaml",
    lines.line(above),
    "Front matter begins in the first line of a file, with three hyphens and nothing before them; so it is not read.",
    toBeginning(lines, { start, after }, `---${newline}${settings}${newline}---`),
  );
  return { first: above, after, body: after };
}

/** `{ "title": "Harbour" }` over several lines: YAML reads what is written so, between its hyphens. */
function inBraces(
  lines: LineIndex,
  textOf: (number: number) => string,
  first: number,
  problems: Problems,
): FrontLines | undefined {
  if (!/^\{\s*$/.test(textOf(first))) return undefined;
  let close = first + 1;
  while (close < lines.count && /^\s*(?:"[\w-]+"\s*:|[\]"{]|\d|\},)/u.test(textOf(close))) close++;
  if (close >= lines.count || !/^\}\s*$/.test(textOf(close))) return undefined;
  const bare = (number: number): string => textOf(number).replace(/^\s*"([\w-]+)"/u, "$1");
  if (settingsIn(bare, first + 1, close) < 2) return undefined;
  const begin = lines.text.startsWith("\uFEFF") ? 1 : 0;
  const start = Math.max(begin, lines.start(first));
  const { end } = lines.line(close);
  problems.add(
    "unreadable-yaml",
    { start, end: lines.line(first).end },
    "Front matter stands between two lines of three hyphens; so it is not read.",
    {
      title: "Put lines of hyphens round it",
      edits: [
        { range: { start: begin, end: start }, text: `---${lines.newline}` },
        { range: { start: end, end }, text: `${lines.newline}---` },
      ],
    },
  );
  return { first, after: close + 1, body: close + 1 };
}

/** Puts front matter, `written` as it is to be, where a file begins, and takes it out from `start` up to the line `after` it. */
function toBeginning(
  lines: LineIndex,
  { start, after }: { readonly start: number; readonly after: number },
  written: string,
) {
  const { text, newline, count } = lines;
  const from = text.startsWith("\uFEFF") ? 1 : 0;
  return {
    title: "Move it to the beginning",
    edits: [
      { range: { start: from, end: from }, text: written + newline + newline },
      { range: { start, end: after < count ? lines.start(after) : text.length }, text: "" },
    ],
  };
}

/** The first line that is no comment, no title and not blank, from one on. */
function belowNotes(lines: LineIndex, textOf: (number: number) => string, first: number): number {
  let at = first;
  while (at < lines.count) {
    const text = textOf(at);
    if (/^ {0,3}<!--/.test(text)) {
      while (at < lines.count && !textOf(at).includes("-->")) at++;
      if (at < lines.count && textOf(at).trimEnd().endsWith("-->")) at++;
      else return first;
    } else if (text.trim() === "" || /^#[ \t]+\S/.test(text)) at++;
    else break;
  }
  return Math.min(at, lines.count - 1);
}
