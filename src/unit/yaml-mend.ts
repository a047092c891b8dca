/*
 * Changes that make a YAML text what was meant, and the way back to the text as written.
 */

/** What to write instead, in offsets of the text that was read. */
export interface Mend {
  /** The place that is told. */
  readonly start: number;
  readonly end: number;
  /** A sentence. */
  readonly message: string;
  readonly title: string;
  readonly edits: readonly MendEdit[];
}

export interface MendEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A line of a YAML text with the offset that it begins at. */
export interface Line {
  readonly start: number;
  readonly text: string;
}

/** The text with the mends done. */
export function mendedText(text: string, mends: readonly Mend[]): string {
  return editsOf(mends).reduceRight(
    (now, { start, end, text: put }) => now.slice(0, start) + put + now.slice(end),
    text,
  );
}

/** The offset in the text as it was of an offset in the mended one. */
export function unmended(mends: readonly Mend[], offset: number): number {
  let shift = 0;
  for (const { start, end, text } of editsOf(mends)) {
    const from = start + shift;
    if (offset <= from) break;
    if (offset < from + text.length) return Math.min(end, start + offset - from);
    shift += text.length - (end - start);
  }
  return offset - shift;
}

function editsOf(mends: readonly Mend[]): MendEdit[] {
  return mends.flatMap(({ edits }) => edits).sort((a, b) => a.start - b.start || a.end - b.end);
}

/** Hyphens, name and value of a line; the value without the space around it. */
export const keyed = /^([ \t]*(?:-[ \t]+)*)(?:([\w-]+):(?=[ \t]|$)[ \t]*)?(.*?)[ \t]*$/u;
