import type { Run } from "../base/run";
import { hasScript, scriptsOf } from "./script";
import type { ShapedLine, StretchWidths } from "./typeface";

/*
 * Widths of stretches of a line that has been shaped whole. The shaper says before which glyphs a text may be cut without
 * changing any (HB_GLYPH_FLAG_UNSAFE_TO_BREAK in hb-buffer.h); the rest of what shaping hangs on (direction, script, what
 * stands around) is the same only in texts of one script from left to right whose letters do not join.
 */

/** Latin, Greek and Cyrillic with their punctuation; break marks are not among them, since they are not printed. */
const simple = /^[\t -~\u00a0-\u00ac\u00ae-\u052f\u1e00-\u1fff\u2010-\u2027\u202f-\u205e\u20a0-\u20cf]*$/;

/** Answers for the line that `runs` were shaped into. */
export function stretchWidths({ text, glyphs }: ShapedLine, runs: readonly Run[]): StretchWidths {
  if (!simple.test(text)) return () => undefined;
  const scripts = scriptsOf(text);
  if (scripts.some((script) => script !== scripts[0])) return () => undefined;
  /** By place: the first glyph of a cluster that begins where the line may be cut; all glyphs at the line's end. */
  const glyphAt: (number | undefined)[] = new Array(text.length);
  for (let i = glyphs.length - 1; i >= 0; i--) {
    const glyph = glyphs[i];
    if (glyph) glyphAt[glyph.cluster] = i === 0 || glyph.separable ? i : undefined;
  }
  glyphAt[text.length] = glyphs.length;
  return (start, end) => {
    const [first, past] = [glyphAt[start], glyphAt[end]];
    if (first === undefined || past === undefined || !alikeInScript(text, runs, start, end)) return undefined;
    // Added up as shaping adds them, so that not even the last digit differs.
    let width = 0;
    for (let i = first; i < past; i++) width += glyphs[i]?.advance ?? 0;
    return width;
  };
}

/** Whether each run's share of a stretch tells its script just as the run does: without a letter, shaping would guess none. */
function alikeInScript(text: string, runs: readonly Run[], start: number, end: number): boolean {
  let at = 0;
  for (const run of runs) {
    const past = at + run.text.length;
    const [from, to] = [Math.max(start, at), Math.min(end, past)];
    if (from < to && !tells(text, from, to) && tells(text, at, past)) return false;
    at = past;
  }
  return true;
}

function tells(text: string, start: number, end: number): boolean {
  for (let i = start; i < end; i++) if (hasScript(text.charCodeAt(i))) return true;
  return false;
}
