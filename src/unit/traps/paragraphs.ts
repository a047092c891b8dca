import type { LineIndex } from "../../base/range";
import { type Env, scan, spacedSeparators } from "../inline";
import type { Problems } from "../problems";
import { anySign, boxed } from "./glued";
import { textOf } from "./lines";
import { clearMark } from "./marks";
import { numberOf } from "./numbers";

/*
 * Paragraphs of a section all of whose lines were meant as items, and have another sign than Markdown knows, or none.
 */

/** A line without the white space before it. */
interface Line {
  readonly start: number;
  readonly text: string;
}

/** What each line should begin with instead of its first `cut` characters, and where it is to be parted. */
interface Begin {
  readonly cut: number;
  readonly put: string;
  readonly part?: { readonly start: number; readonly end: number };
}

/** `ovo = egg`, `[x] Ela ri.`, `1.Ela ri.`, `a) Ela ri.` in lines of their own. Whether the paragraph is told. */
export function unmarkedItems(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  env: Env,
  problems: Problems,
): boolean {
  const found = linesOf(lines, [first, after]);
  const style = statements(found) ?? numbers(found) ?? letters(found) ?? pairs(found, env) ?? columns(found, env);
  if (!style) return false;
  tell(lines, first, found, style, problems);
  return true;
}

function linesOf(lines: LineIndex, [first, after]: readonly [number, number]): Line[] {
  const found: Line[] = [];
  for (let number = first; number < after; number++) {
    const text = textOf(lines, number);
    const lead = text.length - text.trimStart().length;
    found.push({ start: lines.start(number) + lead, text: text.trim() });
  }
  return found;
}

function tell(
  lines: LineIndex,
  first: number,
  found: readonly Line[],
  { begins, message }: NonNullable<Style>,
  problems: Problems,
): void {
  const [head] = found;
  if (!head) return;
  problems.trap("not-an-item", { start: head.start, end: head.start + head.text.length }, message, {
    title: found.length > 1 ? "Make items of these lines" : "Make it an item",
    edits: found.flatMap(({ start }, i) => {
      const { cut, put, part }: Begin = begins[i] ?? { cut: 0, put: "" };
      const begin = { range: { start: lines.start(first + i), end: start + cut }, text: put };
      if (!part) return [begin];
      return [begin, { range: { start: start + part.start, end: start + part.end }, text: " = " }];
    }),
  });
}

/** Texts of a paragraph's lines where each begins with a mark as `[F]`; none else. */
export function markedTexts(lines: LineIndex, map: readonly [number, number]): readonly string[] {
  if (!/^[ \t]*[[［【]/.test(textOf(lines, map[0]))) return [];
  const texts = linesOf(lines, map).map(({ text }) => text);
  return texts.every((text) => clearMark(text)) ? texts : [];
}

/** `[F] O mar é seco.` in lines of their own, each of which has such a mark. */
export function markedNotes(lines: LineIndex, map: readonly [number, number], problems: Problems): void {
  const found = linesOf(lines, map);
  const begins = found.map(({ text }): Begin => {
    const { written = "", truth } = clearMark(text) ?? {};
    return { cut: written.length, put: truth ? "- [x] " : "- [ ] " };
  });
  const message =
    "These are notes: a statement begins with a hyphen, and with “[x] ” when it is true and “[ ] ” when it is false.";
  tell(lines, map[0], found, { begins, message }, problems);
}

type Style = { readonly begins: readonly Begin[]; readonly message: string } | undefined;

/** Few words and no sentence. */
const isShort = (text: string): boolean => text.split(/\s+/).length <= 8 && !/[.!?:;,]$/.test(text);

const noHyphen = "No bullet stands before this: an item begins with a hyphen and a space.";

function statements(found: readonly Line[]): Style {
  const matches = found.map(({ text }) => boxed.exec(text)?.[0]);
  if (matches.some((match) => match === undefined)) return undefined;
  return { begins: matches.map((match) => ({ cut: match?.length ?? 0, put: "- " })), message: noHyphen };
}

/** Lines that are a pair and hardly a sentence of notes: few words on each side. */
function pairs(found: readonly Line[], env: Env): Style {
  const all = found.every(({ text }) => {
    if (!/[=＝]/u.test(text) || anySign.test(text)) return false;
    const { mask } = scan(text, env);
    const [sign, second] = spacedSeparators(text, mask, "=");
    if (!sign || second || sign.start === 0 || sign.end >= text.length) return false;
    return isShort(text.slice(0, sign.start)) && isShort(text.slice(sign.end));
  });
  return all ? { begins: found.map(() => ({ cut: 0, put: "- " })), message: noHyphen } : undefined;
}

/** Two columns, parted by tabs as a spreadsheet gives them, or by another sign in at least three lines. */
function columns(found: readonly Line[], env: Env): Style {
  for (const [sign, least] of [
    [/[^\S\n]*\t\s*/u, 2],
    [/\s+[|｜]\s+/u, 2],
    [/\s+(?:[–—−]|-{1,2}>?|[→⇒])\s+/u, 3],
    [/\s*[:：]\s+/u, 3],
  ] as const) {
    if (found.length < least) continue;
    const parts = found.map(({ text }) => {
      if (anySign.test(text) || /\|$/.test(text)) return undefined;
      const pieces = text.split(sign);
      const match = sign.exec(text);
      if (pieces.length !== 2 || !match || pieces.some((piece) => piece === "" || !isShort(piece))) return undefined;
      const part = { start: match.index, end: match.index + match[0].length };
      return scan(text, env).mask.slice(part.start, part.end).some(Boolean) ? undefined : part;
    });
    if (!parts.every((part) => part !== undefined)) continue;
    return {
      begins: parts.map((part) => ({ cut: 0, put: "- ", part })),
      message: "These are no pairs: each begins with a hyphen and a space, and “ = ” stands between its sides.",
    };
  }
  return undefined;
}

/** A number and its sign without the space that makes an item of it, or with others. */
const tightNumber =
  /^(?:\(?(\d{1,3})(?:\.\)|\)\.?)\s*(?=\S)|(\d{1,3})\.(?:(?=\p{L}{2}|\p{Lu}\s|\[)|[^\S \t\n]\s*)|(\d{1,3})[-–—][ \t]+(?=\p{Lu})|([^\P{Nd}0-9]{1,3})[．.、۔)）–-]\s*(?=\S)|([①-⑳])\s*|(\d)\ufe0f?\u20e3\s*)/u;

/** The same with a sign that also stands in sentences. */
const looseNumber = /^(\d{1,3})(?:[ \t]*[–—:º°][ \t]+|[ \t]*-[ \t]+|[ \t]+[.)][ \t]+|-(?=\p{Lu}))(?=\S)/u;

/** `1.Ela`, `1.) Ela`, `(1) Ela`, `1- Ela`, `①Ela`, `١. وصلت`; in several lines that count on also `1 – Ela`, `1: Ela`. */
function numbers(found: readonly Line[]): Style {
  const matches = found.map(({ text }) => tightNumber.exec(text) ?? (found.length > 1 ? looseNumber.exec(text) : null));
  const counted = matches.map((match) => {
    const written = match?.slice(1).find((each) => each !== undefined);
    return written === undefined ? Number.NaN : numberOf(written);
  });
  if (!rises(counted)) return undefined;
  return {
    begins: matches.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${counted[i]}. ` })),
    message: "This is no list: an event begins with its number, a full stop and a space.",
  };
}

/** `a) Ela`, `b) Ela`, or `i. Ela`, `ii. Ela`: Markdown knows no lists with letters. */
function letters(found: readonly Line[]): Style {
  const matches = found.map(({ text }) => /^\(?([a-zA-Z]{1,5})(?:\.\)|[.)])[ \t]+(?=\S)/.exec(text));
  const written = matches.map((match) => (match?.[1] ?? "").toLowerCase());
  const roman = written[0] === "i";
  const counted = written.map((sign) =>
    roman ? romans.indexOf(sign) : sign.length === 1 ? sign.charCodeAt(0) - 96 : -1,
  );
  if (found.length < 2 || counted[0] !== 1 || !rises(counted)) return undefined;
  return {
    begins: matches.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${i + 1}. ` })),
    message: `This is no list: Markdown knows no lists with ${roman ? "Roman numerals" : "letters"}.`,
  };
}

/** By the number that each stands for. */
const romans = ["", ..."i ii iii iv v vi vii viii ix x xi xii xiii xiv xv xvi xvii xviii xix xx".split(" ")];

const rises = (numbers: readonly number[]): boolean =>
  numbers.every((number, i) => (i === 0 ? !Number.isNaN(number) : number === (numbers[i - 1] ?? 0) + 1));
