import type { Range } from "../../base/range";
import type { Answer, Pair, Phrase, Side, Tie, Unit } from "../../unit/unit";
import { membersOf } from "./members";
import { columnOf } from "./names/mentions";

/** Kinds of tokens, in the order of VS Code's legend; `package.json` gives each its scopes for the themes. */
export const tokenKinds = [
  "separator",
  "alternative",
  "accepted",
  "bar",
  "trueMark",
  "falseMark",
  "gap",
  "tie",
] as const;

export type TokenKind = (typeof tokenKinds)[number];

/** On one line; never two over one place. */
export interface SemanticToken {
  readonly range: Range;
  readonly kind: TokenKind;
}

/**
 * What was read, where a grammar that sees one line at a time cannot be sure: signs that count and those that are text, answers
 * that are accepted and not printed, what a mark says, ties that lead somewhere.
 */
export function tokensOf(unit: Unit): readonly SemanticToken[] {
  const { text } = unit;
  const found: SemanticToken[] = [];
  const add = (kind: TokenKind, range: Range | undefined): void => {
    if (range) found.push({ kind, range });
  };
  const gaps = (range: Range): void => {
    for (const { index, 0: gap } of text.slice(range.start, range.end).matchAll(/(?<!\\)\[(?:\.\.\.|…)\](?!\(|\[)/gu))
      add("gap", { start: range.start + index, end: range.start + index + gap.length });
  };
  const tie = (each: Tie): void => {
    if (columnOf(unit, each)) add("tie", each.target);
  };
  const side = ({ answers }: Side): void => {
    answers.forEach((answer, i) => {
      const before = answers[i - 1];
      if (before) {
        add("alternative", signBetween(text, before, answer, "/／"));
        add("accepted", answer.range);
      }
      bars(answer);
    });
  };
  const bars = ({ parts }: Answer): void => {
    parts.forEach((part, i) => {
      const before = parts[i - 1];
      if (before) add("bar", signBetween(text, before, part, "|｜"));
    });
  };
  const pair = (item: Pair): void => {
    const { left, right, examples, orders } = item;
    add("separator", signBetween(text, left, right, "=＝"));
    side(left);
    side(right);
    for (const { range } of orders) for (const bar of barsIn(text, range)) add("bar", bar);
    for (const phrase of [...examples, left, right]) gaps(phrase.range);
  };
  for (const section of unit.sections) {
    for (const member of membersOf(section)) {
      if (member.shape === "table") continue;
      if (member.shape === "pair") pair(member.item);
      else gaps(member.item.range);
      if (member.shape === "statement") add(member.item.truth ? "trueMark" : "falseMark", member.item.mark);
      if (member.shape === "event") {
        for (const free of member.item.free) {
          gaps(free.range);
          free.ties.forEach(tie);
        }
      }
      member.item.ties.forEach(tie);
    }
  }
  return flat(unit, found);
}

/** The one of `signs` that stands between two ranges. */
function signBetween(text: string, before: Pick<Phrase, "range">, after: Pick<Phrase, "range">, signs: string) {
  const { end } = before.range;
  for (let at = end; at < after.range.start; at++) {
    if (signs.includes(text.charAt(at))) return { start: at, end: at + 1 };
  }
  return undefined;
}

/** Bars of an accepted order, of which only the whole has a place. */
function barsIn(text: string, { start, end }: Range): readonly Range[] {
  const code = /`[^`]*`|\\[\s\S]|[|｜]/gu;
  return [...text.slice(start, end).matchAll(code)]
    .filter(([sign]) => sign === "|" || sign === "｜")
    .map(({ index }) => ({ start: start + index, end: start + index + 1 }));
}

/** In order, parted at line ends, and without overlaps: what lies in an accepted answer goes before the answer. */
function flat(unit: Unit, tokens: readonly SemanticToken[]): readonly SemanticToken[] {
  const inner = tokens.filter(({ kind }) => kind !== "accepted").sort(byStart);
  const outer = tokens.filter(({ kind }) => kind === "accepted").sort(byStart);
  // Answers lie one behind the other, so that one way through what is inner is enough.
  let at = 0;
  const pieces = outer.flatMap(({ kind, range }) => {
    while ((inner[at]?.range.start ?? Number.POSITIVE_INFINITY) < range.start) at++;
    const holes: Range[] = [];
    for (; (inner[at]?.range.end ?? Number.POSITIVE_INFINITY) <= range.end; at++) holes.push(inner[at]?.range ?? range);
    let from = range.start;
    return [...holes, { start: range.end, end: range.end }].map((hole) => {
      const piece = { kind, range: { start: from, end: hole.start } };
      from = hole.end;
      return piece;
    });
  });
  return [...inner, ...pieces]
    .flatMap(({ kind, range }) => linesOf(unit, range).map((line) => ({ kind, range: line })))
    .filter(({ range }) => range.end > range.start)
    .sort(byStart);
}

function byStart(a: SemanticToken, b: SemanticToken): number {
  return a.range.start - b.range.start;
}

function linesOf({ lines, text }: Unit, range: Range): readonly Range[] {
  const [first, last] = [lines.lineAt(range.start), lines.lineAt(range.end)];
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const line = lines.line(first + i);
    const indent = text.slice(line.start, line.end).search(/\S|$/u);
    return {
      start: Math.max(range.start, i === 0 ? 0 : line.start + indent),
      end: Math.min(range.end, line.end),
    };
  });
}
