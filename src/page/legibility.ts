import { sizeStep } from "../text/fit";
import type { Typeface } from "../text/typeface";
import { mm, pt } from "./paper";

/*
 * How large printed words must be. An x-height h (mm) at a distance d (mm) is seen at the angle θ with h = 2·d·tan(θ/2). ISO 9241-3
 * asks for at least 16′ of capital height and prefers 20 to 22′; taken for the x-height, as here, that is stricter.
 */

/** Smallest x-heights in mm, by what is read from where. Below `comfortable` a warning, below `least` an error. */
export const xHeights = {
  /** A card at one's own desk, 400 mm: 20′ and 16′. */
  desk: { comfortable: 2.33, least: 1.86 },
  /** A board between two players, 600 mm: 20′ and 16′. */
  board: { comfortable: 3.49, least: 2.79 },
  /** A sheet on the wall, read from 6 m: 20′ and 16′. */
  wall: { comfortable: 34.9, least: 27.9 },
} as const;

/**
 * x-height in mm for early readers: at 7 to 9 years sentences are read 9 % faster at 5.0 than at 4.2 (Wilkins, Cleave, Grayson
 * and Wilson 2009), so nothing below 4.2.
 */
export const earlyReaders = 4.2;

/** Larger than this x-height (mm) a word gains nothing at a desk. */
export const largestAtDesk = 5;

/** x-height in mm that is seen at `minutes` of arc from `distance` mm. */
export function xHeightAt(distance: number, minutes: number): number {
  return 2 * distance * Math.tan(((minutes / 60) * Math.PI) / 360);
}

/** Points at which a face's small letters are `millimetres` high, rounded up to a size that fitting can give. */
export function sizeFor(millimetres: number, typeface: Pick<Typeface, "xHeight">): number {
  return Math.ceil(pt(millimetres) / typeface.xHeight / sizeStep) * sizeStep;
}

/** x-height in mm of words at `size` pt. */
export function xHeightOf(size: number, typeface: Pick<Typeface, "xHeight">): number {
  return mm(size) * typeface.xHeight;
}
