import type { TextEdit } from "../../base/finding";

/** Puts a line of its own at an offset where a line begins, or at the end of a file whose last line has no ending. */
export function lineAt(text: string, offset: number, line: string): TextEdit {
  const begins = offset === 0 || /[\r\n]/.test(text.charAt(offset - 1));
  const newline = /\r\n|\r|\n/.exec(text)?.[0] ?? "\n";
  return { range: { start: offset, end: offset }, text: begins ? line + newline : newline + line };
}
