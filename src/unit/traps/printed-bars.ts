import { bars, type Env, type Span, scan, spacedSeparators } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * Bars that part nothing and are printed: those on the right side of a pair, and signs that only look like a bar.
 */

/** Signs that look like a bar, with the white space round them. */
const alike = /(\s*)([¦‖ǀ│∣┃❘￨])(\s*)/gu;

interface Bar extends Span {
  /** The sign itself. */
  readonly at: number;
  readonly other: boolean;
  readonly spaced: boolean;
}

export function printedBars(source: SourceText, env: Env, problems: Problems): void {
  const { text } = source;
  if (!/[|｜¦‖ǀ│∣┃❘￨]/u.test(text)) return;
  const { mask, comments } = scan(text, env);
  const [equals] = spacedSeparators(text, mask, "=");
  if (!equals) return;
  const behind = comments.find(({ start }) => start > equals.end)?.start ?? text.length;
  const end = text.slice(0, behind).trimEnd().length;
  const others = [...text.matchAll(alike)].flatMap((match): Bar[] => {
    const [whole, before = "", , after = ""] = match;
    const at = match.index + before.length;
    const spaced = before !== "" && after !== "";
    // In the middle of a word these are letters or signs of sound.
    if (mask[at] || !(spaced || /[¦│]/u.test(whole))) return [];
    return [{ start: match.index, end: match.index + whole.length, at, other: true, spaced }];
  });
  const left = others.filter(({ at }) => at < equals.start);
  if (left.length > 0) {
    const edits = left.map(({ at }) => ({ range: source.range(at, at + 1), text: "|" }));
    const [first] = left;
    const at = first?.at ?? 0;
    const message = `“${text.charAt(at)}” is printed: a sentence is cut by the bar “|”.`;
    problems.trap("printed-bar", source.range(at, at + 1), message, { title: "Write “|”", edits });
  }
  const cut = left.length > 0 || bars(text, mask, 0, equals.start).length > 0;
  const side = { start: equals.end, end };
  // The ends of the side count as white space.
  const real = bars(text, mask, side.start, side.end).map((span): Bar => {
    const at = span.start + text.slice(span.start, span.end).search(/[|｜]/u);
    const spaced = (at > span.start || at <= side.start) && (at + 1 < span.end || at + 1 >= side.end);
    return { start: span.start, end: span.end, at, other: false, spaced };
  });
  // Rows of a table that go on an item are told of themselves.
  const inRow = ({ at }: Bar): boolean => /\n\s*[|｜][^\n]*$/u.test(text.slice(0, at + 1));
  const right = [...real, ...others.filter(({ at }) => at >= side.start && at < side.end)].filter(
    (bar) => (bar.spaced || cut) && !inRow(bar),
  );
  onTheRight(source, right, side, cut, problems);
}

function onTheRight(source: SourceText, right: readonly Bar[], side: Span, cut: boolean, problems: Problems): void {
  const [first] = right;
  if (!first) return;
  const edge = ({ start, end }: Bar): boolean => start <= side.start || end >= side.end;
  const out = cut || right.some(edge);
  const put = (bar: Bar): string =>
    out ? (edge(bar) || !/\s/u.test(source.text.slice(bar.start, bar.end)) ? "" : " ") : " / ";
  const edits = right.map((bar) => ({ range: source.range(bar.start, Math.min(bar.end, side.end)), text: put(bar) }));
  const title = !out ? "Write “ / ”" : right.length > 1 ? "Take them out" : "Take it out";
  const text = {
    title: "Mark it as text",
    edits: right.flatMap(({ at, other }) => (other ? [] : write("", source.range(at, at), "\\").edits)),
  };
  problems.trap(
    "printed-bar",
    source.range(first.at, first.at + 1),
    `“${source.text.charAt(first.at)}” is printed: bars cut the left side only, and accepted answers are parted by “ / ”.`,
    { title, edits },
    ...(right.some(({ other }) => other) ? [] : [text]),
  );
}
