import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import type { Problems } from "../problems";
import { numerals } from "./doubtful-signs";
import { textOf } from "./lines";
import { isPairLine } from "./pair-lines";
import { noHyphen } from "./styles";

/*
 * A paragraph of notes of which some lines were meant as items.
 */

/** No program breaks a line where the first words of the next one would still have stood within so many characters. */
const wrapped = 60;

/** Words on both sides with the same numbers: not `1 = b`, as solutions are written, nor `Level 1 = two cards`. */
export function hasWords(text: string): boolean {
  const [left = "", right = ""] = text.split(/\s[=＝]\s/u);
  return /\p{L}/u.test(left) && /\p{L}/u.test(right) && numerals(left) === numerals(right);
}

const between = /\s*[,;，；]\s+|\s+[|•·]\s+|[^\S\n]{3,}|\s*<br\s*\/?>\s*/giu;

/** `roda = wheel, selim = saddle, luz = light` in one line without a bullet. */
export function linedUpPairs(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  env: Env,
  problems: Problems,
): boolean {
  if (after - first !== 1) return false;
  const line = textOf(lines, first).trimEnd();
  const lead = line.length - line.trimStart().length;
  const signs = [...line.slice(lead).matchAll(between)];
  const parts = line.slice(lead).replace(/\.$/, "").split(between);
  if (parts.length < 2 || !parts.every((part) => isPairLine(part, env) && hasWords(part))) return false;
  const start = lines.start(first);
  problems.tell("pairs", "not-an-item", { start: start + lead, end: start + line.length }, noHyphen, {
    title: "Make an item of each pair",
    edits: [
      { range: { start, end: start + lead }, text: "- " },
      ...signs.map(({ index, 0: sign }) => ({
        range: { start: start + lead + index, end: start + lead + index + sign.length },
        text: `${lines.newline}- `,
      })),
    ],
    unsure: true,
  });
  return true;
}

/** `More words:` with `a uva = the grape` and `o figo = the fig` below it, or such lines above a note; statements likewise. */
export function partlyItems(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  env: Env,
  problems: Problems,
): void {
  const texts = Array.from({ length: after - first }, (_, i) => textOf(lines, first + i).trim());
  const marked = /^\[[ xX]\]\s+\P{L}*[\p{Lu}\p{Lo}]/u;
  const isPair = (text: string): boolean => isPairLine(text, env) && hasWords(text);
  const pairs = texts.some(isPair);
  const isItem = texts.map((text) => (pairs ? isPair(text) : marked.test(text)));
  const from = isItem.indexOf(true);
  const to = isItem.lastIndexOf(true) + 1;
  if (from < 0 || to - from === texts.length || !isItem.slice(from, to).every(Boolean)) return;
  const [above, head = "", below] = [texts[from - 1], texts[from], texts[to]];
  const breaks = (one: string, next: string): boolean => `${one} ${next.split(/\s/, 1)[0]}`.length <= wrapped;
  const stops = above === undefined || /[.!?…:：。！？]\P{L}*$/u.test(above);
  if (!stops && (to - from === 1 || !breaks(above, head))) return;
  if (below !== undefined && !(breaks(texts[to - 1] ?? "", below) && (to - from > 1 || /^\P{L}*\p{Lu}/u.test(below))))
    return;
  const begin = (i: number) => {
    const text = textOf(lines, first + i);
    return { start: lines.start(first + i), end: lines.start(first + i) + text.length - text.trimStart().length };
  };
  const rest = lines.start(first + to);
  problems.tell(
    pairs ? "pairs" : true,
    "not-an-item",
    { start: begin(from).end, end: begin(from).end + head.length },
    noHyphen,
    {
      title: to - from > 1 ? "Make items of these lines" : "Make it an item",
      edits: [
        ...texts.slice(from, to).map((_, i) => ({ range: begin(from + i), text: "- " })),
        ...(below === undefined ? [] : [{ range: { start: rest, end: rest }, text: lines.newline }]),
      ],
      unsure: true,
    },
  );
}
