import { columnsOf } from "../base/columns";

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

/** A line's characters as a terminal shows them, in the order of the text. */
export function glyphsOf(line: string): Glyph[] {
  let column = 0;
  return Array.from(graphemes.segment(line), ({ segment, index }) => {
    const text = segment === "\t" ? " ".repeat(tabStop - (column % tabStop)) : printable(segment);
    const cells = text === segment ? columnsOf(segment) : text.length;
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
