import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import type { RawItem } from "../items";
import type { Problems } from "../problems";
import type { Together } from "../together";
import { numerals } from "./doubtful-signs";
import { countAt, fromOne, nextLine } from "./numbered-lines";
import { numberOf } from "./numbers";
import { columns, isPairLine } from "./pair-lines";
import { type Line, noHyphen, type Style } from "./styles";

/*
 * Pairs that are counted: `#1 roda = wheel` in lines of their own, and `1. roda – wheel` in a list; statements that are.
 */

/** A number with a sign or a letter with one; a number alone. */
const signed =
  /^(?:[#№(]?[ \t]*\d{1,3}[ \t]*(?:\.\)|[.)/:º°–-])(?:[ \t]+|(?=\p{L}))|[#№][ \t]*\d{1,3}[ \t]+|[①-⑳][ \t]*|(?:\*\*|__)\d{1,3}[.)]?(?:\*\*|__)[.)]?[ \t]+|[(（]?[a-z][)）][ \t]+)(?=[^\p{N}=＝]*\p{L})/u;
const bareMark = /^\d{1,3}[ \t]+(?=\[)/;
const bare = /^\d{1,3}[ \t]+(?=\p{L})/u;

/** `#1 roda = wheel`, `(1) roda = wheel`, and `1 roda = wheel` where the lines count from one. `3.Oktober = third of October` counts nothing. */
export function countedPairs(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  found: readonly Line[],
  env: Env,
): Style | undefined {
  // Cheap: what has no such sign is no pair.
  if (!found.every(({ text }) => /[=＝]/u.test(text))) return undefined;
  const matches = found.map(({ text }) => (signed.exec(text) ?? bare.exec(text))?.[0] ?? "");
  const [head = ""] = matches;
  const isSign = matches.every((match) => signed.test(`${match}x`));
  const counts = matches.map(countOf);
  const [from = Number.NaN] = counts;
  if (!counts.every((count, i) => count === from + i)) return undefined;
  // Such a sign is that of no date.
  const sure = /^(?:[#№(][ \t]*\d|[①-⑳])/u.test(head);
  const isFromOne = from === 1 || (isSign && from > 1 && fromOne(lines, first, from));
  const goesOn = found.length > (isSign ? 1 : 2) || from > 1 || countAt(lines, nextLine(lines, after, 1)) === 2;
  if (!sure && !(isFromOne && goesOn)) return undefined;
  const isPair = ({ text }: Line, i: number): boolean => {
    const rest = text.slice(matches[i]?.length ?? 0);
    // A number that the other side has as well belongs to both.
    return isPairLine(rest, env) && !numerals(rest).split(" ").includes(String(counts[i]));
  };
  if (!found.every(isPair)) return undefined;
  return { begins: matches.map(({ length }) => ({ cut: length, put: "- " })), message: noHyphen, as: "pairs" };
}

/** `(1) [x] A roda gira.`, `#2 [ ] O sino voa.`: behind a number a mark is one still. */
export function countedStatements(found: readonly Line[]): Style | undefined {
  const cuts = found.map(({ text }) => {
    const cut = (signed.exec(text) ?? bareMark.exec(text))?.[0].length ?? 0;
    return cut > 0 && /^\[[ xX]\][ \t]+\S/.test(text.slice(cut)) ? cut : 0;
  });
  if (!cuts.every((cut) => cut > 0)) return undefined;
  return { begins: cuts.map((cut) => ({ cut, put: "- " })), message: noHyphen };
}

/** The number that a sign says; of a letter its place. */
function countOf(sign: string): number {
  const [digits] = /\d+|[①-⑳]/u.exec(sign) ?? [];
  if (digits !== undefined) return numberOf(digits);
  const [letter] = /[a-z]/.exec(sign) ?? [];
  return letter === undefined ? Number.NaN : letter.charCodeAt(0) - 96;
}

/** Any of the signs of columns. */
const anySign = /[\t|｜/／;；؛:：→⇒−]|\s\p{Pd}/u;

/** `1. barco – boat`: numbered items that all have one sign between few words, as steps of a lesson may. */
export function countedColumns(items: readonly RawItem[], bullets: Together, env: Env, problems: Problems): void {
  const [first] = items;
  if (!first || !items.every(({ text: { text } }) => anySign.test(text))) return;
  if (items.some(({ text: { text }, nested }) => nested.length > 0 || /[\n=＝]/u.test(text))) return;
  const found = items.map((item) => ({ start: item.text.source(0), text: item.text.text.trimEnd() }));
  const parts = columns(found, env)?.begins.map(({ part }) => part);
  if (!parts?.every((part) => part !== undefined)) return;
  // Beside pairs only what looks like them.
  const isLike = ({ text }: Line, i: number): boolean => {
    const [left, right] = [text.slice(0, parts[i]?.start), text.slice(parts[i]?.end)];
    const isFew = ![left, right].some((side) => /\p{Lu}/u.test(side) || side.split(/\s+/).length > 2);
    return bullets.ofBothSides(left, right) || (bullets.hasOnlySmall && isFew);
  };
  if (bullets.hasPairs && !found.every(isLike)) return;
  const [part] = parts;
  const sign = found[0]?.text.slice(part?.start, part?.end).trim();
  problems.tell(
    "pairs",
    "numbered-pair",
    first.text.whole,
    `A numbered item is an event of a story, and ${sign === "" ? "a tab" : `“${sign}”`} is text in it. A pair stands behind a hyphen, with “ = ” between its sides.`,
    {
      title: items.length > 1 ? "Make pairs of these items" : "Make it a pair",
      edits: items.flatMap(({ block, text: source }, i) => [
        { range: { start: block.start, end: source.source(0) }, text: "- " },
        { range: source.range(parts[i]?.start ?? 0, parts[i]?.end ?? 0), text: " = " },
      ]),
      unsure: true,
    },
  );
}
