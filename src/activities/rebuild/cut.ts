import type { Range } from "../../base/range";
import { plain } from "../../base/run";
import type { Answer, Pair } from "../../unit/unit";
import type { SentencePart } from "./model";
import { sliceRuns } from "./runs";

/*
 * Where a sentence is cut into cards: at its bars, else at white space, punctuation kept with its word.
 */

export function cutSentence({ left }: Pair, text: string): SentencePart[] {
  const [answer] = left.answers;
  if (answer.parts.length > 1)
    return answer.parts.map(({ runs, text: own, range, picture }) => ({
      runs,
      text: own,
      source: range,
      ...(picture ? { picture } : {}),
    }));
  if (answer.picture || answer.runs.length === 0) return [];
  return tokens(plain(answer.runs)).map(([start, end]) => {
    const runs = sliceRuns(answer.runs, start, end);
    return { runs, text: plain(runs), source: placeIn(answer, start, end, text) };
  });
}

/** Where a stretch of an answer stands in the unit: exactly so where it is written as it prints, else the whole answer. */
function placeIn({ range, runs }: Answer, start: number, end: number, unit: string): Range {
  const written = unit.slice(range.start, range.end) === plain(runs);
  return written ? { start: range.start + start, end: range.start + end } : range;
}

const opening = /^[\p{Ps}\p{Pi}¿¡„‚]+$/u;
const wordy = /[\p{L}\p{N}\p{S}\p{M}]/u;

/** Stretches between white space that breaks a line; one without a letter or figure goes with the word that it belongs to. */
export function tokens(text: string): [number, number][] {
  const out: [number, number][] = [];
  let held: number | undefined;
  for (const match of text.matchAll(/[^ \t\r\n\u2000-\u2006\u2008-\u200a\u205f\u3000]+/gu)) {
    const [start, end] = [held ?? match.index, match.index + match[0].length];
    held = undefined;
    const last = out.at(-1);
    if (wordy.test(match[0])) out.push([start, end]);
    else if (opening.test(match[0]) || !last) held = start;
    else last[1] = end;
  }
  if (held !== undefined) {
    const last = out.at(-1);
    if (last) last[1] = text.length;
    else out.push([held, text.length]);
  }
  return out;
}

/** Letters of scripts that are written without spaces between words. */
const unspaced =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}]/u;

/** Whether a text that makes one card does so because its script has no spaces. */
export function lacksSpaces(text: string): boolean {
  return (text.match(new RegExp(unspaced, "gu")) ?? []).length > 1;
}

/** The text with bars between its words, punctuation kept with its word; undefined where the platform knows no words of it. */
export function withBars(text: string, lang: string): string | undefined {
  const parts: string[] = [];
  let held = "";
  for (const { segment, isWordLike } of segmenter(lang).segment(text)) {
    const last = parts.length - 1;
    if (isWordLike) {
      parts.push(held + segment);
      held = "";
    } else if (opening.test(segment) || last < 0) held += segment;
    else parts[last] += segment;
  }
  if (parts.length > 0) parts[parts.length - 1] += held;
  return parts.length > 1 ? parts.map((part) => part.trim()).join("|") : undefined;
}

function segmenter(lang: string): Intl.Segmenter {
  try {
    return new Intl.Segmenter(lang, { granularity: "word" });
  } catch {
    // A tag that is no language: the root rules.
    return new Intl.Segmenter("und", { granularity: "word" });
  }
}
