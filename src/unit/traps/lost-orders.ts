import { bars, type Env, type Span, scan, spacedSeparators } from "../inline";
import { partKey, type RawItem } from "../items";
import type { Problems } from "../problems";

/*
 * A bullet under a pair that was meant as an accepted order and is read as an example: bars stand in it and none in the left side,
 * or in the left side and none in it.
 */

/** `  - Hoje | eu compro | pão.` under `- Eu compro pão hoje. = …`: the first of such bullets is told. */
export function lostOrder(item: RawItem, env: Env, problems: Problems): void {
  const { text: source } = item;
  const { mask } = scan(source.text, env);
  const [equals] = spacedSeparators(source.text, mask, "=");
  if (!equals || item.nested.length === 0) return;
  const stops = bars(source.text, mask, 0, equals.start);
  if (stops.length > 0) {
    barlessOrder(item, [...stops, equals], problems);
    return;
  }
  for (const { text: below } of item.nested) {
    const found = /[|｜]/u.test(below.text) ? bars(below.text, scan(below.text, env).mask, 0, below.text.length) : [];
    const [first] = found.filter(({ start, end }) => /^\s+\S\s+$/u.test(below.text.slice(start, end)));
    if (!first) continue;
    const at = first.start + below.text.slice(first.start, first.end).search(/[|｜]/u);
    const parts = found.map(({ start }, i) => below.text.slice(found[i - 1]?.end ?? 0, start));
    const cuts = cutsOf(source.text.slice(0, equals.start), [...parts, below.text.slice(found.at(-1)?.end ?? 0)]);
    // Two with nothing between them have their white space in common.
    const from = ({ start }: Span, i: number): number => Math.max(start, found[i - 1]?.end ?? 0);
    const out = found.map((bar, i) => ({ range: below.range(from(bar, i), bar.end), text: " " }));
    problems.trap(
      "printed-bar",
      below.range(at, at + 1),
      "Without bars in the sentence above it this is an example, in which the bar is printed, and no accepted order of parts.",
      ...(cuts
        ? [
            {
              title: "Put bars into the sentence above",
              edits: cuts.map((cut) => ({ range: source.range(cut, cut), text: "| " })),
            },
          ]
        : []),
      { title: found.length > 1 ? "Take the bars out" : "Take the bar out", edits: out, drops: true },
    );
    return;
  }
}

/** `  - Pão hoje eu compro` under `- Hoje | eu compro | pão = …`: all of the parts in another order, which nobody gives as an example. */
function barlessOrder({ text: source, nested }: RawItem, stops: readonly Span[], problems: Problems): void {
  const parts = stops.map(({ start }, i) => source.text.slice(stops[i - 1]?.end ?? 0, start));
  const keys = parts.flatMap((part) => part.trim().split(/\s+/u).map(partKey)).join(" ");
  for (const { text: below } of nested) {
    if (/[|｜=＝<[\]*_`\\]/u.test(below.text)) continue;
    const cuts = cutsOf(below.text, parts);
    if (!cuts || below.text.trim().split(/\s+/u).map(partKey).join(" ") === keys) continue;
    problems.trap(
      "lost-order",
      below.whole,
      "Without bars this is an example, and no accepted order of the parts above it.",
      { title: "Put bars between the parts", edits: cuts.map((at) => ({ range: below.range(at, at), text: "| " })) },
    );
  }
}

/** Where the words of a text that begin the parts stand, but for the first, where the parts in some order are the text. */
function cutsOf(text: string, parts: readonly string[]): readonly number[] | undefined {
  const words = [...text.matchAll(/\S+/gu)].map(({ index, 0: word }) => ({ index, key: partKey(word) }));
  const left = parts.map((part) => part.trim().split(/\s+/u).map(partKey));
  const cuts: number[] = [];
  for (let at = 0; at < words.length; ) {
    const next = left.findIndex((part) => part.every((key, i) => words[at + i]?.key === key));
    const length = left[next]?.length ?? 0;
    if (length === 0) return undefined;
    left.splice(next, 1);
    if (at > 0) cuts.push(words[at]?.index ?? 0);
    at += length;
  }
  return left.length === 0 ? cuts : undefined;
}
