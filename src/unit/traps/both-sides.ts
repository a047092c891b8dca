import type { LineIndex, Range } from "../../base/range";
import { type Env, scan } from "../inline";
import type { RawItem } from "../items";
import type { Problems } from "../problems";
import { isLatin, type Together } from "../together";
import { textOf } from "./lines";

/*
 * Lines that begin as the left sides of the pairs around them do, and go on as their right ones: `o queijo the cheese` among
 * `o pão = the bread`. They were meant as pairs whatever stands between the two sides, or if nothing does.
 */

/** Where the sides of a text part, and the bracket at its end where one opens there. */
interface Parting {
  readonly start: number;
  readonly end: number;
  readonly close?: number;
}

const gap = /(?:\s*[,;:：；，]\s+|\s+(?:[\p{Pd}−]|-{1,2}>|=>|[→⇒/|])\s+|\s+[([]|\s+)/gu;

const ends = /[.!?…。！？:：]$/u;

/** The one place where a text of few words has a left side before it and a right one behind it. */
function partingOf(text: string, bullets: Together): Parting | undefined {
  if (text.split(/\s+/).length > 7 || /[=＝\t\n`<]|\]\(|:\/\//u.test(text)) return undefined;
  const found = [...text.matchAll(gap)].flatMap((match): Parting[] => {
    const [start, end] = [match.index, match.index + match[0].length];
    const opens = /[([]$/.test(match[0]);
    const close = opens && /[)\]]$/.test(text) ? text.length - 1 : undefined;
    const [left, right] = [text.slice(0, start), text.slice(end, close)];
    if (opens && close === undefined) return [];
    // A name among words of another script is no other side: `пісня Yesterday`.
    if (match[0].trim() === "" && /\p{Lu}/u.test(text) && (bullets.hasOnlySmall || !isLatin(text))) return [];
    const short = [left, right].every((side) => side !== "" && side.split(/\s+/).length < 4 && !/[()[\]]/.test(side));
    if (!short || ends.test(left) !== ends.test(right) || !bullets.ofBothSides(left, right)) return [];
    return [{ start, end, ...(close === undefined ? {} : { close }) }];
  });
  return found.length === 1 ? found[0] : undefined;
}

const edits = ({ start, end, close }: Parting, place: (at: number) => number) => [
  { range: { start: place(start), end: place(end) }, text: " = " },
  ...(close === undefined ? [] : [{ range: { start: place(close), end: place(close + 1) }, text: "" }]),
];

/** `- o queijo the cheese`, `- o queijo (the cheese)`, a bullet of its own up to `stop`; what is in two scripts is told elsewhere. */
export function unpartedPair({ text: source }: RawItem, stop: number, bullets: Together, problems: Problems): void {
  if (!bullets.mostlyPairs) return;
  const written = source.text.slice(0, stop).trimEnd();
  const parting = isLatin(written) ? partingOf(written, bullets) : undefined;
  if (!parting) return;
  problems.trap(
    "meant-as-pair",
    source.range(0, written.length),
    "This item is no pair: no “ = ” parts the two sides.",
    {
      title: "Write “ = ”",
      edits: edits(parting, (at) => source.source(at)),
      unsure: true,
    },
  );
}

/** `o queijo – the cheese` in a line below `- o pão = the bread`, with which it is printed. */
export function gluedPairs(
  lines: LineIndex,
  { text: source, block }: RawItem,
  bullets: Together,
  problems: Problems,
): void {
  if (!source.text.includes("\n")) return;
  const [, bullet = "- "] = /^([ \t]*[-*+] )/.exec(lines.text.slice(block.start, source.source(0))) ?? [];
  let at = 0;
  for (const [i, line] of source.text.split("\n").entries()) {
    const from = at + line.length - line.trimStart().length;
    at += line.length + 1;
    const parting = i === 0 ? undefined : partingOf(line.trim(), bullets);
    if (!parting) continue;
    const place = (index: number): number => source.source(from + index);
    tellLine(lines, { start: place(0), end: place(0) + line.trim().length }, bullet, edits(parting, place), problems);
  }
}

function tellLine(
  lines: LineIndex,
  range: Range,
  bullet: string,
  parted: ReturnType<typeof edits>,
  problems: Problems,
): void {
  const begin = { start: lines.start(lines.lineAt(range.start)), end: range.start };
  problems.trap(
    "not-an-item",
    range,
    "This line is no item: a hyphen stands before a pair, and “ = ” between its sides.",
    {
      title: "Make it an item",
      edits: [{ range: begin, text: bullet }, ...parted],
      unsure: true,
    },
  );
}

/** `o queijo: the cheese` in lines of their own, where all of a paragraph are such. */
export function barePairs(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  bullets: Together,
  env: Env,
  problems: Problems,
): void {
  if (!bullets.mostlyPairs) return;
  const found = Array.from({ length: after - first }, (_, i) => {
    const text = textOf(lines, first + i);
    const start = lines.start(first + i) + text.length - text.trimStart().length;
    const parting = scan(text, env).mask.some(Boolean) ? undefined : partingOf(text.trim(), bullets);
    return parting && { start, length: text.trim().length, parting };
  });
  if (!found.every((each) => each !== undefined)) return;
  for (const { start, length, parting } of found)
    tellLine(
      lines,
      { start, end: start + length },
      "- ",
      edits(parting, (at) => start + at),
      problems,
    );
}
