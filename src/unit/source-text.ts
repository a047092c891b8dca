import { type LineIndex, type Range, range } from "../base/range";

/**
 * Text that a Markdown block holds, tied to the file: markdown-it strips bullets, indents and quote marks from the front of
 * each line, and table cells lose the backslash before a bar. Made of stretches that stand in the file as they are, so that
 * every offset maps back exactly.
 */
export class SourceText {
  private constructor(
    readonly text: string,
    private readonly starts: readonly number[],
    private readonly sources: readonly number[],
  ) {}

  /** `content` stands in the file's lines from `firstLine` on, each of its lines being the tail of one of them. */
  static inLines(lines: LineIndex, firstLine: number, content: string): SourceText {
    const starts: number[] = [];
    const sources: number[] = [];
    let at = 0;
    content.split("\n").forEach((piece, i) => {
      const line = lines.line(firstLine + i);
      const offset = tailOffset(lines.text.slice(line.start, line.end), piece);
      starts.push(at);
      sources.push(line.start + Math.max(0, offset));
      // Where a tab was spread to more spaces than it has characters, the text behind them stands where it does.
      if (offset < 0) {
        const lead = piece.length - piece.trimStart().length;
        starts.push(at + lead);
        sources.push(line.start + offset + lead);
      }
      at += piece.length + 1;
    });
    return new SourceText(content, starts, sources);
  }

  /** The file's text from `start` to `end`, without the characters at `dropped` (ascending offsets in the file). */
  static without(file: string, start: number, end: number, dropped: readonly number[]): SourceText {
    const starts: number[] = [];
    const sources: number[] = [];
    let text = "";
    let from = start;
    for (const stop of [...dropped, end]) {
      if (stop < from) continue;
      starts.push(text.length);
      sources.push(from);
      text += file.slice(from, stop);
      from = stop + 1;
    }
    return new SourceText(text, starts, sources);
  }

  /** A text that stands alone: every place in it is its own. */
  static alone(text: string): SourceText {
    return new SourceText(text, [0], [0]);
  }

  /** The same text where all of it stands `by` further down. */
  moved(by: number): SourceText {
    return new SourceText(
      this.text,
      this.starts,
      this.sources.map((source) => source + by),
    );
  }

  /** It stands in the file in one piece. */
  get isWhole(): boolean {
    return this.starts.length === 1;
  }

  /** The offset in the file of an offset in `text`. */
  source(offset: number): number {
    let piece = this.starts.length - 1;
    while (piece > 0 && (this.starts[piece] ?? 0) > offset) piece--;
    return (this.sources[piece] ?? 0) + offset - (this.starts[piece] ?? 0);
  }

  range(start: number, end: number): Range {
    const from = this.source(start);
    // The end belongs to the piece of the last character, not to the next one, which may stand elsewhere.
    return range(from, end > start ? this.source(end - 1) + 1 : from);
  }

  /** Without the white space at its end. */
  get whole(): Range {
    return this.range(0, this.text.trimEnd().length);
  }
}

/** Where the piece begins in its line; less than 0 where its white space is longer than the line's own. */
function tailOffset(whole: string, piece: string): number {
  if (whole.endsWith(piece)) return whole.length - piece.length;
  const found = whole.lastIndexOf(piece.trim());
  if (found < 0) return Math.max(0, whole.trimEnd().length - piece.length);
  return found - (piece.length - piece.trimStart().length);
}
