import { mmPerPoint } from "./points";

/*
 * How much room a shape gives to each line of a text, for the shapes that pieces have.
 */

/**
 * Clear width in mm for line `line` (from 0, top to bottom) of a text of `lines` lines at `size` pt; zero or less where
 * that line has no place. It must not grow with the size.
 */
export type Room = (line: number, lines: number, size: number) => number;

/** The vertical measures of a block of lines, in em. */
export interface Rows {
  /** What the first line needs above its baseline. */
  readonly above: number;
  /** What the last line needs below its baseline; positive. */
  readonly below: number;
  /** From baseline to baseline. */
  readonly leading: number;
}

/** Height of a block of lines in mm. */
export function blockHeight(rows: Rows, lines: number, size: number): number {
  return lines === 0 ? 0 : (rows.above + rows.below + (lines - 1) * rows.leading) * size * mmPerPoint;
}

/** A rectangle of so many millimetres. */
export function rectangle(width: number, height: number, rows: Rows): Room {
  return (_line, lines, size) => (blockHeight(rows, lines, size) <= height + slack ? width : 0);
}

/** Forgives the last digit of a floating-point sum. */
const slack = 1e-9;

/** A shape that gets narrower from its outer edge inwards, as the quarter of a tile does. */
export interface Trapezoid {
  /** Clear width at the outer edge of the text block, mm. */
  readonly width: number;
  /** From there to where the text must end, mm. */
  readonly depth: number;
  /** Millimetres of width lost per millimetre of depth, both sides together: 2 between diagonals of a square. */
  readonly taper: number;
  /** Which line stands nearest the outer edge. */
  readonly outer: "first" | "last";
}

/** Each line is as wide as the shape is at the line's inner side, where it is narrowest. */
export function trapezoid(shape: Trapezoid, rows: Rows): Room {
  return (line, lines, size) => {
    const fromEdge = shape.outer === "first" ? line : lines - 1 - line;
    const inner = blockHeight(rows, fromEdge + 1, size);
    if (blockHeight(rows, lines, size) > shape.depth + slack) return 0;
    return shape.width - shape.taper * inner;
  };
}
