import type { Span } from "../inline";
import { numerals } from "./doubtful-signs";

/*
 * Two sides of which each is in a script of its own, with a bracket, a comma or nothing but white space between them: `ไก่ (chicken)`,
 * `苹果 apple`.
 */

/** Where the sides part, and the bracket that closes behind the second one. */
export interface Border extends Span {
  readonly close: Span;
}

const letter = /[\p{L}\p{M}]/u;

/** The place between two scripts in a text whose first side is in Latin letters or, `latin` says it, the second one. */
export function scriptBorder(text: string, latin: boolean): Border | undefined {
  const whole = text.trimEnd();
  // Marks belong to the letter before them.
  const letters = [...whole.matchAll(/\p{L}\p{M}*/gu)];
  const isLatin = (index: number): boolean => /^\p{Script=Latin}/u.test(letters[index]?.[0] ?? "");
  const turn = letters.findIndex((_, i) => isLatin(i) !== latin);
  const [last, first] = [letters[turn - 1], letters[turn]];
  if (!last || !first || letters.some((_, i) => i > turn && isLatin(i) === latin)) return undefined;
  const start = last.index + last[0].length;
  const between = whole.slice(start, first.index);
  const sign = /^\s*(?:[(（[［「『【]|[,，、;；/／·・])?\s*$/u.exec(between);
  const end = whole.search(/[)）\]］」』】]$/u);
  const opens = /[(（[［「『【]/u.test(between);
  if (!sign || between === "" || opens !== end >= first.index) return undefined;
  const close = { start: opens ? end : whole.length, end: whole.length };
  const [left, right] = [whole.slice(0, start), whole.slice(first.index, close.start)];
  const short = [left, right].every(
    (side) => side.split(/\s+/).length <= 4 && !/[()（）[\]「」『』【】:：]/u.test(side),
  );
  if (!short || !letter.test(left) || numerals(left) !== numerals(right)) return undefined;
  return { start, end: first.index, close };
}
