import { type LineIndex, type Range, range } from "../base/range";

/**
 * Text that a Markdown block holds, tied to the file: markdown-it strips bullets, indents and quote marks from the front of
 * each line, so each line of `text` is the tail of a line of the file. Offsets map back exactly.
 */
export class SourceText {
  private constructor(
    readonly text: string,
    private readonly lineStarts: readonly number[],
    private readonly sources: readonly number[],
  ) {}

  /** `content` stands in the file's lines from `firstLine` on, one line for each of its own. */
  static inLines(lines: LineIndex, firstLine: number, content: string): SourceText {
    const starts: number[] = [];
    const sources: number[] = [];
    let at = 0;
    content.split("\n").forEach((piece, i) => {
      const line = lines.line(firstLine + i);
      const whole = lines.text.slice(line.start, line.end);
      starts.push(at);
      sources.push(line.start + tailOffset(whole, piece));
      at += piece.length + 1;
    });
    return new SourceText(content, starts, sources);
  }

  /** The offset in the file of an offset in `text`. */
  source(offset: number): number {
    let line = this.lineStarts.length - 1;
    while (line > 0 && (this.lineStarts[line] as number) > offset) line--;
    return (this.sources[line] as number) + offset - (this.lineStarts[line] as number);
  }

  range(start: number, end: number): Range {
    return range(this.source(start), this.source(end));
  }
}

function tailOffset(whole: string, piece: string): number {
  if (whole.endsWith(piece)) return whole.length - piece.length;
  const trimmed = piece.trim();
  const found = whole.lastIndexOf(trimmed);
  return Math.max(
    0,
    found < 0 ? whole.trimEnd().length - piece.length : found - (piece.length - piece.trimStart().length),
  );
}
