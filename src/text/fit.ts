import type { Run } from "../base/run";
import { type FittedLine, type Measure, slack, wordsApart } from "./lines";
import { mmPerPoint } from "./points";
import type { Room } from "./space";

export type { FittedLine } from "./lines";

/*
 * Breaks a text into lines that fit a shape, as large as it will go.
 */

/** Sizes are whole multiples of this, pt. */
export const sizeStep = 0.25;

export interface FittedText {
  /** pt */
  readonly size: number;
  /** Top to bottom; none for a blank text. */
  readonly lines: readonly FittedLine[];
}

export interface SizeLimits {
  /** pt */
  readonly smallest: number;
  /** pt */
  readonly largest: number;
  readonly maxLines: number;
}

/**
 * The largest size in pt, a multiple of a quarter point within the limits, at which the text fits in at most so many lines.
 * Undefined where it does not fit at the smallest.
 */
export function largestSize(
  typeface: Measure,
  runs: readonly Run[],
  room: Room,
  limits: SizeLimits,
): number | undefined {
  const text = wordsApart(typeface, runs);
  const most = Math.floor(limits.largest / sizeStep);
  let low = Math.ceil(limits.smallest / sizeStep);
  let best: number | undefined;
  for (let lines = 1; lines <= Math.min(limits.maxLines, Math.max(1, text.count)) && low <= most; lines++) {
    // No room grows with the size: what does not fit at the smallest size that would gain something fits at none.
    if (!text.fits(lines, low * sizeStep, room)) continue;
    let high = most;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (text.fits(lines, middle * sizeStep, room)) low = middle;
      else high = middle - 1;
    }
    best = low * sizeStep;
    low++;
  }
  return best;
}

/** The text at a given size, in as few lines as fit; undefined where it does not fit in so many. */
export function fitAt(
  typeface: Measure,
  runs: readonly Run[],
  room: Room,
  size: number,
  maxLines: number,
): FittedText | undefined {
  const text = wordsApart(typeface, runs);
  for (let lines = 1; lines <= maxLines; lines++) {
    const broken = text.into(lines, size, room);
    if (broken) return { size, lines: broken };
  }
  return undefined;
}

/**
 * Running text at `size` pt in lines of at most `width` mm, each as full as it will go. A word that is wider than that
 * has a line of its own and sticks out: compare its width.
 */
export function wrap(typeface: Measure, runs: readonly Run[], size: number, width: number): readonly FittedLine[] {
  const text = wordsApart(typeface, runs);
  const available = width / (size * mmPerPoint);
  const lines: FittedLine[] = [];
  let from = 0;
  while (from < text.count) {
    let to = from + 1;
    while (to < text.count && text.width(from, to + 1) <= available + slack) to++;
    lines.push(text.line(from, to));
    from = to;
  }
  return lines;
}
