/*
 * Cameras store a picture as the sensor saw it and note which way up it was. PDF readers ignore the note and browsers
 * heed it, so the writer of PDF must turn the picture itself.
 */

type Matrix = readonly [number, number, number, number];

const upright: Matrix = [1, 0, 0, 1];

/** By the orientations of Exif 2.3, which count from 1: which edge of the stored picture is its top, and if mirrored. */
const matrices: readonly Matrix[] = [
  upright,
  [-1, 0, 0, 1],
  [-1, 0, 0, -1],
  [1, 0, 0, -1],
  [0, -1, -1, 0],
  [0, -1, 1, 0],
  [0, 1, 1, 0],
  [0, 1, -1, 0],
];

/** [a b c d] by which a picture stored with this orientation, y up and about its centre, comes upright. */
export function orientationMatrix(orientation: number): Matrix {
  return matrices[orientation - 1] ?? upright;
}
