import bidiFactory from "bidi-js";
import type { Run } from "../base/run";
import { scriptsOf } from "./script";
import type { FaceName } from "./typeface";

/*
 * Cuts a line into stretches that can be shaped at once: one direction, one script, one face.
 */

export interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly face: FaceName;
  readonly rightToLeft: boolean;
}

const bidi = bidiFactory();

/** Anything that can stand from right to left, or that steers direction. */
const turning = /[\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufefc]|[\ud802\ud803\ud83a\ud83b]/;

export function faceOf(run: Run): FaceName {
  if (run.bold) return run.italic ? "boldItalic" : "bold";
  return run.italic ? "italic" : "regular";
}

/** The stretches of `text`, which is the runs' text joined, in visual order from left to right. */
export function itemise(text: string, runs: readonly Run[]): readonly Stretch[] {
  const levels = turning.test(text) ? bidi.getEmbeddingLevels(text, "auto").levels : undefined;
  const levelAt = (index: number): number => levels?.[index] ?? 0;
  const scripts = scriptsOf(text);
  const stretches: (Stretch & { readonly level: number })[] = [];
  let at = 0;
  for (const run of runs) {
    const face = faceOf(run);
    const runEnd = at + run.text.length;
    while (at < runEnd) {
      const level = levelAt(at);
      let end = at + 1;
      while (end < runEnd && levelAt(end) === level && scripts[end] === scripts[at]) end++;
      stretches.push({ start: at, end, face, rightToLeft: level % 2 === 1, level });
      at = end;
    }
  }
  return levels ? visualOrder(stretches) : stretches;
}

/** Rule L2 of the bidirectional algorithm: from the highest level down to the lowest odd one, turn each sequence round. */
function visualOrder<Item extends { readonly level: number }>(items: readonly Item[]): readonly Item[] {
  const order = [...items];
  for (let level = Math.max(0, ...items.map((item) => item.level)); level >= 1; level--) {
    let start = 0;
    while (start < order.length) {
      let end = start;
      while ((order[end]?.level ?? -1) >= level) end++;
      if (end > start) order.splice(start, end - start, ...order.slice(start, end).reverse());
      start = end + 1;
    }
  }
  return order;
}
