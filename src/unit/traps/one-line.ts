import type { LineIndex } from "../../base/range";
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

/** `2. Ela ri.` in the line of `1. Ela lê.` Whether there is one. */
export function eventInLine(item: RawItem, lines: LineIndex, open: Open, problems: Problems): boolean {
  const { text: source, block } = item;
  const lead = /^(\d{1,9})([.)])[ \t]+$/.exec(lines.text.slice(block.start, source.source(0)));
  if (!lead || item.nested.length > 0) return false;
  const next = Number(lead[1]) + 1;
  const behind = new RegExp(`(?<=[.!?…][\\p{Pf}\\p{Pe}"'”]*)[^\\S\\n]+${next}[.)][^\\S\\n]+(?=\\p{P}*\\p{Lu})`, "u");
  const match = behind.exec(source.text);
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
const between = /^(?<said>[^=＝]*[\p{L}\p{M}\p{N})?!.][^\S\n]+)[-*•–—][^\S\n]+(?=\P{L}{0,2}\p{L})[^-*•–—=＝]*$/u;

/** Whether the text between the equals signs of an item is that of two pairs, of which the second has a bullet before it. */
export const pairsInLine = (text: string): boolean => between.test(text);

/** `- o eixo = axle` in the line of `- a luz = light`. */
export function pairInLine(
  item: RawItem,
  [first, second, more]: readonly { start: number; end: number }[],
  lines: LineIndex,
  problems: Problems,
): void {
  const { text: source } = item;
  if (!first || !second || more) return;
  const said = between.exec(source.text.slice(first.end, second.start))?.groups?.["said"];
  if (said === undefined) return;
  const start = first.end + said.trimEnd().length;
  const sign = first.end + said.length;
  const end = sign + 1 + (/^\s*/.exec(source.text.slice(sign + 1))?.[0].length ?? 0);
  const equals = second.start + source.text.slice(second.start).search(/[=＝]/u);
  problems.trap(
    "second-equals",
    source.range(sign, equals + 1),
    "This is read as text of the pair before it: a pair begins in a line of its own.",
    write("Put it in a line of its own", source.range(start, end), beginning(lines, item)),
    { ...write("Mark it as text", source.range(equals, equals), "\\"), unsure: true },
  );
}

type Open = (span: { start: number; end: number }) => boolean;

const statement = /^\[[ xX]\]\s/;

/** Behind the end of a sentence, before another. */
const inner =
  /(?<=^\[[ xX]\]\s.*[.!?…。！？।؟][\p{Pf}\p{Pe}"'”]*)[^\S\n]*(?:[-–—*•][^\S\n]+)?(\[[ xX]\])[^\S\n]+(?=\P{L}*[\p{Lu}\p{Lo}])/u;

/** Behind the last sentence. `(f)` is a feminine. */
const behind = /(?<=[.!?…。！？।؟][\p{Pf}\p{Pe}"'”]*)[^\S\n]*(?:\[[xXVFTRvftr]\]|\([xXVFTRW]\))[^\S\n]*$/u;

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
    problems.trap(
      "meant-as-statement",
      source.range(found.mark, found.mark + 3),
      "This mark is printed with the statement before it: a statement begins in a line of its own.",
      write("Put it in a line of its own", source.range(found.start, found.end), `${beginning(lines, item)}${mark} `),
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
