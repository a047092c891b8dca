/*
 * Cameras store a picture as the sensor saw it and note which way up it was. PDF readers ignore the note and browsers
 * heed it, so the writer of PDF must turn the picture itself.
 */

/** The orientation of Exif 2.3: which edge of the stored picture is its top, and whether it is mirrored. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** [a b c d] by which a stored picture, y up and about its centre, comes upright. */
export const orientationMatrix: Readonly<Record<Orientation, readonly [number, number, number, number]>> = {
  1: [1, 0, 0, 1],
  2: [-1, 0, 0, 1],
  3: [-1, 0, 0, -1],
  4: [1, 0, 0, -1],
  5: [0, -1, -1, 0],
  6: [0, -1, 1, 0],
  7: [0, 1, 1, 0],
  8: [0, 1, -1, 0],
};

export function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8;
}

export function isPng(bytes: Uint8Array): boolean {
  return [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a].every((byte, i) => bytes[i] === byte);
}

const START_OF_SCAN = 0xda;
const APP1 = 0xe1;
const ORIENTATION_TAG = 0x0112;

/** The noted orientation of a JPEG picture; 1 where none is noted, the note is damaged or it is no JPEG. */
export function orientationOf(bytes: Uint8Array): Orientation {
  if (!isJpeg(bytes)) return 1;
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 4 <= file.byteLength && file.getUint8(at) === 0xff) {
    const marker = file.getUint8(at + 1);
    const length = file.getUint16(at + 2);
    if (marker === START_OF_SCAN) return 1;
    if (marker === APP1 && at + 2 + length <= file.byteLength) {
      const found = exifOrientation(new DataView(bytes.buffer, bytes.byteOffset + at + 4, length - 2));
      if (found) return found;
    }
    at += 2 + length;
  }
  return 1;
}

function exifOrientation(segment: DataView): Orientation | undefined {
  const header = 6;
  if (segment.byteLength < header + 8 || segment.getUint32(0) !== 0x45786966) return undefined;
  const little = segment.getUint16(header) === 0x4949;
  const directory = header + segment.getUint32(header + 4, little);
  if (directory + 2 > segment.byteLength) return undefined;
  const count = segment.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (entry + 12 > segment.byteLength) return undefined;
    if (segment.getUint16(entry, little) === ORIENTATION_TAG) return known(segment.getUint16(entry + 8, little));
  }
  return undefined;
}

function known(value: number): Orientation | undefined {
  switch (value) {
    case 1:
    case 2:
    case 3:
    case 4:
    case 5:
    case 6:
    case 7:
    case 8:
      return value;
    default:
      return undefined;
  }
}
