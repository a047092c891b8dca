import type { LineIndex } from "../../base/range";
import type { Problems } from "../problems";
import { anySign } from "./glued";
import { textOf } from "./lines";
import { nextLine } from "./numbered-lines";

/*
 * Piles whose heading is only a line of text, or whose items are bare lines.
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
  /** Lines of headings of the first rank that items stand below. */
  readonly tops: readonly number[];
}

/** `o:` */
const named = /^[ \t]{0,3}(?![-+*>#|[<]|\d+[.)])([^:：]{0,40}[^\s:：])[ \t]*[:：][ \t]*$/u;

const bold = /^[ \t]{0,3}(\*\*|__)(?=[^\s*_])([^*_]{0,60}[^\s*_:：])[:：]?\1[ \t]*[:：]?[ \t]*$/u;

export function pileTraps(lines: LineIndex, facts: PileFacts, problems: Problems): void {
  // Statements are sorted into true and false, and need no headings.
  if (facts.statements > 0) return;
  lineHeadings(lines, facts, problems);
  topHeadings(lines, facts, problems);
  facts.sizes.forEach((size, pile) => {
    if (size === 0) bareItems(lines, facts, pile, problems);
    else bareCards(lines, facts, pile, problems);
  });
}

/** `**o**`, or `o:` above bullets, in a line of its own. */
function lineHeadings(lines: LineIndex, { paragraphs, sizes }: PileFacts, problems: Problems): void {
  // Where headings name the piles, a line above the first is a note, and another one only names a pile if items follow.
  const headed = sizes.length > 1;
  const found = paragraphs.flatMap(({ lines: [first, after], pile }) => {
    if (headed && (pile < 0 || sizes[pile] === 0 || !aboveBullets(lines, after))) return [];
    if (after - first !== 1) return [];
    const text = textOf(lines, first);
    const name = bold.exec(text)?.[2];
    if (name !== undefined) return [{ range: lines.line(first), name, isBold: true }];
    const other = aboveBullets(lines, after) ? named.exec(text)?.[1] : undefined;
    return other !== undefined && other.split(/\s+/).length <= 3
      ? [{ range: lines.line(first), name: other, isBold: false }]
      : [];
  });
  const [head] = found;
  if (!head || found.length + sizes.length < 2) return;
  const all = found.every(({ isBold }) => isBold);
  const title = found.length > 1 ? `Make headings of the ${all ? "bold " : ""}lines` : "Make it a heading";
  const edits = found.map(({ range, name }) => ({ range, text: `### ${name}` }));
  problems.tell(
    "piles",
    "not-a-heading",
    head.range,
    `This ${head.isBold ? "bold " : ""}line is no heading, so that it names no pile: three number signs and a space stand before its text.`,
    all && !headed ? { title, edits } : { title, edits, unsure: true },
  );
}

/** `# os` among `### o`: what stands below it goes to the pile above. */
function topHeadings(lines: LineIndex, { tops }: PileFacts, problems: Problems): void {
  const [first] = tops;
  if (first === undefined) return;
  problems.tell(
    "piles",
    "not-a-heading",
    lines.line(first),
    "A heading with one number sign begins no pile: what stands below it goes on as if it were not there.",
    {
      title: tops.length > 1 ? "Give these headings three number signs" : "Give it three number signs",
      edits: tops.map((line) => {
        const at = lines.start(line) + textOf(lines, line).indexOf("#");
        return { range: { start: at, end: at }, text: "##" };
      }),
      // One without a name is still being written, perhaps as one of a section.
      ...(tops.every((line) => /^\s*#\s*$/.test(textOf(lines, line))) ? { unsure: true as const } : {}),
    },
  );
}

/** Whether the first line from one on that is not blank is a bullet. */
function aboveBullets(lines: LineIndex, from: number): boolean {
  let number = from;
  while (number < lines.count && textOf(lines, number).trim() === "") number++;
  return number < lines.count && /^[ \t]{0,3}[-*+][ \t]+\S/.test(textOf(lines, number));
}

/** A few words and no sentence. */
export const isItem = (text: string): boolean =>
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
  // Words with commas between them are hardly one card.
  const parted = (number: number) => {
    const text = textOf(lines, number);
    return [...text.trimEnd().matchAll(/\s*[,;，；、]\s*/gu)].map(({ index, 0: sign }) => ({
      range: { start: lines.start(number) + index, end: lines.start(number) + index + sign.length },
      text: `${lines.newline}- `,
    }));
  };
  const commas = bare.flatMap(parted);
  const edits = bare.map((number) => ({ range: begin(number), text: "- " }));
  problems.tell(
    "piles",
    "not-an-item",
    { start: begin(head).end, end: lines.start(head) + textOf(lines, head).trimEnd().length },
    "No bullet stands before this: an item begins with a hyphen and a space.",
    ...(commas.length > 0
      ? [{ title: "Make items of the words between the commas", edits: [...edits, ...commas], unsure: true as const }]
      : []),
    {
      title: bare.length > 1 ? "Make items of these lines" : "Make it an item",
      edits,
      ...(commas.length > 0 ? { unsure: true as const } : {}),
    },
  );
}

const card = /^[ \t]{0,3}[-*+][ \t]+(\S.*?)[ \t]*$/u;

const isLower = (text: string): boolean => /^[\p{Ll}\p{Lo}]/u.test(text);

/** The text of the card that a line holds; undefined where it is none. */
const cardAt = (lines: LineIndex, line: number): string | undefined =>
  line >= 0 && line < lines.count ? card.exec(textOf(lines, line))?.[1] : undefined;

/**
 * `luz` in a line of its own above `- roda`, or between two such cards: one or two words like theirs. A longer line is a note, and one
 * with a capital may be a name for the cards below it.
 */
function bareCards(lines: LineIndex, { paragraphs }: PileFacts, pile: number, problems: Problems): void {
  for (const { lines: place, pile: own } of paragraphs) {
    const [first, after] = place;
    const text = textOf(lines, first).trim();
    if (own !== pile || after - first !== 1 || !isItem(text) || !isLower(text) || text.split(/\s+/).length > 2)
      continue;
    const above = cardAt(lines, nextLine(lines, first - 1, -1) ?? -1);
    const next = nextLine(lines, after, 1) ?? lines.count;
    const [below, second] = [cardAt(lines, next), cardAt(lines, next + 1)];
    if (
      below === undefined ||
      [above, below, second].some((each) => each !== undefined && !(isItem(each) && isLower(each)))
    )
      continue;
    const { start } = lines.line(first);
    const at = start + textOf(lines, first).search(/\S/);
    problems.tell(
      "piles",
      "not-an-item",
      { start: at, end: at + text.length },
      "No bullet stands before this: an item begins with a hyphen and a space.",
      { title: "Make it an item", edits: [{ range: { start, end: at }, text: "- " }], unsure: true },
    );
  }
}
