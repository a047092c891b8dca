import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../../base/range";
import type { Problems } from "../problems";
import type { Shape } from "../shapes";
import { textOf } from "./lines";

/*
 * Bullets that were meant to stand under an item and do not, since they are not far enough in.
 */

/** An item of a list as it was read: its lines, and its shape; undefined where it could not be read. */
export interface ReadItem {
  readonly token: Token;
  readonly shape: Shape | undefined;
}

const marker = /^([ \t]*)([-*+]|\d{1,9}[.)])([ \t]+)(?=\S)/;

/** The column that a text ends at, tabs counted to the next multiple of four. */
export function column(text: string): number {
  let at = 0;
  for (const char of text) at = char === "\t" ? at + 4 - (at % 4) : at + 1;
  return at;
}

/** Columns of an item's sign and of its text; undefined where it has no text in its first line. */
function columns(lines: LineIndex, { map }: Token): { readonly sign: number; readonly text: number } | undefined {
  const { start, end } = lines.line(map?.[0] ?? 0);
  const match = marker.exec(lines.text.slice(start, end));
  return match ? { sign: column(match[1] ?? ""), text: column(match[0]) } : undefined;
}

/** Whether `next` stands in the line below the last one of `before`. */
function touches(lines: LineIndex, before: Token, next: Token): boolean {
  const first = next.map?.[0] ?? 0;
  const above = lines.line(first - 1);
  return (before.map?.[1] ?? 0) === first && lines.text.slice(above.start, above.end).trim() !== "";
}

/** ` - O pai bebe.` under `- [ ] O pai come.`: one space is not enough, so that Markdown reads a further item of the same list. */
export function nextForNested(lines: LineIndex, items: readonly ReadItem[], problems: Problems): void {
  for (let i = 0; i < items.length; i++) {
    const head = items[i];
    if (items[i + 1]?.shape !== "text" || (head?.shape !== "pair" && head?.shape !== "statement")) continue;
    const place = columns(lines, head.token);
    if (!place) continue;
    const under: Token[] = [];
    for (let above = head.token; ; i++) {
      const next = items[i + 1];
      const own = next?.shape === "text" ? columns(lines, next.token) : undefined;
      if (!next || !own || own.sign <= place.sign || !touches(lines, above, next.token)) break;
      under.push(next.token);
      above = next.token;
    }
    notNested(lines, under, place.text, problems);
  }
}

/**
 * Three spaces under `10. Ela pede:`: Markdown ends the numbered list and begins another. `goesOn` says that another
 * numbered list follows: then also bullets at the margin belong to the event, right below it or behind its colon.
 */
export function listForNested(
  lines: LineIndex,
  event: Token | undefined,
  bullets: readonly ReadItem[],
  goesOn: boolean,
  problems: Problems,
): void {
  const [first] = bullets;
  const place = event && columns(lines, event);
  const own = first && columns(lines, first.token);
  if (!event || !place || !own || own.sign >= place.text) return;
  // At the margin it is a list of its own, unless it stands in the middle of a story.
  if (own.sign <= place.sign && !goesOn) return;
  const near = touches(lines, event, first.token) || (goesOn && /[:：]$/u.test(lastLine(lines, event)));
  if (bullets.some(({ shape }) => shape !== "text")) return;
  if (goesOn && own.sign <= place.sign && inNumbers(lines, event, bullets, problems)) return;
  if (!near) return;
  notNested(
    lines,
    bullets.map(({ token }) => token),
    place.text,
    problems,
  );
}

/** `1.`, `-`, `3.`: bullets that stand for just the numbers that are left out. Whether they do. */
function inNumbers(lines: LineIndex, event: Token, bullets: readonly ReadItem[], problems: Problems): boolean {
  const numberAt = (line: number): number =>
    Number(/^[ \t]*(\d{1,9})[.)]/.exec(textOf(lines, line))?.[1] ?? Number.NaN);
  const [first] = bullets;
  const from = first?.token.map?.[0] ?? 0;
  let next = bullets.at(-1)?.token.map?.[1] ?? from;
  while (next < lines.count && textOf(lines, next).trim() === "") next++;
  const above = numberAt(event.map?.[0] ?? 0);
  if (above + bullets.length + 1 !== numberAt(next)) return false;
  const edits = bullets.flatMap(({ token }, i) => {
    const number = token.map?.[0] ?? 0;
    const found = marker.exec(textOf(lines, number));
    if (!found) return [];
    const start = lines.start(number);
    const sign = `${above + i + 1}${/^\s*\d+([.)])/.exec(textOf(lines, event.map?.[0] ?? 0))?.[1] ?? "."} `;
    return [{ range: { start: start + (found[1] ?? "").length, end: start + found[0].length }, text: sign }];
  });
  problems.trap(
    "not-nested",
    { start: lines.start(from), end: lines.line(from).end },
    "A bullet stands here for a number of the story, so that this is no event.",
    { title: bullets.length > 1 ? "Number them" : "Number it", edits },
  );
  return true;
}

/** The last line of an item that is not blank, without the white space at its end. */
function lastLine(lines: LineIndex, { map }: Token): string {
  const [first, after] = map ?? [0, 0];
  for (let number = after - 1; number >= first; number--) {
    const { start, end } = lines.line(number);
    const text = lines.text.slice(start, end).trimEnd();
    if (text !== "") return text;
  }
  return "";
}

function notNested(lines: LineIndex, bullets: readonly Token[], wanted: number, problems: Problems): void {
  const [first] = bullets;
  const own = first && columns(lines, first);
  if (!first || !own) return;
  const from = first.map?.[0] ?? 0;
  const after = bullets.at(-1)?.map?.[1] ?? from + 1;
  const edits: { range: Range; text: string }[] = [];
  let last = from;
  for (let number = from; number < after; number++) {
    const { start, end } = lines.line(number);
    const text = lines.text.slice(start, end);
    const indent = text.length - text.trimStart().length;
    if (indent === text.length) continue;
    last = number;
    const at = start + indent;
    edits.push({ range: { start: at, end: at }, text: " ".repeat(wanted - own.sign) });
  }
  problems.trap(
    "not-nested",
    { start: lines.start(from), end: lines.line(last).end },
    `This does not belong to the item above it: under that item a bullet stands ${wanted} spaces in.`,
    { title: "Put it under the item above", edits },
  );
}
