/** A half-open span of UTF-16 code units in one source text: `start` inclusive, `end` exclusive. */
export interface Range {
  readonly start: number;
  readonly end: number;
}

/** Zero-based line and UTF-16 column, as in the Language Server Protocol. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface LspRange {
  readonly start: Position;
  readonly end: Position;
}

export function range(start: number, end: number): Range {
  return { start, end };
}

export function contains(outer: Range, offset: number): boolean {
  return offset >= outer.start && offset <= outer.end;
}

/** Where the line that holds an offset begins, whatever ends the one above it. */
export function lineStart(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && !/[\r\n]/.test(text.charAt(start - 1))) start--;
  return start;
}

/** Where the line below the one that holds an offset begins; the text's length where there is none. */
export function nextLine(text: string, offset: number): number {
  const ending = /\r\n|\r|\n/g;
  ending.lastIndex = offset;
  return ending.exec(text) ? ending.lastIndex : text.length;
}

/** Start offsets of the lines of a text; `\r\n`, `\n` and `\r` end a line. */
export class LineIndex {
  readonly starts: readonly number[];

  constructor(readonly text: string) {
    const starts = [0];
    for (let i = 0; i < text.length; i++) {
      const unit = text.charCodeAt(i);
      if (unit === 13 && text.charCodeAt(i + 1) === 10) i++;
      if (unit === 10 || unit === 13) starts.push(i + 1);
    }
    this.starts = starts;
  }

  /** The line ending that new lines get: that of Windows, or a lone `\r`, where the text has one; a `\n` would be one with the latter. */
  get newline(): string {
    if (!this.text.includes("\r")) return "\n";
    return this.text.includes("\r\n") ? "\r\n" : "\r";
  }

  get count(): number {
    return this.starts.length;
  }

  /** Zero-based line that holds `offset`; offsets outside the text are clamped. */
  lineAt(offset: number): number {
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  positionAt(offset: number): Position {
    const clamped = Math.max(0, Math.min(offset, this.text.length));
    const line = this.lineAt(clamped);
    return { line, character: clamped - (this.starts[line] as number) };
  }

  /** Offset of a line's first unit; the text's length for a line past the end. */
  start(line: number): number {
    return this.starts[line] ?? this.text.length;
  }

  /** A line's span without its line ending. */
  line(line: number): Range {
    const start = this.start(line);
    let end = this.start(line + 1);
    while (end > start && /[\r\n]/.test(this.text.charAt(end - 1))) end--;
    return { start, end };
  }

  lsp(span: Range): LspRange {
    return { start: this.positionAt(span.start), end: this.positionAt(span.end) };
  }
}
