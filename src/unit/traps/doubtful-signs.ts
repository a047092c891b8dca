import type { Span } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * Signs that stand in many notes, and between the sides of a pair only where the items around say so: where most are pairs, or all
 * have this sign.
 */

interface Sign extends Span {
  /** Which of the ways it is. */
  readonly way: number;
  /** The bracket that closes it. */
  readonly close?: Span;
}

/** Each with the number of times that it may stand in an item, of which the first counts, and of words on a side. */
const ways: readonly (readonly [pattern: RegExp, times: number, words?: number])[] = [
  [/\s+(?:[/／⁄∕⧸\\]|>{1,2}|[»›+&•●…*≠]|\.{2,3})\s+/gu, 3],
  [/\s*\|\|\s*/gu, 1],
  // As programs write the sign that are afraid of Markdown.
  [/\s+\\[=＝]\s+/gu, 1],
  [/\s*[;；؛](?:\s+|(?<=；))/gu, 3],
  // Not as in “Vor- und Nachteile”.
  [
    /[^\S\n]+[\p{Pd}−](?=[^\s\p{Pd}>])|(?<=[^\s\p{Pd}<])[\p{Pd}−][^\S\n]+(?!(?:und|oder|bzw\.?|and|or|e|ou|y|o|et|и|или|і|й|та|або)\s)/gu,
    1,
  ],
  [/(?<=[\p{L}\p{M})])[/／∕](?=[\p{L}(])/gu, 1],
  [/(?<=\S)(?:\s*[,،]\s+|\s*[，、]\s*)/gu, 1, 2],
  [/[^\S\n]{2,}|[^\S\n]*\u3000[^\S\n]*/gu, 1],
];

/** `roda (wheel)`, at the end. */
const bracketed = /^[^()（）[\]]*[^()（）[\]\s](\s*[(（[]\s*)[^()（）[\]]+?(\s*[)）\]])$/u;

/** The sign that may be meant to part the sides of a pair in a text; undefined where there is none, or a side is no few words. */
export function doubtfulSign(text: string): Sign | undefined {
  const whole = text.trimEnd();
  for (const [way, [pattern, times, words]] of ways.entries()) {
    const found = [...whole.matchAll(pattern)];
    const [first] = found;
    if (!first || found.length > times) continue;
    const sign = { way, start: first.index, end: first.index + first[0].length };
    if (isPair(whole.slice(0, sign.start), whole.slice(sign.end), words)) return sign;
  }
  const match = bracketed.exec(whole);
  if (!match?.[1] || !match[2]) return undefined;
  const start = whole.search(/\s*[(（[]/u);
  const close = { start: whole.length - match[2].length, end: whole.length };
  const sign = { way: ways.length, start, end: start + match[1].length, close };
  return isPair(whole.slice(0, start), whole.slice(sign.end, close.start)) ? sign : undefined;
}

const stop = (side: string): boolean => /[.!?…。！？।؟:]$/u.test(side);

/** Few words on each side, both with numbers or none, and no beginning of a sentence that ends in the other. */
function isPair(left: string, right: string, words = 3): boolean {
  const isSide = (side: string): boolean => /\p{L}/u.test(side) && side.trim().split(/\s+/u).length <= words;
  const alike = (has: (side: string) => boolean): boolean => has(left.trim()) === has(right.trim());
  return isSide(left) && isSide(right) && alike(stop) && alike((side) => /\p{N}/u.test(side));
}

/** Whether all texts have one and the same such sign. */
export function haveOneSign(texts: readonly string[]): boolean {
  const signs = texts.map((text) => {
    const sign = doubtfulSign(text);
    return sign && `${sign.way} ${text.slice(sign.start, sign.end).trim()}`;
  });
  return signs[0] !== undefined && signs.every((sign) => sign === signs[0]);
}

export function tellDoubtful(source: SourceText, { start, end, close }: Sign, problems: Problems): void {
  const range = source.range(start, end);
  if (close) {
    const shut = source.range(close.start, close.end);
    problems.trap(
      "meant-as-pair",
      { start: range.start, end: shut.end },
      "This item is no pair: brackets part nothing; the two sides are parted by “ = ”.",
      {
        title: "Write “ = ”",
        unsure: true,
        edits: [
          { range, text: " = " },
          { range: shut, text: "" },
        ],
      },
    );
    return;
  }
  const written = source.text.slice(start, end).trim();
  problems.trap(
    "meant-as-pair",
    range,
    `This item is no pair: ${written === "" ? "white space" : `“${written}”`} parts nothing; the two sides are parted by “ = ”.`,
    { ...write("Write “ = ”", range, " = "), unsure: true },
  );
}
