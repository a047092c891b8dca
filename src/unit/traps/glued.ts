import type { LineIndex, Range } from "../../base/range";
import { sentenceEnd } from "../../base/stops";
import { type Env, scan, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import { insert, type Problems, write } from "../problems";
import { freeLines } from "./free-lines";
import { textOf } from "./lines";
import { column } from "./nesting";
import { keptNumber, nearlyAlone, nearlyNumber } from "./numbered-lines";
import { numberOf } from "./numbers";
import { steppedLines } from "./other-numbers";
import { ownSentence } from "./own-sentences";

/*
 * Lines that were meant as items of their own and go on the item above them, with which they would be printed.
 */

/** Signs that are bullets in all programs but Markdown, and dashes that stand for one. */
const dots = "•●▪‣◦·・∙⁃‧･ㆍ⋅⦁";
const dashes = "–—−‐‑－";

/** A sign that stands for a bullet before a pair, and the white space behind it; an asterisk that begins emphasis is none. */
export const pairSign = new RegExp(
  `^(?:[${dots}]|[-+${dashes}](?=[^\\S\\n]*[^\\s=*+-])|\\*(?=[^\\S\\n]*[^\\s=*+-])(?![^*\\n]*\\*))[^\\S\\n]*`,
  "u",
);

/** A round sign before a text. */
export const dot = new RegExp(`^[${dots}]\\s*(?=\\S)`, "u");

/**
 * A bullet that a program has kept from being one, or has made a letter of: `\\- `, `o   `, and by the signs of other typefaces `§`, `ü`,
 * `Ø` and the like before a tab; arrows and stars that stand for one.
 */
export const madeLetter =
  /^(?:\\[-*+•][^\S\n]*|o(?:[^\S\n]{2,}|\t[^\S\n]*)|[§üØvqwàèþ\uf000-\uf0ff]\t[^\S\n]*|[→➔➜➤➢►▶▸◆◇■□★☆✦✱❖»›][^\S\n]+)(?=\S)/u;

/** Anything that is no word at the beginning of a line: a bullet, a dash, a bar, the sign of a heading, a quotation or HTML. */
export const anySign = new RegExp(`^[${dots}${dashes}+*|<>#-]`, "u");

/** The mark of a statement behind a sign that is no bullet as it stands, or behind none. */
export const boxed = new RegExp(`^(?:[-+*${dots}${dashes}]\\s*)?(?=\\[[ xX]\\]\\s+\\S)`, "u");

/** A bullet without its space; an asterisk that emphasis may begin with is none. */
export const tight = /^(?:[-*+](?=\[[ xX]?\])|[-+](?=\p{L})|\*(?=\p{L}[^*]*$))/u;

/** A bullet that stands so far in, or behind such white space, that Markdown takes it for text. */
const farIn = /^[-*+][ \t]+(?=\S)/;

const lettered = /^(\p{Ll})[.)][ \t]+(?=\S)/u;

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

/** Starts of the lines that begin with a), b) and so on, where there are at least two. */
function letterLines(further: readonly Line[]): ReadonlySet<number> {
  const found = further.filter(({ text }) => lettered.test(text));
  const rises = found.every(({ text }, i) => text.charCodeAt(0) === "a".charCodeAt(0) + i);
  return rises && found.length > 1 ? new Set(found.map(({ start }) => start)) : noLines;
}

/** The rows of a table right below an item go on its text. */
function gluedTable(line: number, at: number, length: number, lines: LineIndex, problems: Problems): void {
  problems.trap(
    "not-a-table",
    { start: at, end: at + length },
    "This is no table: its lines go on the item above it. A blank line before it parts them.",
    insert("Put a blank line before it", line, lines.newline),
  );
}

/** Whether a line is a number and one word that are an event: a sentence below one, or just what is missing in the count. */
function isAlone(text: string, above: string, next: number, lines: LineIndex, end: number): boolean {
  if (!nearlyAlone.test(text)) return false;
  if (sentenceEnd.test(above.trimEnd()) && sentenceEnd.test(text)) return true;
  const below = lines.lineAt(end) + 1;
  return below < lines.count && new RegExp(`^[ \\t]{0,3}${next + 1}[.)][ \\t]`).test(textOf(lines, below));
}

/** The lines of an item, or of a bullet under one, that were meant as items. */
export function gluedLines(lines: LineIndex, item: RawItem, nested: boolean, env: Env, problems: Problems): void {
  const { text: source, block } = item;
  if (!source.text.includes("\n")) return;
  const before = lines.text.slice(block.start, source.source(0));
  const [, indent = "", sign = "-"] = /^([ \t]*)(\S*)/.exec(before) ?? [];
  const ordered = /\d/.test(sign);
  if (ordered && !nested && freeLines(lines, item, problems)) return;
  const bullet = ordered ? "- " : `${sign.charAt(0)} `;
  const statement = /^\[[ xX]\]\s/.test(source.text);
  const pairs = pairLines(source.text, scan(source.text, env).mask);
  const further = furtherLines(source.text);
  const letters = letterLines(further);
  const under = column(before);
  const event = { source, number: Number.parseInt(sign, 10), indent, under };
  const steps = ordered && !nested ? steppedLines(lines, event, further, problems) : noLines;
  let inTable = false;
  let next = Number.parseInt(sign, 10) + 1;
  for (const { start, text } of further) {
    if (steps.has(start)) continue;
    const at = source.source(start);
    const line = lines.line(lines.lineAt(at));
    if (/^\|.*[^\\|\s].*\|$/.test(text)) {
      if (!inTable) gluedTable(line.start, at, text.length, lines, problems);
      inTable = true;
      continue;
    }
    const lead = lines.text.slice(line.start, at);
    // A number and a space before it is told as a list that the text swallows.
    if (/^\d{1,9}[.)][ \t]+\S/.test(text) && /^[ \t]{0,3}$/.test(lead)) continue;
    const lazy = column(lead) < column(before);
    // A bullet is one only up to three columns further in than where an item may begin.
    const [width, text0, list] = [column(lead), column(before), nested ? column(indent) : 0];
    const far = width < text0 ? width - list > 3 : width - text0 > 3;
    const say = (message: string, length: number, range: Range, wanted: string): void => {
      const [start, put] = far && range.start === at ? [line.start, " ".repeat(text0) + wanted] : [range.start, wanted];
      const fix = write("Make it an item", { start, end: range.end }, put);
      problems.trap("not-an-item", { start: at, end: at + length }, message, fix);
    };
    const here = (length: number): Range => ({ start: at, end: at + length });
    const hyphen = "This line is no item: an item begins with a hyphen and a space.";
    const pair = pairs.has(start) && pairSign.exec(text)?.[0];
    const round = dot.exec(text)?.[0];
    if (pairs.has(start) && !nested && !ordered && (pair !== undefined || !statement)) {
      const length = typeof pair === "string" ? pair.length : (madeLetter.exec(text)?.[0].length ?? 0);
      say(hyphen, length === 0 ? text.length : 1, { start: line.start, end: at + length }, `${indent}${bullet}`);
    } else if (typeof pair === "string") say(hyphen, 1, here(pair.length), bullet);
    else if (round) say(hyphen, 1, here(round.length), bullet);
    else if (boxed.test(text) && !(text.startsWith("[") && (nested || ordered))) {
      const length = boxed.exec(text)?.[0].length ?? 0;
      if (ordered || nested) say(hyphen, 1, here(length), bullet);
      else say(hyphen, length > 0 ? 1 : 3, { start: line.start, end: at + length }, `${indent}${bullet}`);
    } else if (tight.test(text)) say(hyphen, 1, here(1), `${text.charAt(0)} `);
    else if (farIn.test(text)) {
      const message = "This line is no item: too much white space stands before it, or such as Markdown does not know.";
      const far = column(nested ? (/^[ \t]*/.exec(before)?.[0] ?? "") : before);
      say(message, 1, { start: line.start, end: at + 1 }, `${" ".repeat(far)}-`);
    } else if (letters.has(start) && (!lazy || (ordered && lead !== ""))) {
      const length = lettered.exec(text)?.[0].length ?? 0;
      const message = "This line is no item: Markdown knows no lists with letters.";
      const under = { start: line.start, end: at + length };
      say(message, length - 1, under, `${" ".repeat(column(nested ? indent : before))}- `);
    } else {
      const stops = lazy || sentenceEnd.test(source.text.slice(0, start).trimEnd());
      const nearly = !ordered
        ? null
        : isAlone(text, source.text.slice(0, start), next, lines, line.end)
          ? nearlyAlone.exec(text)
          : stops
            ? (keptNumber.exec(text) ?? nearlyNumber.exec(text))
            : null;
      const counted = nearly && numberOf(nearly[1] ?? nearly[2] ?? "") === next ? nearly : undefined;
      const number = counted
        ? counted[0].trimEnd()
        : /^(?:\d{1,9}[.)](?=\p{L}|\[|[^\S \t\n])|[^\P{Nd}0-9]{1,3}[.)）-](?=\s*\S))/u.exec(text)?.[0];
      const written = counted ? next : number === undefined ? Number.NaN : numberOf(number.replace(/[.)）-]$/u, ""));
      // A line that is as far in as the text of the item is one of its own if its number is the next one.
      const counts = lazy || (number && !/^\d/.test(number)) || written === Number.parseInt(sign, 10) + 1;
      const letter = lazy ? lettered.exec(text)?.[0] : undefined;
      const wanted = ordered ? `${Number.parseInt(sign, 10) + 1}${sign.slice(-1)} ` : bullet;
      if (number && counts) {
        const message =
          "This line is no item: an event begins with its number in the digits 0 to 9, a full stop and a space.";
        const space = /^[^\S\n]*/.exec(text.slice(number.length))?.[0].length ?? 0;
        const put = `${written}${counted ? sign.slice(-1) : (/[.)]$/.exec(number)?.[0] ?? ".")} `;
        // Below a bullet only a number one begins a list without a blank line.
        const below = `${ordered ? "" : lines.newline}${indent}${put}`;
        say(message, number.length, { start: line.start, end: at + number.length + space }, below);
        next = written + 1;
      } else if (letter) {
        const message = "This line is no item: Markdown knows no lists with letters.";
        say(message, letter.trimEnd().length, here(letter.length), wanted);
      } else if (!nested && !number) ownSentence(lines, item, { start, text }, env, problems);
    }
  }
}
