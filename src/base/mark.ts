import { hash64 } from "./seed";

/**
 * Sixteen characters for printed codes. Of characters that look alike, also when turned by 90° or 180°, one is kept:
 * not 0 O Q (circles), 1 I L J (strokes; 7 turned is an L), 2 Z (N turned), 5 S, 6 9 G, 3 M W (E turned), B (8),
 * U (C turned), V (A turned).
 */
export const markAlphabet = "ACDEFHKNPRTXY478";

/** Six characters for what is printed and how it lies (24 bits of a hash). */
export function dealCode(content: string): string {
  const [word] = hash64(content);
  return encode(word >>> 8, 6);
}

function encode(value: number, width: number): string {
  let out = "";
  for (let i = width - 1; i >= 0; i--) out += markAlphabet.charAt(Math.floor(value / 16 ** i) % 16);
  return out;
}

/** A piece's printed code: deal, copy (from 0; left out for a master), piece (from 0). */
export function pieceMark(code: string, copy: number | undefined, piece: number): string {
  return copy === undefined ? `${code}-${encode(piece, 2)}` : `${code}-${encode(copy, 2)}-${encode(piece, 2)}`;
}
