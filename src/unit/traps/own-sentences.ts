import type { LineIndex } from "../../base/range";
import type { Env } from "../inline";
import { scan, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import { insert, type Problems, write } from "../problems";
import { correctionLine } from "./corrections";
import { column } from "./nesting";

/*
 * A line below an item that is a sentence or a note of its own and goes on the item's text, with which it would be printed.
 */

/** A line of an item's text behind the first: where it begins in that text, without the white space before it. */
interface Line {
  readonly start: number;
  readonly text: string;
}

/** Two words at least from a capital to a stop, also behind a dash that a program made of a hyphen. */
const sentence = /^(?:[–—−][^\S\n]+)?\p{P}*\p{Lu}.*\s.*[.!?…]\p{P}*$/u;
const dash = /^[–—−][^\S\n]+/u;
const stopped = /[.!?…]\p{P}*$/u;

/** Two words at least from a capital on, as a note begins. */
const noted = /^\p{Lu}.*\s\S/u;

/** No program breaks a line where its first words would still have stood above within so many characters. */
const wrapped = 60;

/** `o pneu` below `o selim = the saddle`: a word or two that begin with the same article. */
function isLike(above: string, text: string): boolean {
  const [first = "", ...rest] = text.split(/\s+/);
  if (first.length > 4 || !/^\p{Ll}+$/u.test(first) || /\p{P}$/u.test(text)) return false;
  return [1, 2].includes(rest.length) && first === above.split(/\s/, 1)[0];
}

/** `  Quero água.` below `- a água = water`, and `Ela volta.` at the margin below `2. Ela sai.` */
export function ownSentence(
  lines: LineIndex,
  item: RawItem,
  { start, text }: Line,
  env: Env,
  problems: Problems,
): void {
  const { text: source, block, nested } = item;
  const at = source.source(start);
  const line = lines.line(lines.lineAt(at));
  const head = lines.text.slice(block.start, source.source(0));
  const lazy = column(lines.text.slice(line.start, at)) < column(head);
  if (correctionLine(item, lines, { start, at, text, lazy }, problems)) return;
  const whole = sentence.test(text);
  if ((!whole && !noted.test(text) && !isLike(source.text, text)) || /[=＝|｜]/u.test(text)) return;
  const [, indent = "", sign = "-"] = /^([ \t]*)(\S*)/.exec(head) ?? [];
  const above = source.text.slice(0, start).trimEnd();
  const under = " ".repeat(column(head));
  const place = { start: line.start, end: at };
  const sentenced = { start: line.start, end: at + (dash.exec(text)?.[0].length ?? 0) };
  const bullet = write("Make a bullet of it", sentenced, `${under}- `);
  const note = insert("Put a blank line before it", line.start, lines.newline);
  const stay = write("Leave it with the item above", place, under);
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
    if (whole && lazy && stopped.test(above)) say(write("Make it an item", place, next), stay);
    return;
  }
  const last = lines.line(lines.lineAt(line.start) - 1);
  const room = wrapped - (last.end - last.start);
  // Of several lines the first is told.
  const ownLine = lazy && !above.includes("\n") && (text.split(/\s/, 1)[0] ?? "").length < room;
  if (/^\[[ xX]\]\s/.test(above)) {
    if (!lazy || !stopped.test(above)) return;
    if (whole && above.startsWith("[ ]") && nested.length === 0) say(bullet, note);
    else if (ownLine) say(note, stay);
    return;
  }
  const [equals] = spacedSeparators(source.text, scan(source.text, env).mask, "=");
  if (!equals || equals.end >= above.length) return;
  // A word with its gloss is no sentence, so that none goes on in the next line.
  const word = /^\p{P}*\p{Ll}/u.test(above) && !/[.!?…,;:]$/u.test(above);
  if (word && ownLine && isLike(above, text)) {
    say({ ...note, unsure: true }, stay);
    return;
  }
  if (!word && !(lazy && stopped.test(above))) return;
  if (whole) say(bullet, ...(lazy ? [note] : []));
  else if (ownLine) say(note, stay);
}
