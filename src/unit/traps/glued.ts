import type { LineIndex, Range } from "../../base/range";
import { type Env, scan, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import { insert, type Problems, write } from "../problems";
import { newlineOf } from "./lines";
import { column } from "./nesting";

/*
 * Lines that were meant as items of their own and go on the item above them, with which they would be printed.
 */

/** A sign that stands for a bullet before a pair, and the white space behind it; an asterisk that begins emphasis is none. */
export const pairSign = /^(?:[•●▪‣◦·]|[-+–—−‐‑](?=[^\S\n]*[^\s=*+-])|\*(?=[^\S\n]*[^\s=*+-])(?![^*\n]*\*))[^\S\n]*/u;

/** A sign that is a bullet in all programs but Markdown. */
const dot = /^[•●▪‣◦·]\s*(?=\S)/u;

/** A bullet without its space; an asterisk that emphasis may begin with is none. */
const tight = /^(?:[-*+](?=\[[ xX]?\])|[-+](?=\p{L})|\*(?=\p{L}[^*]*$))/u;

/** The mark of a statement behind a sign that is no bullet, or behind none. */
const boxed = /^(?:[–—−‐‑]\s*)?(?=\[[ xX]\]\s+\S)/u;

/** A line behind the first one of an item, in the item's text without the white space before it. */
interface Line {
  readonly start: number;
  readonly text: string;
}

function furtherLines(text: string): Line[] {
  const found: Line[] = [];
  let at = text.indexOf("\n") + 1;
  while (at > 0) {
    const stop = text.indexOf("\n", at);
    const line = text.slice(at, stop < 0 ? text.length : stop);
    found.push({ start: at + line.length - line.trimStart().length, text: line.trim() });
    at = stop + 1;
  }
  return found;
}

const noLines: ReadonlySet<number> = new Set();

/**
 * Starts of the lines in an item's text that hold a pair of their own: they begin like an item, or all of a pair stands above
 * them, as in `- bule = pot` and `roda = wheel` below it.
 */
export function pairLines(text: string, mask: readonly boolean[]): ReadonlySet<number> {
  if (!text.includes("\n")) return noLines;
  const signs = spacedSeparators(text, mask, "=");
  const [first] = signs;
  const found = furtherLines(text).filter(({ start, text: line }) => {
    const end = start + line.length;
    if (!signs.some((sign) => start < sign.start && sign.end < end)) return false;
    return pairSign.test(line) || (!!first && first.end < start);
  });
  return new Set(found.map(({ start }) => start));
}

/** Where the line of an item's text that `at` stands in begins behind its white space. */
export function lineStart(text: string, at: number): number {
  const start = text.lastIndexOf("\n", at - 1) + 1;
  return start + text.slice(start).search(/\S|$/u);
}

/** The rows of a table right below an item go on its text. */
function gluedTable(line: number, at: number, length: number, lines: LineIndex, problems: Problems): void {
  problems.trap(
    "not-a-table",
    { start: at, end: at + length },
    "This is no table: its lines go on the item above it. A blank line before it parts them.",
    insert("Put a blank line before it", line, newlineOf(lines)),
  );
}

/** The lines of an item, or of a bullet under one, that were meant as items. */
export function gluedLines(lines: LineIndex, item: RawItem, nested: boolean, env: Env, problems: Problems): void {
  const { text: source, block } = item;
  if (!source.text.includes("\n")) return;
  const before = lines.text.slice(block.start, source.source(0));
  const [, indent = "", sign = "-"] = /^([ \t]*)(\S*)/.exec(before) ?? [];
  const ordered = /\d/.test(sign);
  const bullet = ordered ? "- " : `${sign.charAt(0)} `;
  const statement = /^\[[ xX]\]\s/.test(source.text);
  const pairs = pairLines(source.text, scan(source.text, env).mask);
  let inTable = false;
  for (const { start, text } of furtherLines(source.text)) {
    const at = source.source(start);
    const line = lines.line(lines.lineAt(at));
    if (/^\|.*[^\\|\s].*\|$/.test(text)) {
      if (!inTable) gluedTable(line.start, at, text.length, lines, problems);
      inTable = true;
      continue;
    }
    const lead = lines.text.slice(line.start, at);
    const lazy = column(lead) < column(before);
    const say = (message: string, length: number, range: Range, wanted: string): void =>
      problems.trap("not-an-item", { start: at, end: at + length }, message, write("Make it an item", range, wanted));
    const here = (length: number): Range => ({ start: at, end: at + length });
    const hyphen = "This line is no item: an item begins with a hyphen and a space.";
    const pair = pairs.has(start) && pairSign.exec(text)?.[0];
    const round = dot.exec(text)?.[0];
    if (pairs.has(start) && !nested && !ordered && (pair !== undefined || !statement)) {
      const length = typeof pair === "string" ? pair.length : 0;
      say(hyphen, length === 0 ? text.length : 1, { start: line.start, end: at + length }, `${indent}${bullet}`);
    } else if (typeof pair === "string") say(hyphen, 1, here(pair.length), bullet);
    else if (round) say(hyphen, 1, here(round.length), bullet);
    else if (boxed.test(text) && !(text.startsWith("[") && (nested || ordered))) {
      const length = boxed.exec(text)?.[0].length ?? 0;
      if (length > 0 || ordered || nested) say(hyphen, 1, here(length), bullet);
      else say(hyphen, 3, { start: line.start, end: at }, `${indent}${bullet}`);
    } else if (tight.test(text)) say(hyphen, 1, here(1), `${text.charAt(0)} `);
    else {
      const number = /^\d{1,9}[.)](?=\p{L}|\[)/u.exec(text)?.[0];
      // A line that is as far in as the text of the item is one of its own if its number is the next one.
      if (!lazy && (!number || Number.parseInt(number, 10) !== Number.parseInt(sign, 10) + 1)) continue;
      const letter = /^\p{Ll}[.)][ \t]+(?=\S)/u.exec(text)?.[0];
      const wanted = ordered ? `${Number.parseInt(sign, 10) + 1}${sign.slice(-1)} ` : bullet;
      if (number) {
        const message = "This line is no item: a space stands behind the number and its sign.";
        say(message, number.length, here(number.length), `${number} `);
      } else if (letter) {
        const message = "This line is no item: Markdown knows no lists with letters.";
        say(message, letter.trimEnd().length, here(letter.length), wanted);
      }
    }
  }
}
