import type { LineIndex, Range } from "../base/range";
import { type Glyph, glyphsOf } from "./cells";
import type { Ink, Paint } from "./colour";

export interface FrameStyle {
  readonly paint: Paint;
  /** What the carets are drawn with. */
  readonly ink: Ink;
  /** Cells that a line may take, line number included. */
  readonly width: number;
}

/**
 * The source line of a range with its number, and carets under the range. Of a range over several lines, the first and the
 * last are shown. A line that is too long is cut down to what stands around the range.
 */
export function codeFrame(lines: LineIndex, range: Range, style: FrameStyle): string[] {
  const first = lines.lineAt(range.start);
  const last = Math.max(first, lines.lineAt(Math.max(range.start, range.end - 1)));
  const digits = String(last + 1).length;
  const gutter = (label: string): string => style.paint("quiet", `    ${label.padStart(digits)} |`);
  const shown = first === last ? [first] : [first, last];
  return shown.flatMap((line, i) => {
    const { text, carets } = frameLine(lines, line, range, style.width - digits - 7);
    const skipped = i > 0 && last > first + 1 ? [gutter("…")] : [];
    const below = carets.trim() === "" ? [] : [`${gutter("")} ${style.paint(style.ink, carets)}`];
    return [...skipped, `${gutter(String(line + 1))} ${text}`.trimEnd(), ...below];
  });
}

function frameLine(lines: LineIndex, line: number, range: Range, width: number): { text: string; carets: string } {
  const { start, end } = lines.line(line);
  const from = Math.max(range.start, start) - start;
  const to = Math.min(range.end, end) - start;
  // An empty range, and one that holds nothing but a line's end, still stands somewhere.
  const marked = ({ start: at, end: until }: Glyph): boolean =>
    to > from ? at < to && until > from : at <= from && until > from;
  const glyphs = glyphsOf(lines.text.slice(start, end));
  const window = windowOf(glyphs, glyphs.findIndex(marked), Math.max(20, width));
  const hits = window.glyphs.map((glyph) => "^ ".charAt(marked(glyph) ? 0 : 1).repeat(glyph.cells));
  const pastEnd = glyphs.some(marked) ? "" : "^";
  return {
    text: `${window.before}${window.glyphs.map(({ text }) => text).join("")}${window.after}`,
    carets: `${" ".repeat(window.before.length)}${hits.join("")}${pastEnd}`.trimEnd(),
  };
}

interface Window {
  readonly before: string;
  readonly glyphs: readonly Glyph[];
  readonly after: string;
}

/** As many characters as fit, a third of them before the one at `focus` (-1: the line's end). */
function windowOf(glyphs: readonly Glyph[], focus: number, width: number): Window {
  const total = cellsIn(glyphs);
  if (total <= width) return { before: "", glyphs, after: "" };
  const at = focus < 0 ? total : cellsIn(glyphs.slice(0, focus));
  const room = width - 2;
  const left = Math.max(0, Math.min(at - Math.floor(room / 3), total - room));
  let column = 0;
  const kept = glyphs.filter(({ cells }) => {
    const begin = column;
    column += cells;
    return begin >= left && column <= left + room;
  });
  return {
    before: kept[0] === glyphs[0] ? "" : "…",
    glyphs: kept,
    after: kept.at(-1) === glyphs.at(-1) ? "" : "…",
  };
}

function cellsIn(glyphs: readonly Glyph[]): number {
  return glyphs.reduce((sum, { cells }) => sum + cells, 0);
}
