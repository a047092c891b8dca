/*
 * Columns that a text takes in a fixed-pitch font, in an editor or a terminal: East Asian wide and full-width characters and
 * emoji take two, combining marks none (UAX #11).
 */

const graphemes = new Intl.Segmenter("und", { granularity: "grapheme" });

const none = /^[\p{M}\p{Cf}]+$/u;

const emoji = /\p{Emoji_Presentation}|\p{Extended_Pictographic}\ufe0f/u;

/** First and last code points of blocks whose characters are wide, in order. */
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

/** Columns of one character of the user (grapheme). */
export function columnsOf(grapheme: string): 0 | 1 | 2 {
  if (none.test(grapheme)) return 0;
  const point = grapheme.codePointAt(0) ?? 0;
  return emoji.test(grapheme) || wide.some(([first, last]) => point >= first && point <= last) ? 2 : 1;
}

export function widthOf(text: string): number {
  let columns = 0;
  for (const { segment } of graphemes.segment(text)) columns += columnsOf(segment);
  return columns;
}
