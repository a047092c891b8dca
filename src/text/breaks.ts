/*
 * Where a line of text may end: a small part of Unicode's line breaking (UAX #14) that suits words and sentences on
 * cards, with the usual rules for Chinese and Japanese.
 */

/** White space that a line may end at; no-break spaces are not among it. */
export const breakingSpace = /[\t\n\v\f\r \u1680\u2000-\u2006\u2008-\u200a\u2028\u2029\u205f\u3000]/u;

export const SOFT_HYPHEN = "\u00ad";
export const ZERO_WIDTH_SPACE = "\u200b";

const hyphen = /[-\u2010\u2013\u2014/]/u;
const letter = /[\p{L}\p{M}]/u;
const wordPart = /[\p{L}\p{M}\p{N}]/u;
const mark = /\p{M}/u;
const ideographic = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\u30fc\u3001-\u303f\uff01-\uff60]/u;

/** Must not begin a line, even after a space: a French mark stays with its word. */
const neverFirst = new Set(
  "、。，．・：；？！゛゜ヽヾゝゞ々ー）〕］｝〉》」』】〙〗〟’”ぁぃぅぇぉっゃゅょゎゕゖァィゥェォッャュョヮヵヶ゠〜…‥!?,.:;)]}»›%",
);
/** Must not end a line. */
const neverLast = new Set("（〔［｛〈《「『【〘〖〝‘“([{«‹¿¡");

/**
 * Offsets at which a line may end and the next begin, ascending, in UTF-16 units; never 0 or the text's length. White
 * space belongs to the line that it ends. A soft hyphen stands before its offset and is to be drawn as a hyphen there.
 */
export function breaks(text: string): readonly number[] {
  const characters = [...text];
  const found: number[] = [];
  let offset = 0;
  /** The last character that is not white space. */
  let word = "";
  for (const [index, next] of characters.entries()) {
    const before = characters[index - 1] ?? "";
    const between = { beforeLast: characters[index - 2] ?? "", last: before, word, next };
    if (word !== "" && mayBreak(between)) found.push(offset);
    if (!breakingSpace.test(next)) word = next;
    offset += next.length;
  }
  return found;
}

interface Boundary {
  readonly beforeLast: string;
  readonly last: string;
  /** The last character before the boundary that is not white space. */
  readonly word: string;
  readonly next: string;
}

function mayBreak({ beforeLast, last, word, next }: Boundary): boolean {
  if (breakingSpace.test(next) || mark.test(next)) return false;
  if (neverFirst.has(next) || neverLast.has(word)) return false;
  if (breakingSpace.test(last) || last === ZERO_WIDTH_SPACE) return true;
  if (last === SOFT_HYPHEN) return letter.test(next);
  if (hyphen.test(last)) return letter.test(beforeLast) && letter.test(next);
  if (ideographic.test(last)) return ideographic.test(next) || wordPart.test(next) || neverLast.has(next);
  return ideographic.test(next) && wordPart.test(last);
}
