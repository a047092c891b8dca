import type { LineIndex } from "../../base/range";
import type { Steps } from "../../base/steps";
import { type Env, scan, spacedSeparators } from "../inline";
import type { Problems } from "../problems";
import { countedWords } from "./counted-words";
import { numerals } from "./doubtful-signs";
import { anySign, boxed, madeLetter } from "./glued";
import { textOf } from "./lines";
import { clearMark } from "./marks";
import { mixed } from "./mixed-lines";
import { letters, numbers, numbersAround } from "./numbered-lines";
import { otherNumbers } from "./other-numbers";
import { type Begin, type Line, noHyphen, type Style } from "./styles";

/*
 * Paragraphs of a section all of whose lines were meant as items, and have another sign than Markdown knows, or none.
 */

/** `ovo = egg`, `[x] Ela ri.`, `1.Ela ri.`, `a) Ela ri.` in lines of their own. Whether the paragraph is told. */
export function* unmarkedItems(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  env: Env,
  problems: Problems,
): Steps<boolean, undefined> {
  const found = linesOf(lines, [first, after]);
  for (const look of [
    () => statements(found),
    () => numbers(found, numbersAround(lines, [first, after])),
    () => letters(found),
    () => countedWords(found),
    () => otherNumbers(lines, [first, after], found),
    () => pairs(found, env),
    () => columns(found, env),
    () => mixed(found, env),
  ]) {
    const style = look();
    if (style) {
      tell(lines, first, found, style, problems);
      return true;
    }
    yield;
  }
  return false;
}

function linesOf(lines: LineIndex, [first, after]: readonly [number, number]): Line[] {
  const found: Line[] = [];
  for (let number = first; number < after; number++) {
    const text = textOf(lines, number);
    const lead = text.length - text.trimStart().length;
    found.push({ start: lines.start(number) + lead, text: text.trim() });
  }
  return found;
}

function tell(
  lines: LineIndex,
  first: number,
  found: readonly Line[],
  { begins, message, unsure, as }: Style,
  problems: Problems,
): void {
  const [head] = found;
  if (!head) return;
  problems.tell(as ?? true, "not-an-item", { start: head.start, end: head.start + head.text.length }, message, {
    ...(unsure ? { unsure } : {}),
    title: found.length > 1 ? "Make items of these lines" : "Make it an item",
    edits: found.flatMap(({ start }, i) => {
      const { cut, put, part }: Begin = begins[i] ?? { cut: 0, put: "" };
      const begin = { range: { start: lines.start(first + i), end: start + cut }, text: put };
      if (!part) return [begin];
      return [begin, { range: { start: start + part.start, end: start + part.end }, text: " = " }];
    }),
  });
}

/** Texts of a paragraph's lines where each begins with a mark as `[F]` or ✅ and goes on like a sentence, not like “[F] falso”; none else. */
export function markedTexts(lines: LineIndex, map: readonly [number, number]): readonly string[] {
  if (clearMark(textOf(lines, map[0]).trim()) === undefined) return [];
  const texts = linesOf(lines, map).map(({ text }) => text);
  const isSentence = (text: string): boolean => /^\P{L}*[\p{Lu}\p{Lo}]\S*\s+\S|^\P{L}*\p{Lo}/u.test(text);
  const isWhole = (text: string): boolean => /^[[［【]/u.test(text) || /[.!…。！]\P{L}*$/u.test(text);
  const said = (text: string): string => text.slice(clearMark(text)?.written.length ?? text.length);
  return texts.every((text) => isSentence(said(text)) && isWhole(text)) ? texts : [];
}

/**
 * `[F] O mar é seco.` in lines of their own, each of which has such a mark. A tick may also say that something is done; where `ticked`,
 * it only matters if something takes statements.
 */
export function markedNotes(
  lines: LineIndex,
  map: readonly [number, number],
  ticked: boolean,
  problems: Problems,
): void {
  const found = linesOf(lines, map);
  const begins = found.map(({ text }): Begin => {
    const { written = "", truth } = clearMark(text) ?? {};
    return { cut: written.length, put: truth ? "- [x] " : "- [ ] " };
  });
  const message =
    "These are notes: a statement begins with a hyphen, and with “[x] ” when it is true and “[ ] ” when it is false.";
  const isUnsure = found.some(({ text }) => !/^[[［【]/u.test(text));
  const style = { begins, message, ...(isUnsure ? { unsure: true as const } : {}) };
  tell(lines, map[0], found, ticked ? { ...style, as: "statements" } : style, problems);
}

/** Few words and no sentence. */
const isShort = (text: string): boolean => text.split(/\s+/).length <= 8 && !/[.!?:;,]$/.test(text);

function statements(found: readonly Line[]): Style | undefined {
  const matches = found.map(({ text }) => boxed.exec(text)?.[0]);
  if (matches.some((match) => match === undefined)) return undefined;
  return { begins: matches.map((match) => ({ cut: match?.length ?? 0, put: "- " })), message: noHyphen };
}

/** Whether a line is a pair and hardly a sentence of notes: few words on each side. */
export function isPairLine(text: string, env: Env): boolean {
  const isBold = /^(\*{1,3})[^\s*][^*\n]*\1(?=\s)/.test(text);
  if (!/[=＝]/u.test(text) || (anySign.test(text) && !isBold)) return false;
  const { mask } = scan(text, env);
  const [sign, second] = spacedSeparators(text, mask, "=");
  if (!sign || second || sign.start === 0 || sign.end >= text.length) return false;
  return isShort(text.slice(0, sign.start)) && isShort(text.slice(sign.end));
}

function pairs(found: readonly Line[], env: Env): Style | undefined {
  const all = found.every(({ text }) => isPairLine(text, env));
  const begins = found.map(({ text }) => ({ cut: madeLetter.exec(text)?.[0].length ?? 0, put: "- " }));
  return all ? { begins, message: noHyphen, as: "pairs" } : undefined;
}

/** Two columns, parted by tabs as a spreadsheet gives them, or by another sign in at least three lines. */
function columns(found: readonly Line[], env: Env): Style | undefined {
  for (const [sign, least, inNotes] of [
    [/[^\S\n]*\t\s*/u, 2, false],
    [/\s+[|｜]\s+/u, 2, false],
    [/\s+(?:[\p{Pd}−]|-{1,2}>?|[→⇒])\s+/u, 3, true],
    [/\s+[/／]\s+/u, 3, true],
    [/\s*[;；؛]\s+|;/u, 3, true],
    [/\s*[:：]\s+/u, 3, true],
  ] as const) {
    if (found.length < least) continue;
    const parts = found.map(({ text }) => {
      if (anySign.test(text) || /\|$/.test(text)) return undefined;
      const pieces = text.split(sign);
      const match = sign.exec(text);
      if (pieces.length !== 2 || !match || pieces.some((piece) => piece === "" || !isShort(piece))) return undefined;
      // A plan with its times, or with minutes.
      if (inNotes && numerals(pieces[0] ?? "") !== numerals(pieces[1] ?? "")) return undefined;
      const part = { start: match.index, end: match.index + match[0].length };
      return scan(text, env).mask.slice(part.start, part.end).some(Boolean) ? undefined : part;
    });
    if (!parts.every((part) => part !== undefined)) continue;
    // Who speaks comes again and again, a word does not.
    const lefts = new Set(parts.map(({ start }, i) => found[i]?.text.slice(0, start)));
    if (inNotes && lefts.size < parts.length) continue;
    return {
      begins: parts.map((part) => ({ cut: 0, put: "- ", part })),
      message: "These are no pairs: each begins with a hyphen and a space, and “ = ” stands between its sides.",
      as: "pairs",
      ...(inNotes ? { unsure: true as const } : {}),
    };
  }
  return undefined;
}
