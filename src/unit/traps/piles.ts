import type { LineIndex } from "../../base/range";
import type { Problems } from "../problems";
import { anySign } from "./glued";
import { textOf } from "./lines";

/*
 * Piles whose heading is only a bold line, or whose items are bare lines.
 */

/** A paragraph of a section: its lines, and the pile that it stands in, counted by headings; -1 above the first. */
export interface Paragraph {
  readonly lines: readonly [number, number];
  readonly pile: number;
}

/** What a section has, as far as its piles may be meant otherwise. */
export interface PileFacts {
  readonly paragraphs: readonly Paragraph[];
  /** How many items stand under each deeper heading. */
  readonly sizes: readonly number[];
  readonly statements: number;
}

const bold = /^[ \t]{0,3}(\*\*|__)(?=[^\s*_])([^*_]{0,60}[^\s*_:：])[:：]?\1[ \t]*[:：]?[ \t]*$/u;

export function pileTraps(lines: LineIndex, facts: PileFacts, problems: Problems): void {
  // Statements are sorted into true and false, and need no headings.
  if (facts.statements > 0) return;
  boldHeadings(lines, facts, problems);
  facts.sizes.forEach((size, pile) => {
    if (size === 0) bareItems(lines, facts, pile, problems);
  });
}

/** `**o**` in a line of its own, where no two headings name piles. */
function boldHeadings(lines: LineIndex, { paragraphs, sizes }: PileFacts, problems: Problems): void {
  if (sizes.length > 1) return;
  const found = paragraphs.flatMap(({ lines: [first, after] }) => {
    const name = after - first === 1 ? bold.exec(textOf(lines, first))?.[2] : undefined;
    return name === undefined ? [] : [{ range: lines.line(first), text: `### ${name}` }];
  });
  const [head] = found;
  if (!head || found.length + sizes.length < 2) return;
  problems.pileTrap(
    "not-a-heading",
    head.range,
    "This bold line is no heading, so that it names no pile: three number signs and a space stand before its text.",
    { title: found.length > 1 ? "Make headings of the bold lines" : "Make it a heading", edits: found },
  );
}

/** A few words and no sentence. */
const isItem = (text: string): boolean =>
  text.split(/\s+/).length <= 4 &&
  !/[.!?:;,：。]$/u.test(text) &&
  !anySign.test(text) &&
  /^[\p{L}\p{N}\p{Pi}"'¿¡]/u.test(text);

/** Bare lines under a heading that has no items at all. */
function bareItems(lines: LineIndex, { paragraphs }: PileFacts, pile: number, problems: Problems): void {
  const bare = paragraphs
    .filter((paragraph) => paragraph.pile === pile)
    .map(({ lines: [first, after] }) => Array.from({ length: after - first }, (_, i) => first + i))
    .filter((numbers) => numbers.every((number) => isItem(textOf(lines, number).trim())))
    .flat();
  const [head] = bare;
  if (head === undefined) return;
  const begin = (number: number) => {
    const text = textOf(lines, number);
    return { start: lines.start(number), end: lines.start(number) + text.length - text.trimStart().length };
  };
  problems.pileTrap(
    "not-an-item",
    { start: begin(head).end, end: lines.start(head) + textOf(lines, head).trimEnd().length },
    "No bullet stands before this: an item begins with a hyphen and a space.",
    {
      title: bare.length > 1 ? "Make items of these lines" : "Make it an item",
      edits: bare.map((number) => ({ range: begin(number), text: "- " })),
    },
  );
}
