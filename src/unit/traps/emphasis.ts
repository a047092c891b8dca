import { bars, type Env, parseRuns, type Span, scan, spacedSeparators } from "../inline";
import { plain } from "../phrases";
import type { Problems } from "../problems";
import type { SourceText } from "../source-text";

/** Emphasis as it is plainly written: no letter or number outside of it touches its signs. */
const emphasis = /(?<![\p{L}\p{N}\\*_])(\*{1,3}|_{1,3})(?=[^\s*_])([^\n]*?[^\s*_\\])\1(?![\p{L}\p{N}*_])/gu;

/** What a text is: both sides of a pair, or a cell with one. */
export type Part = "pair" | "left" | "right";

/** What parts such a text, in order: the first “ = ” of a pair, each “ / ”, and bars on the left. */
export function stops(text: string, part: Part, env: Env): Span[] {
  const { mask } = scan(text, env);
  const equals = part === "pair" ? spacedSeparators(text, mask, "=")[0] : undefined;
  const signs = [...(equals ? [equals] : []), ...spacedSeparators(text, mask, "/")];
  const cuts = part === "right" ? [] : bars(text, mask, 0, equals?.start ?? text.length);
  return [...signs, ...cuts].sort((a, b) => a.start - b.start);
}

const signsPrinted = (text: string, env: Env): number => plain(parseRuns(text, env).runs).replace(/[^*_]/gu, "").length;

/** Whether parts of a text print signs that are emphasis in all of it. */
function crosses(text: string, between: readonly Span[], env: Env): boolean {
  let from = 0;
  let parts = 0;
  for (const { start, end } of [...between, { start: text.length, end: text.length }]) {
    parts += signsPrinted(text.slice(from, Math.max(from, start)), env);
    from = end;
  }
  return parts > signsPrinted(text, env);
}

/** `**roda = wheel**`: each side is read by itself, so that neither is bold and both print the signs. */
export function acrossEmphasis(source: SourceText, part: Part, env: Env, problems: Problems): void {
  const { text } = source;
  if (!/[*_]/.test(text)) return;
  const between = stops(text, part, env);
  if (!crosses(text, between, env)) return;
  for (const match of text.matchAll(emphasis)) {
    const sign = match[1] ?? "";
    const end = match.index + match[0].length;
    const inside = between.filter((stop) => match.index < stop.start && stop.end < end);
    if (inside.length === 0) continue;
    const places = inside.flatMap((stop) => [stop.start, stop.end]);
    const mended = [0, ...places].map((at, i) => text.slice(at, places[i] ?? text.length)).join(sign);
    const edits = places.map((at) => ({ range: source.range(at, at), text: sign }));
    problems.trap(
      "split-emphasis",
      source.range(match.index, end),
      `“${sign}” begins in one part and ends in another, so that it is printed as it stands. Each part has its own.`,
      ...(crosses(mended, stops(mended, part, env), env) ? [] : [{ title: `Write “${sign}” round each part`, edits }]),
    );
    return;
  }
}
