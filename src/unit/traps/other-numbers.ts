import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../../base/range";
import { sentenceEnd } from "../../base/stops";
import type { Problems } from "../problems";
import type { SourceText } from "../source-text";
import { textOf } from "./lines";
import type { ReadItem } from "./nesting";
import { countAt, fromOne, nextLine } from "./numbered-lines";
import type { Line, Style } from "./styles";

/*
 * Events whose number has a sign that Markdown does not know and that stands in notes too: they are told by how they count.
 */

/** What stands behind a number: a word with a capital, or a script without capitals. */
const words = "[ \\t]+(?=\\p{P}*(?:\\p{Lu}|\\p{Lo}))";

/** `#1 `, `Nº 1 `, `(1) `, `1 - `, `1/ `, `1º `, `1.º `, `1 `: a sign before the number, behind it, both, or none. `[1]` is a source. */
const signed = new RegExp(
  `^(?:[#№][ \\t]*|[Nn]\\.?[º°]\\.?[ \\t]*|\\()?(\\d{1,3})(?:[ \\t]*(?:\\.[º°ª)-]|[º°ª]\\.?|[-–—:;,/|)>.]))?${words}`,
  "u",
);

const bare = /^\d+[ \t]/;

/** `1.1 `, `1.2. `: steps of one part. */
const stepped = new RegExp(`^(\\d{1,2})\\.(\\d{1,2})\\.?${words}`, "u");

/** What Markdown reads as a numbered item. */
const item = /^[ \t]{0,3}(\d{1,9})[.)][ \t]+\S/;

const itemAt = (lines: LineIndex, line: number | undefined): number =>
  line === undefined ? Number.NaN : Number(item.exec(textOf(lines, line))?.[1] ?? Number.NaN);

const rises = (numbers: readonly number[]): boolean =>
  numbers.every((number, i) => number === (numbers[0] ?? Number.NaN) + i);

/**
 * `1 – Ela ri.`, `#1 Ela ri.`, `1.1 Ela ri.` in the lines of a paragraph: where they fill a gap between events they surely are such;
 * else they are where they count on from one, in these lines or in paragraphs around.
 */
export function otherNumbers(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  found: readonly Line[],
): Style | undefined {
  return signedNumbers(lines, [first, after], found) ?? steppedNumbers(lines, [first, after], found);
}

const message = "This is no list: an event begins with its number, a full stop and a space.";

function signedNumbers(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  found: readonly Line[],
): Style | undefined {
  const matches = found.map(({ text }) => signed.exec(text));
  const numbers = matches.map((match) => Number(match?.[1] ?? Number.NaN));
  const [head = Number.NaN] = numbers;
  if (!rises(numbers)) return undefined;
  const above = nextLine(lines, first - 1, -1);
  const below = nextLine(lines, after, 1);
  const next = head + found.length;
  const [onAbove, onBelow] = [itemAt(lines, above) === head - 1, itemAt(lines, below) === next];
  const goesOn = head > 1 || found.length > 1 || countAt(lines, below) === next;
  // A word alone behind a number is a quantity as well, unless it is the whole sentence, or a number is missing just there.
  const whole = found.every(
    ({ text }, i) => sentenceEnd.test(text) || (!isOneWord(text, matches[i]) && !bare.test(text)),
  );
  const among = (onAbove && onBelow) || (whole && (onAbove || onBelow));
  if (!among && !(whole && goesOn && fromOne(lines, first, head) && !hasItems(lines, first))) return undefined;
  return {
    begins: matches.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${numbers[i]}. ` })),
    message,
    as: "events",
    ...(among ? {} : { unsure: true as const }),
  };
}

const isOneWord = (text: string, match: RegExpExecArray | null | undefined): boolean =>
  !/\s/.test(text.slice(match?.[0].length ?? 0).trim());

const section = /^[ \t]{0,3}#{1,2}[ \t]+\S/;

/** Whether a section, by one of its lines, has numbered items: then what counts in another way beside them is a note. */
export function hasItems(lines: LineIndex, line: number): boolean {
  for (const step of [-1, 1])
    for (let number = line + step; number >= 0 && number < lines.count; number += step) {
      const text = textOf(lines, number);
      if (section.test(text)) break;
      if (item.test(text)) return true;
    }
  return false;
}

/** Numbers of exercises have this form too, so that nothing is done unasked. */
function steppedNumbers(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  found: readonly Line[],
): Style | undefined {
  const matches = found.map(({ text }) => stepped.exec(text));
  const part = matches[0]?.[1];
  const numbers = matches.map((match) => (match?.[1] === part ? Number(match?.[2] ?? Number.NaN) : Number.NaN));
  const [head = Number.NaN] = numbers;
  if (!rises(numbers) || !found.every(({ text }) => sentenceEnd.test(text))) return undefined;
  const stepAt = (line: number | undefined): number => {
    const match = line === undefined ? null : stepped.exec(textOf(lines, line).trim());
    return match?.[1] === part ? Number(match?.[2]) : Number.NaN;
  };
  const above = stepAt(nextLine(lines, first - 1, -1));
  const below = stepAt(nextLine(lines, after, 1));
  if (found.length === 1 && above !== head - 1 && below !== head + 1) return undefined;
  if (hasItems(lines, first)) return undefined;
  return {
    begins: matches.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${numbers[i]}. ` })),
    message,
    as: "events",
    unsure: true,
  };
}

const bullet = /^[ \t]*[-*+][ \t]+/;

/** Whether a text is a sentence, or its beginning, behind a number with a sign: an event, and not a number with its word. */
export function isNumberedSentence(text: string): boolean {
  const match = bare.test(text) ? null : signed.exec(text);
  if (!match) return false;
  const rest = text.slice(match[0].length);
  return (sentenceEnd.test(rest) && /\s/.test(rest)) || rest.split(/\s+/).length > 3;
}

/** `- 1º Ela ri.`, `- (2) Ela lê.`: a list of bullets that count. Steps of a lesson have this form too. */
export function countedBullets(lines: LineIndex, read: readonly ReadItem[], problems: Problems): void {
  const found = read.map(({ token, shape }) => (shape === "text" ? bulletAt(lines, token) : undefined));
  const numbers = found.map((each) => each?.number ?? Number.NaN);
  const [first] = found;
  // Quantities, and numbers with their words, stand behind bullets too.
  if (
    found.some(
      (each) => each && !sentenceEnd.test(each.text) && (bare.test(each.text) || isOneWord(each.text, each.match)),
    )
  )
    return;
  if (!first || found.length < 2 || numbers[0] !== 1 || !rises(numbers)) return;
  if (hasItems(lines, lines.lineAt(first.sign.start))) return;
  problems.tell(
    "events",
    "not-an-item",
    { start: first.sign.start, end: first.place },
    "A bullet stands before this number, so that it is no event: an event begins with its number, a full stop and a space.",
    {
      title: "Make numbered items of these bullets",
      edits: found.flatMap((each) => (each ? [{ range: each.sign, text: `${each.number}. ` }] : [])),
      unsure: true,
    },
  );
}

function bulletAt(lines: LineIndex, { map }: Token) {
  const line = map?.[0] ?? 0;
  const text = textOf(lines, line);
  const lead = bullet.exec(text)?.[0];
  const match = lead === undefined ? null : signed.exec(text.slice(lead.length));
  if (lead === undefined || !match) return undefined;
  const start = lines.start(line) + lead.length - lead.trimStart().length;
  const end = lines.start(line) + lead.length + match[0].length;
  return {
    number: Number(match[1]),
    match,
    text: text.slice(lead.length).trimEnd(),
    sign: { start, end },
    place: end - match[0].length + match[0].trimEnd().length,
  };
}

/** A line behind the first one of an item, in the item's text. */
interface Further {
  readonly start: number;
  readonly text: string;
}

/**
 * `1.1 Ela ri.` and `1.2 Ela lê.` below the event `1. Ela sai.`: steps of it, or events of their own. The starts of such lines.
 */
export function steppedLines(
  lines: LineIndex,
  { source, number, indent, under }: Event,
  further: readonly Further[],
  problems: Problems,
): ReadonlySet<number> {
  const found = further.flatMap(({ start, text }) => {
    const match = stepped.exec(text);
    const line = lines.start(lines.lineAt(source.source(start)));
    return match?.[1] === String(number) ? [{ start, step: Number(match[2]), line, text, cut: match[0].length }] : [];
  });
  const [first] = found;
  const steps = found.map(({ step }) => step);
  if (first?.step !== 1 || !rises(steps)) return new Set();
  if (!sentenceEnd.test(source.text.slice(0, first.start).trimEnd())) return new Set();
  const at = source.source(first.start);
  const put = (sign: (i: number) => string) =>
    found.map(({ start, line, cut }, i) => ({
      range: { start: line, end: source.source(start) + cut },
      text: sign(i),
    }));
  problems.tell(
    "events",
    "not-an-item",
    { start: at, end: at + first.cut - 1 },
    "This line is no item: it goes on the event above it, with which it is printed.",
    { title: "Make bullets under the event, in any order", edits: put(() => `${" ".repeat(under)}- `), unsure: true },
    { title: "Make events of them", edits: put((i) => `${indent}${number + i + 1}. `), unsure: true },
  );
  return new Set(found.map(({ start }) => start));
}

/** An event with lines below: its text, its number, the white space before that, and the column where its text begins. */
interface Event {
  readonly source: SourceText;
  readonly number: number;
  readonly indent: string;
  readonly under: number;
}
