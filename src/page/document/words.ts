import type { Range } from "../../base/range";
import { plain, type Run } from "../../base/run";
import { breaks, ZERO_WIDTH_SPACE } from "../../text/breaks";
import { sizeStep, wrap } from "../../text/fit";
import type { Typeface } from "../../text/typeface";
import { mm, pt } from "../paper";
import type { TextItem } from "../sheet";
import type { Align, SourcedWords, Words } from "./blocks";

/*
 * Sets words in lines of a width so that nothing sticks out: where a word is too wide, the text gets smaller, and where that
 * would be too small to read, the word is broken.
 */

export type Measure = Pick<Typeface, "measure">;

/** From baseline to baseline, em. */
export const leading = 1.35;
/** From the top of a line to its baseline, as a share of the leading. */
const rise = 0.79;

/** The least that a wide word may make of a text's size: a share of it, and pt. */
const leastShare = 0.75;
const leastSize = 6.5;

export interface SetWords {
  readonly lines: readonly (readonly Run[])[];
  /** pt */
  readonly size: number;
  /** Of one line, mm. */
  readonly lineHeight: number;
  readonly rightToLeft: boolean;
  readonly source: Range | undefined;
  readonly lang: string | undefined;
}

/** Words in their long form. */
export function sourced(words: Words): SourcedWords {
  if (typeof words === "string") return { runs: words === "" ? [] : [{ text: words }] };
  return "runs" in words ? words : { runs: words };
}

export function bold({ runs, ...rest }: SourcedWords): SourcedWords {
  return { ...rest, runs: runs.map((run) => ({ ...run, bold: true })) };
}

/** Width in mm of the words on one line. */
export function naturalWidth(typeface: Measure, words: Words, size: number): number {
  return typeface.measure(sourced(words).runs) * mm(size);
}

/** Words at `size` pt, or a smaller one, in lines of at most `width` mm (1 at least). Blank words have no lines. */
export function setWords(typeface: Measure, words: Words, size: number, width: number): SetWords {
  const { runs, source, lang } = sourced(words);
  const rightToLeft = readsRightToLeft(plain(runs));
  const fitted = fitInto(typeface, runs, size, Math.max(1, width));
  const lines = rightToLeft ? fitted.lines.map(steered) : fitted.lines;
  return { lines, size: fitted.size, lineHeight: mm(fitted.size) * leading, rightToLeft, source, lang };
}

function fitInto(
  typeface: Measure,
  runs: readonly Run[],
  size: number,
  width: number,
): { readonly lines: readonly (readonly Run[])[]; readonly size: number } {
  const widest = widestPart(typeface, runs);
  const whole = Math.floor(pt(width) / widest / sizeStep) * sizeStep;
  if (whole >= Math.min(size, Math.max(leastSize, size * leastShare))) size = Math.min(size, whole);
  else runs = breakable(typeface, runs, width / mm(size));
  // What has no place to break even so, such as a row of dots, gets as small as it must.
  size = Math.min(size, (pt(width) / widestPart(typeface, runs)) * (1 - 1e-9));
  return { lines: wrap(typeface, runs, size, width).map((line) => line.runs), size };
}

/** Width in em of the widest stretch that is not broken; 0 for a blank text. */
function widestPart(typeface: Measure, runs: readonly Run[]): number {
  return Math.max(0, ...parts(typeface, runs));
}

/** Widths of the stretches between the places where a line may end: a line each, where there is no width. */
function parts(typeface: Measure, runs: readonly Run[]): number[] {
  return wrap(typeface, runs, 1, 0).map((line) => line.width);
}

const graphemes = new Intl.Segmenter("und", { granularity: "grapheme" });

/** The same runs with a place to break after each character of the stretches that are wider than `limit` em. */
function breakable(typeface: Measure, runs: readonly Run[], limit: number): readonly Run[] {
  const text = plain(runs);
  const bounds = [0, ...breaks(text), text.length];
  const places = parts(typeface, runs).flatMap((width, i) => {
    const start = bounds[i] ?? 0;
    if (width <= limit) return [];
    return [...graphemes.segment(text.slice(start, bounds[i + 1]))].slice(1).map(({ index }) => start + index);
  });
  let at = 0;
  return runs.map((run) => {
    const start = at;
    at += run.text.length;
    const inside = [start, ...places.filter((place) => place > start && place < at), at];
    const pieces = inside.slice(1).map((end, i) => run.text.slice((inside[i] ?? 0) - start, end - start));
    const opens = start > 0 && places.includes(start);
    return { ...run, text: (opens ? ZERO_WIDTH_SPACE : "") + pieces.join(ZERO_WIDTH_SPACE) };
  });
}

const strong = /[\p{L}\p{Nl}]/u;
const rightToLeftLetter = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;

/** By the first letter, as the bidirectional algorithm finds a paragraph's direction (UAX #9, P2). */
export function readsRightToLeft(text: string): boolean {
  const first = strong.exec(text)?.[0];
  return first !== undefined && rightToLeftLetter.test(first);
}

const RIGHT_TO_LEFT_MARK = "\u200f";

/** A line of a paragraph from right to left keeps that direction where it begins with a word from left to right. */
function steered(runs: readonly Run[]): readonly Run[] {
  const [first, ...rest] = runs;
  if (!first || readsRightToLeft(plain(runs))) return runs;
  return [{ ...first, text: RIGHT_TO_LEFT_MARK + first.text }, ...rest];
}

export function heightOf(set: SetWords, lines = set.lines.length): number {
  return lines * set.lineHeight;
}

/** From the top of the first line to its baseline, mm. */
export function firstBaseline(set: Pick<SetWords, "lineHeight">): number {
  return set.lineHeight * rise;
}

/** The lines in a box of a width, the first baseline at `baseline`. All lengths mm. */
export function drawWords(set: SetWords, x: number, baseline: number, width: number, align: Align): TextItem[] {
  const { size, source, lang } = set;
  const anchor = set.rightToLeft ? opposite[align] : align;
  const place = { start: x, middle: x + width / 2, end: x + width };
  return set.lines.flatMap((runs, i): TextItem[] =>
    runs.length === 0
      ? []
      : [
          {
            type: "text",
            runs,
            x: place[anchor],
            y: baseline + i * set.lineHeight,
            size,
            turn: 0,
            anchor,
            ...(lang === undefined ? {} : { lang }),
            ...(source === undefined ? {} : { source }),
          },
        ],
  );
}

const opposite = { start: "end", middle: "middle", end: "start" } as const;
