/*
 * How texts stand in a terminal: in cells of one width, nothing in them that the terminal would obey.
 */

/** What one character of the user takes in a terminal. */
export interface Glyph {
  /** As shown: a tab is spaces, what cannot be seen is its code point. */
  readonly text: string;
  readonly cells: number;
  /** Where it stands in the text that it was taken from, in UTF-16 units. */
  readonly start: number;
  readonly end: number;
}

const tabStop = 4;

const graphemes = new Intl.Segmenter("und", { granularity: "grapheme" });

/** Controls, and format characters that turn the direction of what follows; a terminal could be led astray by them. */
const unsafe = /[\p{Cc}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

const cellless = /^[\p{M}\p{Cf}]+$/u;

const emoji = /\p{Emoji_Presentation}|\p{Extended_Pictographic}\ufe0f/u;

/** First and last code points of blocks whose characters are wide (UAX #11, W and F), in order. */
const wide: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0x4dbf],
  [0x4e00, 0xa4cf],
  [0xa960, 0xa97f],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe10, 0xfe19],
  [0xfe30, 0xfe6f],
  [0xff01, 0xff60],
  [0xffe0, 0xffe6],
  [0x16fe0, 0x18dff],
  [0x1aff0, 0x1b2ff],
  [0x1f200, 0x1f265],
  [0x20000, 0x3fffd],
];

/** A line's characters as a terminal shows them, in the order of the text. */
export function glyphsOf(line: string): Glyph[] {
  let column = 0;
  return Array.from(graphemes.segment(line), ({ segment, index }) => {
    const text = segment === "\t" ? " ".repeat(tabStop - (column % tabStop)) : printable(segment);
    const cells = text === segment ? cellsOf(segment) : text.length;
    column += cells;
    return { text, cells, start: index, end: index + segment.length };
  });
}

/** A text on one line with nothing in it that a terminal would obey. */
export function printable(text: string): string {
  return text.replace(unsafe, (unit) => {
    if (unit === "\n" || unit === "\t" || unit === "\r") return " ";
    return `<${(unit.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}>`;
  });
}

function cellsOf(grapheme: string): number {
  if (cellless.test(grapheme)) return 0;
  const point = grapheme.codePointAt(0) ?? 0;
  return emoji.test(grapheme) || wide.some(([first, last]) => point >= first && point <= last) ? 2 : 1;
}
