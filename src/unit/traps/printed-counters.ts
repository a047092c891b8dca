import { type Problems, write } from "../problems";
import type { Shape } from "../shapes";
import type { SourceText } from "../source-text";
import { dot } from "./glued";

/*
 * Signs of a list that stand in the text of its items, as other programs give them, so that they would be printed on the pieces.
 */

/** The mark of a statement, which stands before them. */
const mark = /^\[[ xX]\]\s+/u;

/** `- • a boia = the buoy`, `- [x] • A boia é vermelha.`: a second bullet. */
export function printedDot(source: SourceText, problems: Problems): void {
  const lead = mark.exec(source.text)?.[0].length ?? 0;
  const found = dot.exec(source.text.slice(lead))?.[0];
  if (found === undefined || !/\s$/u.test(found)) return;
  const range = source.range(lead, lead + found.length);
  problems.trap(
    "printed-counter",
    { start: range.start, end: range.start + found.trimEnd().length },
    "This bullet is printed: the hyphen before it is the bullet of the item.",
    write("Take it out", range, ""),
  );
}

/** `a) `, `A. `, `(1) `, `1: ` before words. */
const counter = /^([(（]?)(\p{L}|\d{1,3})([.):）]+|\.?[º°])\s+(?=\P{L}*\p{L})/u;

/** An item of a list, and what it was read as. */
export interface CountedItem {
  readonly raw: { readonly text: SourceText } | undefined;
  readonly shape: Shape | undefined;
}

/** `- a) a boia = the buoy`, `- b) …`, `- c) …`; `- [x] 1. A boia é vermelha.`: all items of a list count from one, or from its first letter. */
export function printedCounters(items: readonly CountedItem[], problems: Problems): void {
  const [head] = items;
  if (items.length < 3 || !head?.raw || (head.shape !== "pair" && head.shape !== "statement")) return;
  const begins = items.map(({ raw, shape }, i) => (raw && shape === head.shape ? counterOf(raw.text, i) : undefined));
  const [first] = begins;
  if (!first || begins.some((begin) => begin === undefined || begin.sign !== first.sign)) return;
  problems.trap(
    "printed-counter",
    first.range,
    "These items count, and what they count with is printed on their pieces, which lie in another order.",
    {
      title: "Take what they count with out",
      edits: begins.flatMap((begin) => (begin ? [{ range: begin.cut, text: "" }] : [])),
      unsure: true,
    },
  );
}

/** What an item begins with that is the `index`th of those that count, from 0 on. */
function counterOf(source: SourceText, index: number) {
  const lead = mark.exec(source.text)?.[0].length ?? 0;
  const [whole, open, letter = "", close] = counter.exec(source.text.slice(lead)) ?? [];
  if (whole === undefined || !counts(letter, index)) return undefined;
  const end = lead + whole.length;
  return {
    sign: `${open}${close}`,
    range: source.range(lead, lead + whole.trimEnd().length),
    cut: source.range(lead, end),
  };
}

/** The first letters of alphabets that count in lists. */
const firsts = ["a", "A", "а", "А", "α", "Α"];

function counts(sign: string, index: number): boolean {
  if (/\d/u.test(sign)) return Number(sign) === index + 1;
  return firsts.some((first) => sign.codePointAt(0) === (first.codePointAt(0) ?? 0) + index);
}
