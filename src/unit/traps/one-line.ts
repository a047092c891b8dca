import type { LineIndex } from "../../base/range";
import { stops } from "../../base/stops";
import type { RawItem } from "../items";
import { drop, type Problems, write } from "../problems";

/*
 * Two items in one line, since the line break between them was lost, and a mark that stands behind its statement.
 */

/** What an item begins with, of which a further one is begun with in a line of its own. */
function beginning(lines: LineIndex, { block, text }: RawItem): string {
  const start = lines.lineAt(text.source(0));
  const from = Math.max(block.start, lines.start(start));
  return (
    lines.newline +
    " ".repeat(block.start - lines.start(lines.lineAt(block.start))) +
    lines.text.slice(from, text.source(0))
  );
}

/** A number behind the end of a sentence, before another, or behind a semicolon. */
const numbered =
  /(?:(?<=[.!?…][\p{Pf}\p{Pe}"'”]*)[^\S\n]+(?=\d+[.)][^\S\n]+\p{P}*\p{Lu})|(?<=;)[^\S\n]+(?=\d+[.)][^\S\n]+\p{P}*\p{L}))(\d{1,10})[.)][^\S\n]+/gu;

/** `2. Ela ri.` in the line of `1. Ela lê.` Whether there is one. */
export function eventInLine(item: RawItem, lines: LineIndex, open: Open, problems: Problems): boolean {
  const { text: source, block } = item;
  const lead = /^(\d{1,9})([.)])[ \t]+$/.exec(lines.text.slice(block.start, source.source(0)));
  if (!lead || item.nested.length > 0) return false;
  const next = Number(lead[1]) + 1;
  const match = [...source.text.matchAll(numbered)].find(([, number]) => Number(number) === next);
  if (!match || !open({ start: match.index, end: match.index + match[0].length })) return false;
  const { index, 0: written } = match;
  const from = index + written.search(/\d/);
  problems.trap(
    "not-an-item",
    source.range(from, index + written.trimEnd().length),
    "This number is printed with the event before it: an event begins in a line of its own.",
    write(
      "Put it in a line of its own",
      source.range(index, index + written.length),
      beginning(lines, item).replace(/\d+(?=[.)][ \t]+$)/, String(next)),
    ),
  );
  return true;
}

/** What stands between the second side of a pair and the first one of another: a bullet between words. */
const bulleted =
  /^(?<said>[^=＝]*[\p{L}\p{M}\p{N})?!.][^\S\n]+)(?<sign>[-*•–—][^\S\n]+)(?=\P{L}{0,2}\p{L})[^-*•–—=＝]*$/u;

/** Signs that part two pairs where each stands alone between them. */
const joints = [
  /(?<!&\w{1,8})[^\S\n]*[;；][^\S\n]*/gu,
  /[^\S\n]+[|｜/／][^\S\n]+/gu,
  /[^\S\n]*(?:,[^\S\n]|[،，、])[^\S\n]*/gu,
  /[^\S\n]{2,}/gu,
];

/** Where one of several pairs in a line ends, and the next begins. */
interface Break {
  readonly start: number;
  readonly end: number;
  /** A bullet stands between them. */
  readonly bullet: boolean;
}

function breakIn(text: string): Break | undefined {
  const { said, sign } = bulleted.exec(text)?.groups ?? {};
  if (said !== undefined && sign !== undefined)
    return { start: said.trimEnd().length, end: said.length + sign.length, bullet: true };
  for (const joint of joints) {
    const [found, more] = text.matchAll(joint);
    if (!found || more) continue;
    const [start, end] = [found.index, found.index + found[0].length];
    // Two sums in a line are no two pairs.
    if (/\p{L}/u.test(text.slice(0, start)) && /^\P{L}{0,2}\p{L}/u.test(text.slice(end)))
      return { start, end, bullet: false };
  }
  return undefined;
}

/** Where the pairs of a line part, if as many as its equals signs stand in it. */
export function pairBreaks(
  text: string,
  mask: readonly boolean[],
  signs: readonly { readonly start: number; readonly end: number }[],
): readonly Break[] | undefined {
  const found = signs.slice(1).flatMap((sign, i): Break[] => {
    const from = signs[i]?.end ?? 0;
    const one = breakIn(text.slice(from, sign.start));
    if (!one || mask.slice(from + one.start, from + one.end).some(Boolean)) return [];
    return [{ ...one, start: from + one.start, end: from + one.end }];
  });
  return found.length > 0 && found.length === signs.length - 1 ? found : undefined;
}

/** `- o eixo = axle` in the line of `- a luz = light`, or behind a semicolon in it. */
export function pairInLine(
  item: RawItem,
  mask: readonly boolean[],
  signs: readonly { start: number; end: number }[],
  lines: LineIndex,
  problems: Problems,
): void {
  const { text: source, nested } = item;
  const breaks = signs.length > 1 ? pairBreaks(source.text, mask, signs) : undefined;
  const [first] = breaks ?? [];
  if (!breaks || !first) return;
  const equals = signs.slice(1).map(({ start }) => start + source.text.slice(start).search(/[=＝]/u));
  const begin = beginning(lines, item);
  // A bar that is text as well would be told as one that is printed.
  const bars = breaks.flatMap(({ start, end }) => {
    const at = source.text.slice(start, end).search(/[|｜]/u);
    return at < 0 ? [] : [start + at];
  });
  // A line with a semicolon may explain several signs, and what stands below may be about the first pair.
  const sure = breaks.every(({ bullet }) => bullet) && nested.length === 0;
  problems.tell(
    breaks.every(({ bullet }) => bullet) ? true : "pairs",
    "second-equals",
    source.range(first.start + source.text.slice(first.start).search(/\S/u), (equals[0] ?? 0) + 1),
    "This is read as text of the pair before it: a pair begins in a line of its own.",
    {
      title: `Put ${breaks.length > 1 ? "each" : "it"} in a line of its own`,
      edits: breaks.map(({ start, end }) => ({ range: source.range(start, end), text: begin })),
      ...(sure ? {} : { unsure: true as const }),
    },
    {
      title: "Mark it as text",
      edits: [...bars, ...equals].sort((a, b) => a - b).map((at) => ({ range: source.range(at, at), text: "\\" })),
      unsure: true,
    },
  );
}

type Open = (span: { start: number; end: number }) => boolean;

const statement = /^\[[ xX]\]\s/;

/** Behind the end of a sentence, before another. */
const inner = new RegExp(
  String.raw`(?<=^\[[ xX]\]\s.*[${stops};；][\p{Pf}\p{Pe}"'”]*)[^\S\n]*(?:[-–—*•][^\S\n]+)?(\[[ xX]\])[^\S\n]+(?=\P{L}*[\p{Lu}\p{Lo}])`,
  "u",
);

/** Behind the last sentence. `(f)` is a feminine. */
const behind = new RegExp(
  String.raw`(?<=[${stops}][\p{Pf}\p{Pe}"'”]*)[^\S\n]*(?:\[[xXVFTRvftr]\]|\([xXVFTRW]\))[^\S\n]*$`,
  "u",
);

/** `[ ] Ela lê.` in the line of `- [x] Ela ri.`, where its mark is. */
export function innerMark(
  text: string,
): { readonly start: number; readonly end: number; readonly mark: number } | undefined {
  const match = inner.exec(text);
  if (!match) return undefined;
  return { start: match.index, end: match.index + match[0].length, mark: match.index + match[0].indexOf("[") };
}

/** `- [x] Ela ri. [ ] Ela lê.` and `- [ ] Ela ri. (F)` */
export function marksInLine(item: RawItem, lines: LineIndex, end: number, open: Open, problems: Problems): void {
  const { text: source } = item;
  if (!statement.test(source.text)) return;
  const found = innerMark(source.text);
  if (found && open({ start: found.mark, end: found.mark + 3 })) {
    const mark = source.text.slice(found.mark, found.mark + 3);
    // Nothing follows the first one any more.
    const joined = /[;；]$/u.test(source.text.slice(0, found.start));
    const [start, stop] = joined ? [found.start - 1, "."] : [found.start, ""];
    problems.trap(
      "meant-as-statement",
      source.range(found.mark, found.mark + 3),
      "This mark is printed with the statement before it: a statement begins in a line of its own.",
      write("Put it in a line of its own", source.range(start, found.end), `${stop}${beginning(lines, item)}${mark} `),
    );
    return;
  }
  const match = behind.exec(source.text.slice(0, end));
  if (!match || !open({ start: match.index, end: match.index + match[0].trimEnd().length })) return;
  const at = match.index + match[0].search(/\S/);
  const stop = match.index + match[0].trimEnd().length;
  problems.trap(
    "meant-as-statement",
    source.range(at, stop),
    "This mark is printed, and tells whether the statement is true: a mark stands before the statement alone.",
    drop("Take it out", source.range(match.index, stop)),
  );
}
