import type { LineIndex } from "../../base/range";
import { stops } from "../../base/stops";
import { textOf } from "./lines";
import { numberOf } from "./numbers";
import type { Line, Style } from "./styles";

/*
 * Lines of a paragraph that were meant as the events of a story.
 */

/** A number and its sign without the space that makes an item of it, or with others. */
export const tightNumber =
  /^(?:\(?(\d{1,3})(?:\.\)|\)\.?)\s*(?=\S)|(\d{1,3})\.(?:(?=\p{L}{2}|\p{Lu}\s|\[)|[^\S \t\n]\s*)|(\d{1,3})[-–—][ \t]+(?=\p{Lu})|(\d{1,3})[．。、）]\s*(?=\S)|([^\P{Nd}0-9]{1,3})[．.。、۔)）–-]\s*(?=\S)|([①-⑳])\s*|(\d)\ufe0f?\u20e3\s*)/u;

/** The same with a sign that also stands in sentences. */
const looseNumber = /^(\d{1,3})(?:[ \t]*[–—:º°][ \t]+|[ \t]*-[ \t]+|[ \t]+[.)][ \t]+|-(?=\p{Lu}))(?=\S)/u;

/** A number that a program has kept from being one of an item, or that is bold. */
export const keptNumber = /^(?:(\d{1,3})\\[.)]|(?:\*\*|__)(\d{1,3})(?:[.)](?:\*\*|__)|(?:\*\*|__)[.)]))[ \t]+(?=\S)/u;

/** What makes an item, and may stand among lines that are none. */
export const plainNumber = /^(\d{1,9})[.)][ \t]+(?=\S)/;

/** A number with no sign before the first of several words, of which scripts without capitals may write one. */
export const bareNumber = /^(\p{Nd}{1,3})[ \t]+(?=\p{P}*(?:\p{Lu}\S*\s+\S|\p{Lo}\S))/u;

const anyNumber = "^(?:[#№([]|[Nn]\\.?[º°]\\.?[ \\t]*)?(\\p{Nd}{1,3})(?:[ \\t]*[.)\\]:;,|>°ºª–—/-]{1,2})?[ \\t]+";

/** A number with a sign that is none of an item, or with none, before the first of several words. */
export const nearlyNumber = new RegExp(`${anyNumber}(?=\\p{P}*(?:\\p{Lu}\\S*\\s+\\S|\\p{Lo}\\S))`, "u");

/** The same before one word. */
export const nearlyAlone = new RegExp(`${anyNumber}(?=\\p{P}*\\p{Lu}\\S*$)`, "u");

/** The numbers at the beginning of the last line above a paragraph and of the first one below it; NaN where there is none. */
export interface Around {
  readonly above: number;
  readonly below: number;
  /** Whether they are those of items, or lines above count down from a number to one. */
  counts(number: number): boolean;
}

/** The next line up (-1) or down (1) from one on that is not blank; undefined where there is none. */
export function nextLine(lines: LineIndex, from: number, step: -1 | 1): number | undefined {
  let number = from;
  while (number >= 0 && number < lines.count && textOf(lines, number).trim() === "") number += step;
  return number >= 0 && number < lines.count ? number : undefined;
}

/** Any number at the beginning of a line, whatever its sign. */
const counted = /^[ \t]*(?:[#№][ \t]*|[Nn]\.?[º°]\.?[ \t]*|\*\*|__|[([])?(\p{Nd}{1,9})(?=[^\p{Nd}\p{L}]|[ºª])/u;

/** The number that a line begins with; NaN where it does with none. */
export function countAt(lines: LineIndex, line: number | undefined): number {
  const written = line === undefined ? undefined : counted.exec(textOf(lines, line))?.[1];
  return written === undefined ? Number.NaN : numberOf(written);
}

/** Whether lines above one count down from a number to the first. */
export function fromOne(lines: LineIndex, from: number, number: number): boolean {
  let line = nextLine(lines, from - 1, -1);
  let left = number - 1;
  while (left > 0 && line !== undefined && countAt(lines, line) === left) {
    line = nextLine(lines, line - 1, -1);
    left--;
  }
  return left === 0;
}

export function numbersAround(lines: LineIndex, [first, after]: readonly [number, number]): Around {
  const at = (number: number): number => {
    const written =
      number < lines.count
        ? /^[ \t]*(?:\*\*|__|\()?(\p{Nd}{1,9})(?:\p{P}|[ \t])/u.exec(textOf(lines, number))?.[1]
        : "";
    return written ? numberOf(written) : Number.NaN;
  };
  const blank = (number: number): boolean => textOf(lines, number).trim() === "";
  let [above, below] = [first - 1, after];
  while (above >= 0 && blank(above)) above--;
  while (below < lines.count && blank(below)) below++;
  const isItem = (line: number, number: number): boolean =>
    line >= 0 && line < lines.count && plainNumber.exec(textOf(lines, line).trim())?.[1] === String(number);
  return {
    above: above < 0 ? Number.NaN : at(above),
    below: at(below),
    counts: (number) =>
      isItem(above, number - 1) || isItem(below, number + after - first) || fromOne(lines, first, number),
  };
}

/**
 * `1.Ela`, `1.) Ela`, `(1) Ela`, `1- Ela`, `①Ela`, `١. وصلت`; in several lines that count on also `1 – Ela`, `1: Ela`, and `1 Ela`,
 * `1\. Ela`, `**1.** Ela`, which may count on lines around the paragraph too.
 */
export function numbers(found: readonly Line[], { above, below, counts }: Around): Style | undefined {
  const several = found.length > 1;
  const bare = found.map(({ text }) => !tightNumber.test(text) && (bareNumber.test(text) || keptNumber.test(text)));
  const matches = found.map(
    ({ text }) =>
      tightNumber.exec(text) ??
      (several ? (looseNumber.exec(text) ?? plainNumber.exec(text)) : null) ??
      keptNumber.exec(text) ??
      bareNumber.exec(text),
  );
  const counted = matches.map((match) => {
    const written = match?.slice(1).find((each) => each !== undefined);
    return written === undefined ? Number.NaN : numberOf(written);
  });
  if (!rises(counted)) return undefined;
  const [first = Number.NaN] = counted;
  const countsOn = first === above + 1 || first + found.length === below;
  // Times of a plan count on too, but not from one: `8 Uhr Beginn`.
  if (bare.includes(true) && !keptNumber.test(found[0]?.text ?? "") && !counts(first)) return undefined;
  if (bare.includes(true) && !countsOn && !(several && first === 1)) return undefined;
  // A line alone is an event where it counts on, or begins: not “24.Dezember”, nor “(1)” of a note.
  if (!several && !countsOn && !(first === 1 && Number.isNaN(above))) return undefined;
  return {
    begins: matches.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${counted[i]}. ` })),
    message: "This is no list: an event begins with its number, a full stop and a space.",
    // So do the steps of a lesson, which are no sentences.
    ...(found.every(({ text }) => /^\d{1,3}[ \t]*(?:[–—:]|[ \t]-)[ \t].*[^.!?…。]$/u.test(text))
      ? { as: "events" as const }
      : {}),
  };
}

/** What counts elsewhere than in digits, each in its order. Of letters those without disputed places. */
const series: readonly (readonly string[])[] = [
  "i ii iii iv v vi vii viii ix x xi xii xiii xiv xv xvi xvii xviii xix xx".split(" "),
  [..."abcdefghijklmnopqrstuvwxyz"],
  [..."αβγδε"],
  [..."абвгд"],
  [..."אבגדהוזחטי"],
  [..."أبجدهوزحطي"],
  [..."一二三四五六七八九十", ...[..."一二三四五六七八九"].map((each) => `十${each}`), "二十"],
];

/** A letter or a numeral of another kind that counts lines. */
export const lettered =
  /^(?:[(（]?([a-zA-Z]{1,5}|\p{L})(?:\.\)|[.)])[ \t]+|[(（]([一二三四五六七八九十]{1,2})[)）][、．.]?[ \t]*|(?:第?([一二三四五六七八九十]{1,2})[、．，.：:])[ \t]*)(?=\S)/u;

/** A pair, a statement or a sentence. */
const noStep = new RegExp(String.raw`\s[=＝]\s|\[[ xX]\]\s|[${stops}]$`, "u");

/** `a) Ela`, `b) Ela`, `i. Ela`, `ii. Ela`, `א. היא`, `一、她`: Markdown knows no lists with letters. */
export function letters(found: readonly Line[]): Style | undefined {
  const matches = found.map(({ text }) => lettered.exec(text));
  const written = matches.map((match) => (match?.slice(1).find(Boolean) ?? "").toLowerCase());
  const order = series.findIndex((each) => each[0] === written[0]);
  const own = series[order];
  if (!own || found.length < 2 || !written.every((sign, i) => sign === own[i])) return undefined;
  const what = order === 0 ? "Roman numerals" : order === series.length - 1 ? "Chinese numerals" : "letters";
  return {
    begins: matches.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${i + 1}. ` })),
    message: `This is no list: Markdown knows no lists with ${what}.`,
    unsure: true,
    // The steps of a lesson have letters too; a pair, a statement or a sentence behind one is none.
    ...(found.some(({ text }) => noStep.test(text)) ? {} : { as: "events" as const }),
  };
}

const rises = (numbers: readonly number[]): boolean =>
  numbers.every((number, i) => (i === 0 ? !Number.isNaN(number) : number === (numbers[i - 1] ?? 0) + 1));
