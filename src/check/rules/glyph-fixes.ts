import type { Fix, TextEdit } from "../../base/finding";
import { lineStart, type Range } from "../../base/range";
import { fold } from "../../match/fold";
import { isPair } from "../../unit/unit";
import type { CheckContext } from "../context";
import { itemAt } from "../item-at";
import { quoted } from "./quoted-name";

/* What helps where a character cannot be printed: another one, or none, wherever the text says the same. */

/** A character that the typeface lacks, where it was met. */
export interface Missed {
  readonly character: string;
  readonly place: Range;
  /** Its places in the text there; none where Markdown writes it otherwise. */
  readonly places: readonly Range[];
  readonly option: Option | undefined;
}

/** A text that an option says; of a list, with the others that stand in it. */
export interface Option {
  readonly word: string;
  readonly others?: readonly string[];
}

export function occurrences(text: string, character: string, { start, end }: Range): Range[] {
  const found: Range[] = [];
  for (let at = text.indexOf(character, start); at >= 0 && at + character.length <= end; ) {
    found.push({ start: at, end: at + character.length });
    at = text.indexOf(character, at + character.length);
  }
  return found;
}

/** A character of the same meaning that can be printed (compatibility form of Unicode), and taking it out. */
export function glyphFixes(missed: Missed, context: CheckContext): Fix[] {
  const { character, places } = missed;
  if (places.length === 0) return [];
  const plain = character.normalize("NFKC");
  // A wide sign may be meant to part texts; the narrow one would only be printed.
  const isLike =
    !"／＝｜".includes(character) && plain !== character && context.press.typeface.missing(plain).length === 0;
  const like = isLike ? editsFor(missed, plain, context) : undefined;
  const without = editsFor(missed, "", context);
  return [
    ...(like
      ? [
          {
            title: `Write “${plain}” instead`,
            edits: like,
            ...(fits(missed, plain, context) ? { preferred: true } : {}),
          },
        ]
      : []),
    ...(without
      ? [{ title: /^\p{C}$/u.test(character) ? "Take it out" : `Take “${character}” out`, edits: without }]
      : []),
  ];
}

/** Scripts that have the signs of ASCII, and others that a letter may be of. */
const scriptsOfAscii = [/\p{Script=Latin}/u, /\p{Script=Greek}/u, /\p{Script=Cyrillic}/u];
const otherScripts = [/\p{Script=Han}/u, /[\p{Script=Hiragana}\p{Script=Katakana}]/u, /\p{Script=Hangul}/u];
const scripts = [...scriptsOfAscii, ...otherScripts, /\p{Script=Arabic}/u, /\p{Script=Hebrew}/u];

/** Whether what would be written is of the script of the text around, and not as a comma of ASCII among Chinese characters. */
function fits({ character, place }: Missed, plain: string, { unit }: CheckContext): boolean {
  const letter = /\p{L}/u.exec(plain)?.[0];
  const own = letter === undefined ? scriptsOfAscii : scripts.filter((script) => script.test(letter));
  const around = unit.text.slice(place.start, place.end).replaceAll(character, "").match(/\p{L}/gu) ?? [];
  return own.length === 0 || around.every((each) => own.some((script) => script.test(each)));
}

/** Writes something else for a character, or nothing; undefined where what is left would be no text, or another fault. */
function editsFor(missed: Missed, text: string, context: CheckContext): TextEdit[] | undefined {
  const { character, place, places, option } = missed;
  if (option) return optionEdits(missed, option, text, context);
  const { unit } = context;
  const isAll = ({ start, end }: Range): boolean =>
    text === "" && unit.text.slice(start, end).replaceAll(character, "").trim() === "";
  const orders = ordersWith(place, context);
  // Text of nothing else would be empty, and so would a part of a sentence.
  if (isAll(place) || orders?.parts.some(isAll)) return undefined;
  const all = [...places, ...(orders?.ranges ?? []).flatMap((range) => occurrences(unit.text, character, range))];
  const edits: TextEdit[] = [];
  for (const place of all.sort((a, b) => a.start - b.start)) {
    const { start, end } = text === "" ? withSpace(unit.text, place) : place;
    // The space between two of them is one.
    edits.push({ range: { start: Math.max(start, edits.at(-1)?.range.end ?? 0), end }, text });
  }
  return edits;
}

/** A character that is all of a word with one of the spaces round it: not with the one behind a bullet. */
function withSpace(text: string, { start, end }: Range): Range {
  const [before, after] = [text.slice(lineStart(text, start), start), text.charAt(end)];
  if (!before.endsWith(" ") || !/^[\s|\p{P}]?$/u.test(after)) return { start, end };
  const isFirst = /^\s*(?:[-*+]|\d+[.)])(?: \[[ xX]\])? $/u.test(before);
  return isFirst ? { start, end: after === " " ? end + 1 : end } : { start: start - 1, end };
}

/** The parts of the sentence that stands at a place, and its further accepted orders, which must keep the same parts. */
function ordersWith(place: Range, { unit }: CheckContext): { parts: Range[]; ranges: Range[] } | undefined {
  const item = itemAt(unit, place);
  if (!item || !isPair(item)) return undefined;
  const { range, parts } = item.left.answers[0];
  if (range.start !== place.start || parts.length < 2) return undefined;
  return { parts: parts.map((part) => part.range), ranges: item.orders.map((order) => order.range) };
}

/** A text that is left of an option's must be one, none that the list has already, and in a list none that answers a word. */
function optionEdits(
  { character, place }: Missed,
  { word, others }: Option,
  text: string,
  { unit, plan: { relation } }: CheckContext,
): TextEdit[] | undefined {
  // Behind a value of several lines a comment may stand that is read with it.
  if (unit.text.slice(place.start, place.end).includes("\n")) return undefined;
  const left = word.replaceAll(character, text).replace(/\s+/gu, " ").trim();
  const isTaken = others !== undefined && (others.includes(left) || relation.partners(fold(left)).size > 0);
  return left === "" || isTaken ? undefined : [{ range: place, text: quoted(left) }];
}
