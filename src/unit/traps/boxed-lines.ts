import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import type { Problems } from "../problems";
import { blankAround, isClosed, textOf } from "./lines";
import { isPairLine } from "./pair-lines";
import { hasWords } from "./part-lines";

/*
 * Pairs in a block of code or a quotation, as chat programs write lists that are to be copied.
 */

const bullet = /^\s*(?:[-*+•]\s+)?/u;

/** `roda = wheel` in each line between fences without a name, or with that of a text. */
export function pairsInFence(lines: LineIndex, token: Token, env: Env, problems: Problems): void {
  const [first, after] = token.map ?? [0, 0];
  if (!/^(?:text|txt|plain(?:text)?|markdown|md)?$/i.test(token.info.trim()) || !isClosed(token)) return;
  const numbers = Array.from({ length: Math.max(0, after - first - 2) }, (_, i) => first + 1 + i);
  const items = itemsOf(lines, numbers, bullet, env);
  if (!items) return;
  const fences = [first, after - 1].map((number) => ({
    range: { start: lines.start(number), end: lines.start(number + 1) },
    text: "",
  }));
  tell(lines, [first, after], "a block of code", [...fences, ...items], problems);
}

const quoted = /^[ \t]{0,3}>(?:[ \t]{0,3}>)*[ \t]*(?:[-*+•]\s+)?/u;

/** `> roda = wheel` in each line of a quotation, without bullets. */
export function pairsInQuotation(lines: LineIndex, { map }: Token, env: Env, problems: Problems): void {
  const [first, after] = map ?? [0, 0];
  const numbers = Array.from({ length: after - first }, (_, i) => first + i);
  const items = itemsOf(lines, numbers, quoted, env);
  if (items) tell(lines, [first, after], "a quotation", items, problems);
}

/** Edits that make items of lines, which all are pairs behind what `lead` matches; undefined where one is none. */
function itemsOf(lines: LineIndex, numbers: readonly number[], lead: RegExp, env: Env) {
  const filled = numbers.filter((number) => textOf(lines, number).replace(lead, "").trim() !== "");
  const isPair = (number: number): boolean => {
    const text = textOf(lines, number).replace(lead, "").trim();
    return isPairLine(text, env) && hasWords(text);
  };
  if (filled.length < 2 || !filled.every(isPair)) return undefined;
  return numbers.map((number) => {
    const { start } = lines.line(number);
    const length = lead.exec(textOf(lines, number))?.[0].length ?? 0;
    return { range: { start, end: start + length }, text: filled.includes(number) ? "- " : "" };
  });
}

function tell(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  where: string,
  edits: ReturnType<typeof itemsOf> & object,
  problems: Problems,
): void {
  problems.tell(
    "pairs",
    "not-an-item",
    lines.line(first),
    `These pairs stand in ${where}, so that nothing of them is read.`,
    {
      title: "Make items of the lines",
      edits: [...edits, ...blankAround(lines, first, after)],
      unsure: true,
    },
  );
}
