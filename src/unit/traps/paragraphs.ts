import type { LineIndex } from "../../base/range";
import type { Steps } from "../../base/steps";
import type { Env } from "../inline";
import type { Problems } from "../problems";
import { countedPairs, countedStatements } from "./counted-pairs";
import { countedWords } from "./counted-words";
import { definitions } from "./definitions";
import { boxed } from "./glued";
import { textOf } from "./lines";
import { clearMark } from "./marks";
import { mixed } from "./mixed-lines";
import { letters, numbers, numbersAround } from "./numbered-lines";
import { otherNumbers } from "./other-numbers";
import { columns, pairs } from "./pair-lines";
import { pastedRows } from "./pasted-rows";
import { type Begin, type Line, noHyphen, type Style } from "./styles";
import { unnumbered } from "./unnumbered-lines";

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
    () => countedStatements(found),
    () => countedPairs(lines, [first, after], found, env),
    () => numbers(found, numbersAround(lines, [first, after])),
    () => letters(found),
    () => countedWords(found),
    () => otherNumbers(lines, [first, after], found),
    () => pairs(found, env),
    () => columns(found, env),
    () => mixed(found, env),
    () => unnumbered(lines, [first, after], found),
  ]) {
    const style = look();
    if (style) {
      tell(lines, first, found, style, problems);
      return true;
    }
    yield;
  }
  return pastedRows(lines, found, problems) || definitions(lines, [first, after], problems);
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
  { begins, first: at = 0, otherwise, message, unsure, as }: Style,
  problems: Problems,
): void {
  const head = found[at];
  if (!head) return;
  const fix = (title: string, all: readonly Begin[]) => ({
    ...(unsure ? { unsure } : {}),
    title,
    edits: found.flatMap(({ start }, i) => {
      const { cut, put, part }: Begin = all[i] ?? { cut: 0, put: "" };
      const begin = { range: { start: lines.start(first + i), end: start + cut }, text: put };
      if (!part) return [begin];
      return [begin, { range: { start: start + part.start, end: start + part.end }, text: " = " }];
    }),
  });
  problems.tell(
    as ?? true,
    "not-an-item",
    { start: head.start, end: head.start + head.text.length },
    message,
    fix(found.length > 1 ? "Make items of these lines" : "Make it an item", begins),
    ...(otherwise ? [fix(otherwise.title, otherwise.begins)] : []),
  );
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

function statements(found: readonly Line[]): Style | undefined {
  const matches = found.map(({ text }) => boxed.exec(text)?.[0]);
  if (matches.some((match) => match === undefined)) return undefined;
  return { begins: matches.map((match) => ({ cut: match?.length ?? 0, put: "- " })), message: noHyphen };
}
