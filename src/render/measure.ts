import type { QuarterTurn } from "../page/sheet";

export const pointsPerMm = 72 / 25.4;

/** A number as both formats write it: at most `places` decimals, never an exponent or a minus zero. */
export function decimal(value: number, places = 3): string {
  const factor = 10 ** places;
  const rounded = Math.round(value * factor) / factor;
  // Below a millionth a number would print with an exponent, but rounding has turned those to zero.
  return Object.is(rounded, -0) ? "0" : String(rounded);
}

/** Cosine and sine of a clockwise turn as seen with y up; exact. */
export const turnVectors: Readonly<Record<QuarterTurn, readonly [number, number]>> = {
  0: [1, 0],
  1: [0, -1],
  2: [-1, 0],
  3: [0, 1],
};

/** Share of a line's width that stands before its anchor. */
export const anchorShare = { start: 0, middle: 0.5, end: 1 } as const;
