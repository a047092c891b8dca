import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import { scan, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import { type Problems, write } from "../problems";
import { column } from "./nesting";

/*
 * A line below an item that is a sentence of its own and goes on the item's text, with which it would be printed.
 */

/** A line of an item's text behind the first: where it begins in that text, without the white space before it. */
interface Line {
  readonly start: number;
  readonly text: string;
}

/** Two words at least from a capital to a stop. */
const sentence = /^\p{P}*\p{Lu}.*\s.*[.!?…]\p{P}*$/u;
const stopped = /[.!?…]\p{P}*$/u;

/** `  Quero água.` below `- a água = water`, and `Ela volta.` at the margin below `2. Ela sai.` */
export function ownSentence(
  lines: LineIndex,
  item: RawItem,
  { start, text }: Line,
  env: Env,
  problems: Problems,
): void {
  if (!sentence.test(text) || /[=＝|｜]/u.test(text)) return;
  const { text: source, block, nested } = item;
  const at = source.source(start);
  const line = lines.line(lines.lineAt(at));
  const head = lines.text.slice(block.start, source.source(0));
  const [, indent = "", sign = "-"] = /^([ \t]*)(\S*)/.exec(head) ?? [];
  const lazy = column(lines.text.slice(line.start, at)) < column(head);
  const above = source.text.slice(0, start).trimEnd();
  const under = " ".repeat(column(head));
  const place = { start: line.start, end: at };
  const bullet = write("Make a bullet of it", place, `${under}- `);
  const say = (...fixes: ReturnType<typeof write>[]): void =>
    problems.trap(
      "not-an-item",
      { start: at, end: at + text.length },
      "This line goes on the item above it, with which it is printed.",
      ...fixes,
    );
  if (/\d/.test(sign)) {
    const next = `${indent}${Number.parseInt(sign, 10) + 1}${sign.slice(-1)} `;
    // Who indents a line says that it belongs to the item.
    if (lazy && stopped.test(above))
      say(write("Make it an item", place, next), write("Leave it with the item above", place, under));
    return;
  }
  if (/^\[[ xX]\]\s/.test(above)) {
    if (above.startsWith("[ ]") && nested.length === 0 && lazy && stopped.test(above)) say(bullet);
    return;
  }
  const [equals] = spacedSeparators(source.text, scan(source.text, env).mask, "=");
  if (!equals || equals.end >= above.length) return;
  // A word with its gloss is no sentence, so that none goes on in the next line.
  const word = /^\p{P}*\p{Ll}/u.test(above) && !/[.!?…,;:]$/u.test(above);
  if (word || (lazy && stopped.test(above))) say(bullet);
}
