import schema from "../../schemas/front-matter.schema.json";
import type { LineIndex } from "../base/range";
import type { FrontLines } from "./front";
import type { Problems } from "./problems";

/*
 * Front matter that Markdown shows as a heading or a block: below a comment or a title, or in a fence instead of its hyphens.
 */

const setting = /^(?:\s*$|\s*#|[\w-]+[ \t]*:(?:[ \t]|$)|[ \t]+\S|- )/u;

/** Settings that surely were meant as front matter and do not stand where it is read. They are told, and read all the same. */
export function frontElsewhere(
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
  if (close >= lines.count || !ends(close) || known(textOf, above + 1, close) < (fence === undefined ? 1 : 2))
    return undefined;
  const from = lines.text.startsWith("\uFEFF") ? 1 : 0;
  const head = { start: Math.max(from, lines.start(above)), end: lines.line(above).end };
  if (fence !== undefined)
    problems.add("unreadable-yaml", head, "Front matter stands between two lines of three hyphens, not in a block.", {
      title: "Write three hyphens",
      edits: [head, lines.line(close)].map((range) => ({ range, text: "---" })),
    });
  else {
    const newline = lines.newline;
    const end = close + 1 < lines.count ? lines.start(close + 1) : lines.text.length;
    const block = lines.text.slice(head.start, lines.line(close).end) + newline + newline;
    problems.add(
      "unreadable-yaml",
      head,
      "Front matter begins in the first line of a file, with nothing before it; so it is not read.",
      {
        title: "Move it to the beginning",
        edits: [
          { range: { start: from, end: from }, text: block },
          { range: { start: head.start, end }, text: "" },
        ],
      },
    );
  }
  return { first: above + 1, after: close, body: close + 1 };
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

/** How many options of a unit stand in the lines. */
function known(textOf: (number: number) => string, from: number, to: number): number {
  let found = 0;
  for (let number = from; number < to; number++) {
    const name = /^([\w-]+)[ \t]*:/u.exec(textOf(number))?.[1];
    if (name !== undefined && Object.hasOwn(schema.properties, name)) found++;
  }
  return found;
}
