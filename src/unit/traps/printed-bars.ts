import { bars, type Env, type Span, scan, spacedSeparators } from "../inline";
import type { Problems } from "../problems";
import type { SourceText } from "../source-text";
import { pairBreaks } from "./one-line";

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
  const signs = spacedSeparators(text, mask, "=");
  const [equals] = signs;
  // A bar between two pairs of one line is told with them.
  if (!equals || (signs.length > 1 && pairBreaks(text, mask, signs))) return;
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
  escapedBars(source, equals.start, problems);
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
  // A bar that is all of the side is the answer.
  if (text.slice(side.start, side.end).trim().length > 1) onTheRight(source, right, side, cut, problems);
}

/** `Eu \\| quero \\| mel = …`, as a table writes its bars, and programs that are afraid of Markdown: printed as cards of their own. */
function escapedBars(source: SourceText, end: number, problems: Problems): void {
  const found = [...source.text.slice(0, end).matchAll(/(?<=[^\S\n])\\(?=[|｜][^\S\n])/gu)];
  const [first] = found;
  if (!first) return;
  problems.trap(
    "printed-bar",
    source.range(first.index, first.index + 2),
    "“\\|” is printed as a bar: a sentence is cut by the bar “|”, with no backslash.",
    {
      title: found.length > 1 ? "Take the backslashes out" : "Take the backslash out",
      edits: found.map(({ index }) => ({ range: source.range(index, index + 1), text: "" })),
      unsure: true,
    },
  );
}

function onTheRight(source: SourceText, found: readonly Bar[], side: Span, cut: boolean, problems: Problems): void {
  const right = [...found].sort((a, b) => a.at - b.at);
  const [first] = right;
  if (!first) return;
  const edge = ({ start, end }: Bar): boolean => start <= side.start || end >= side.end;
  const lone = (bar: Bar, i: number): boolean => !edge(bar) && bar.start >= (right[i - 1]?.end ?? 0) + 1;
  const out = cut || !right.every(lone);
  const edits = right.map((bar, i) => {
    // Two with nothing between them have their white space in common.
    const start = Math.max(bar.start, right[i - 1]?.end ?? 0);
    const end = Math.min(bar.end, side.end);
    const space = lone(bar, i) && /\s/u.test(source.text.slice(start, end)) ? " " : "";
    return { range: source.range(start, Math.max(start, end)), text: out ? space : " / " };
  });
  const title = !out ? "Write “ / ”" : right.length > 1 ? "Take them out" : "Take it out";
  const escapes = right.map(({ at }) => ({ range: source.range(at, at), text: "\\" }));
  problems.trap(
    "printed-bar",
    source.range(first.at, first.at + 1),
    `“${source.text.charAt(first.at)}” is printed: bars cut the left side only, and accepted answers are parted by “ / ”.`,
    { title, edits },
    ...(right.some(({ other }) => other) ? [] : [{ title: "Mark it as text", edits: escapes }]),
  );
}
