import type { Range } from "../../base/range";
import { type Scan, type Span, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import { drop, insert, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import type { Answer, Side } from "../unit";
import { markdownPicture } from "./html-picture";

const nothing = "Nothing is written here. Each side of a pair needs a word or a picture.";

/** Tells of a pair with an answer that prints nothing: HTML, slashes with nothing on one side, or nothing at all. `sign` is the item's “ = ”. */
export function emptySide(
  item: RawItem,
  sides: readonly Side[],
  sign: Span,
  mask: Scan["mask"],
  problems: Problems,
): void {
  const { text } = item;
  const empty = sides.flatMap(({ answers }) => answers.filter(isBlank));
  const [answer] = empty;
  if (!answer) return;
  const place = answer.range.end > answer.range.start ? answer.range : text.range(sign.start, sign.end);
  for (const each of empty) {
    const tag = tagAt(text, each);
    if (!tag) continue;
    const where = each.range.end > each.range.start ? each.range : place;
    const picture = markdownPicture(tag.text);
    const { start } = tag.range;
    if (picture) {
      const message = "Markdown prints no pictures that are written in HTML.";
      problems.add("empty-answer", where, message, write(`Write “${picture}”`, tag.range, picture));
    } else {
      const message = `Markdown takes “${tag.text}” for HTML, so that nothing is printed here. A backslash makes it text.`;
      problems.add("empty-answer", where, message, write("Make it text", { start, end: start }, "\\"));
    }
    return;
  }
  // A side that is all empty is more than a slash too many.
  const slashes = sides.every(({ answers }) => !answers.every(isBlank))
    ? sides.flatMap((side) => idleSlashes(text, mask, side))
    : [];
  const [first] = slashes;
  if (first) {
    const title = slashes.length > 1 ? "Take the slashes out" : "Take the slash out";
    const edits = slashes.map(({ out }) => ({ range: out, text: "" }));
    problems.add("empty-answer", first.sign, "Nothing is written on one side of this slash.", { title, edits });
    return;
  }
  const alone = loneSign(text.text, sign);
  const asText = alone === undefined ? [] : [insert("Mark it as text", text.source(alone), "\\")];
  problems.add(
    "empty-answer",
    place,
    nothing,
    ...asText.map((fix) => ({ ...fix, unsure: true as const })),
    drop("Take the item out", item.block),
  );
}

/** The place of a sign that is all of a side, as in `/ = slash`, `slash = /` and `= = equals`, where something stands on the other one. */
function loneSign(text: string, { start, end }: Span): number | undefined {
  const left = /^\s*[/／|｜]\s*$/u.test(text.slice(0, start)) || isBareEquals(text, { start, end });
  const [before, behind] = [text.slice(0, start), text.slice(end).replace(/<!--[\s\S]*$/, "")];
  if (left) return /[^\s=＝/／|｜]/u.test(behind) ? text.search(/\S/) : undefined;
  if (!/[^\s/／|｜]/u.test(before)) return undefined;
  const right = /^\s*[/／](?=\s*(?:<!--|$))/u.exec(text.slice(end))?.[0];
  return right === undefined ? undefined : end + right.length - 1;
}

/** Whether the sign that parts a pair has another one behind it and nothing before it: then it was meant as the left side. */
export function isBareEquals(text: string, { start, end }: Span): boolean {
  return text.slice(0, start).trim() === "" && /^[=＝]\s+\S/u.test(text.slice(end));
}

/** The first tag of HTML in an answer of which nothing is printed. */
function tagAt(source: SourceText, { range }: Answer): { readonly text: string; readonly range: Range } | undefined {
  for (const match of source.text.matchAll(/<\/?[a-z][^<>]*>/giu)) {
    const place = source.range(match.index, match.index + match[0].length);
    if (range.start <= place.start && place.end <= range.end) return { text: match[0], range: place };
  }
  return undefined;
}

/** The slashes of a side that have nothing before them, or nothing behind them; without them answers are parted by one each. */
function idleSlashes(
  source: SourceText,
  mask: Scan["mask"],
  side: Side,
): { readonly sign: Range; readonly out: Range }[] {
  const { text } = source;
  const signs = spacedSeparators(text, mask, "/")
    .map(({ start, end }) => start + text.slice(start, end).search(/[/／]/u))
    .map((at) => ({ at, sign: source.range(at, at + 1) }))
    .filter(({ sign }) => side.range.start <= sign.start && sign.end <= side.range.end);
  let begun = false;
  return signs.flatMap(({ at, sign }, i) => {
    begun ||= side.answers[i] !== undefined && !isBlank(side.answers[i]);
    const next = side.answers[i + 1];
    if (!begun) return [{ sign, out: { start: sign.start, end: sign.end + gap(text, at + 1) } }];
    return next && isBlank(next) ? [{ sign, out: { start: sign.start - gapBefore(text, at), end: sign.end } }] : [];
  });
}

const isBlank = ({ text, picture }: Answer): boolean => text === "" && !picture;

/** White space of a text from an offset on, and before it. */
const gap = (text: string, from: number): number => /^[^\S\n]*/u.exec(text.slice(from))?.[0].length ?? 0;
const gapBefore = (text: string, to: number): number => /[^\S\n]*$/u.exec(text.slice(0, to))?.[0].length ?? 0;
