import { hash64 } from "./seed";

/**
 * Sixteen characters for printed codes. Of characters that look alike, also when turned by 90° or 180°, one is kept:
 * not 0 O Q (circles), 1 I L J (strokes; 7 turned is an L), 2 Z (N turned), 5 S, 6 9 G, 3 M W (E turned), B (8),
 * U (C turned), V (A turned).
 */
export const markAlphabet = "ACDEFHKNPRTXY478";

export const codeLength = 6;

/** Six characters for what is printed and how it lies (24 bits of a hash). */
export function dealCode(content: string): string {
  const [word] = hash64(content);
  return encode(word >>> 8, codeLength);
}

function encode(value: number, width: number): string {
  let out = "";
  for (let i = width - 1; i >= 0; i--) out += markAlphabet.charAt(Math.floor(value / 16 ** i) % 16);
  return out;
}

/** A piece's printed code: deal, copy (from 0; left out for a master), piece (from 0; beyond 255 in three characters). */
export function pieceMark(code: string, copy: number | undefined, piece: number): string {
  const last = encode(piece, piece < pairs ? 2 : 3);
  return copy === undefined ? `${code}-${last}` : `${code}-${encode(copy, 2)}-${last}`;
}

/** How many numbers two characters can tell. */
const pairs = markAlphabet.length ** 2;

/**
 * Copy and piece of a mark of the deal with this code, as `pieceMark` writes them; undefined where it has none such. Hyphens are
 * left out of `bare`. What a master's mark looks like is no mark of a deal with copies, and the other way round.
 */
export function readMark(
  bare: string,
  code: string,
  master: boolean,
): { readonly copy: number | undefined; readonly piece: number } | undefined {
  if (!bare.startsWith(code)) return undefined;
  const rest = bare.slice(code.length);
  const last = master ? rest : rest.slice(2);
  const piece = decode(last);
  const copy = master ? undefined : decode(rest.slice(0, 2));
  const told = master || copy !== undefined;
  return piece !== undefined && told && last.length === (piece < pairs ? 2 : 3) ? { copy, piece } : undefined;
}

function decode(text: string): number | undefined {
  const places = [...text].map((character) => markAlphabet.indexOf(character));
  if (places.length === 0 || places.includes(-1)) return undefined;
  return places.reduce((value, place) => value * markAlphabet.length + place, 0);
}
