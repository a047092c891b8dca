import type { Range } from "../../base/range";
import { type Scan, type Span, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import { drop, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import type { Answer, Side } from "../unit";
import { markdownPicture } from "./html-picture";

const nothing = "Nothing is written here. Each side of a pair needs a word or a picture.";

/** Tells of a side with an answer that prints nothing: HTML, a slash with nothing on one side, or nothing at all. `sign` is the item's “ = ”. */
export function emptySide(item: RawItem, side: Side, sign: Span, mask: Scan["mask"], problems: Problems): void {
  const { text } = item;
  const answer = side.answers.find((each) => each.text === "" && !each.picture) ?? side.answers[0];
  const place = answer.range.end > answer.range.start ? answer.range : text.range(sign.start, sign.end);
  const tag = tagAt(text, answer);
  const picture = tag && markdownPicture(tag.text);
  if (tag && picture) {
    const message = "Markdown prints no pictures that are written in HTML.";
    problems.add("empty-answer", place, message, write(`Write “${picture}”`, tag.range, picture));
    return;
  }
  if (tag) {
    const message = `Markdown takes “${tag.text}” for HTML, so that nothing is printed here. A backslash makes it text.`;
    const { start } = tag.range;
    problems.add("empty-answer", place, message, write("Make it text", { start, end: start }, "\\"));
    return;
  }
  const slash = side.answers.length > 1 ? idleSlash(text, mask, side) : undefined;
  if (slash) {
    const out = write("Take the slash out", slash.out, "");
    problems.add("empty-answer", slash.sign, "Nothing is written on one side of this slash.", out);
    return;
  }
  problems.add("empty-answer", place, nothing, drop("Take the item out", item.block));
}

/** The first tag of HTML in an answer of which nothing is printed. */
function tagAt(source: SourceText, { range }: Answer): { readonly text: string; readonly range: Range } | undefined {
  for (const match of source.text.matchAll(/<\/?[a-z][^<>]*>/giu)) {
    const place = source.range(match.index, match.index + match[0].length);
    if (range.start <= place.start && place.end <= range.end) return { text: match[0], range: place };
  }
  return undefined;
}

/** The first slash of a side that has nothing on one of its sides. */
function idleSlash(
  source: SourceText,
  mask: Scan["mask"],
  side: Side,
): { readonly sign: Range; readonly out: Range } | undefined {
  const { text } = source;
  const within = ({ start, end }: Range): boolean => side.range.start <= start && end <= side.range.end;
  for (const { start, end } of spacedSeparators(text, mask, "/")) {
    const at = start + text.slice(start, end).search(/[/／]/u);
    const sign = source.range(at, at + 1);
    const [before, after] = [text.slice(0, start).trimEnd(), text.slice(end).trimStart()];
    if (!within(sign)) continue;
    const first = sign.start === side.range.start || /(?:^|\s[=＝/／])$/u.test(before);
    const last = after === "" || /^(?:[=＝/／]\s|<!--)/u.test(after);
    if (first && !last) return { sign, out: { start: sign.start, end: source.source(at + 1) + gap(text, at + 1) } };
    if (last) return { sign, out: { start: sign.start - gapBefore(text, at), end: sign.end } };
  }
  return undefined;
}

/** White space of a text from an offset on, and before it. */
const gap = (text: string, from: number): number => /^[^\S\n]*/u.exec(text.slice(from))?.[0].length ?? 0;
const gapBefore = (text: string, to: number): number => /[^\S\n]*$/u.exec(text.slice(0, to))?.[0].length ?? 0;
