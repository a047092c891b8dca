import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../../base/range";
import { stops } from "../../base/stops";
import { commentMeaning } from "../comments";
import { insert, type Problems, write } from "../problems";
import type { Problem } from "../unit";
import { type FirstBlock, firstBlock } from "./first-blocks";
import { boxed, dot, madeLetter, pairSign, tight } from "./glued";
import { textOf } from "./lines";
import { tightHeading } from "./tight-headings";
import { swallowedNumber } from "./wrapped-numbers";

/*
 * What Markdown makes of lines that were meant as items, headings or activities.
 */

const bullet = /^([ \t]*)([-*+]|\d{1,9}[.)])([ \t]+)/;

/**
 * An item that holds another block where its text should begin: `- 3. Oktober` is a list in a list. `nth` item of its list; `above`:
 * the text of the item that it stands under.
 */
export function blockInItem(
  lines: LineIndex,
  item: Token,
  inner: Token | undefined,
  problems: Problems,
  nth?: number,
  above = "",
): void {
  const line = lines.line(item.map?.[0] ?? 0);
  const text = lines.text.slice(line.start, line.end);
  const marker = bullet.exec(text);
  if (!inner || !marker) return;
  const at = marker[0].length;
  const rest = text.slice(at);
  if (rest.trim() === "") return;
  const place = (length: number) => ({ start: line.start + at, end: line.start + at + length });
  const number = /^(\d{1,9})([.)])/.exec(rest);
  const signs = /^(?:(?:[-*+]|#{1,6})[ \t]+|>[ \t]*)+/.exec(rest)?.[0] ?? "";
  const without =
    signs.length > 0 && /^[^\s=＝]/u.test(rest.slice(signs.length))
      ? [write("Take the sign out", place(signs.length), "")]
      : [];
  if (doubled.test(rest)) {
    const [out] = without.map((fix) => (maybeSpeech(rest, above) ? { ...fix, unsure: true as const } : fix));
    problems.trap(
      "list-in-list",
      place(1),
      `“${rest.charAt(0)}” begins a list inside the list, so that this item is not read: one bullet is enough, and a backslash makes it text.`,
      ...(out ? [out] : []),
      insert(`Write “\\${rest.charAt(0)}”`, line.start + at, "\\"),
    );
  } else if ((inner.type === "ordered_list_open" && number) || /^[-+*]\s/.test(rest)) {
    const sign = number ? (number[1] ?? "").length : 0;
    problems.trap(
      "list-in-list",
      place(number ? sign + 1 : 1),
      `“${rest.slice(0, sign + 1)}” begins a list inside the list, so that this item is not read. A backslash makes it text.`,
      insert(`Write “${rest.slice(0, sign)}\\${rest.charAt(sign)}”`, line.start + at + sign, "\\"),
      ...without,
      ...numbered(write("Make a numbered item of it", bulletOf(line, marker), ""), number, marker[2] ?? "", nth),
    );
  } else if (inner.type === "heading_open" && (inner.markup === "=" || inner.markup === "-")) {
    const under = lines.line((inner.map?.[1] ?? 1) - 1);
    const above = lines.line(lines.lineAt(under.start) - 1).end;
    const below = lines.line(inner.map?.[1] ?? 1);
    const right = lines.text.slice(below.start, below.end);
    // A lone sign between two lines of the item is meant to part its sides.
    const parts =
      lines.text.slice(under.start, under.end).trim() === "=" && (item.map?.[1] ?? 0) > (inner.map?.[1] ?? 0);
    const lead = right.length - right.trimStart().length;
    problems.trap(
      "underlined-item",
      under,
      "This line makes a heading of the item above it, so that it is not read.",
      parts && lead < right.length && !bullet.test(right)
        ? write("Write it in one line", { start: above, end: below.start + lead }, " = ")
        : write("Take the line out", { start: above, end: under.end }, ""),
    );
  } else if (inner.type === "heading_open" || inner.type === "blockquote_open") {
    problems.trap(
      "list-in-list",
      place(1),
      `“${rest.charAt(0)}” makes ${inner.type === "heading_open" ? "a heading" : "a quotation"} of the item, so that it is not read. A backslash makes it text.`,
      insert(`Write “\\${rest.charAt(0)}”`, line.start + at, "\\"),
      ...without,
    );
  } else if (inner.type === "code_block") {
    problems.trap(
      "indented-list",
      place(rest.trimEnd().length),
      "So many spaces behind the bullet make this code, not an item.",
      write(
        "Leave one space",
        {
          start: line.start + (marker[1] ?? "").length + (marker[2] ?? "").length,
          end: line.start + at + (rest.length - rest.trimStart().length),
        },
        " ",
      ),
    );
  } else if (inner.type === "html_block" && rest.startsWith("<!--")) commentFirst(line, text, at, problems);
  else {
    const number = lines.lineAt(line.start);
    const block: FirstBlock = { item, inner, line: number, at: line.start + at, rest, marker: marker[0] };
    firstBlock(lines, block, problems);
  }
}

/**
 * The fix of `- 2. Ela ri.`, an event behind a bullet, with its number, its sign and its place in its list: where it does not count with
 * the others, the number may be that of a day, and surely is no event's behind the number of one: `2. 24. Dezember`.
 */
function numbered(
  fix: Problem["fixes"][number],
  number: RegExpExecArray | null,
  sign: string,
  nth: number | undefined,
): Problem["fixes"] {
  if (!number) return [];
  const [count, outer] = [Number(number[1]), Number.parseInt(sign, 10)];
  if (nth === undefined || count === nth || count === outer) return [{ ...fix, among: "events" }];
  return Number.isNaN(outer) ? [{ ...fix, among: "events", unsure: true }] : [];
}

/** A bullet behind the bullet of an item, before words or a mark. `- - = minus` has a sign for a side. */
const doubled = /^[-+*][ \t]+(?:\[[ xX]\]\s+|[*_“"'„«¿¡(-]*)\p{L}/u;

/**
 * `- - Bom dia!`: a hyphen before a sentence may say that someone speaks. Before a mark and in a correction it surely says nothing, and
 * before words it would be printed with them.
 */
function maybeSpeech(rest: string, above: string): boolean {
  const [left = ""] = rest
    .slice(1)
    .trim()
    .split(/\s[=＝]\s/u);
  return spoken.test(left) && !/^\[/.test(left) && !/^\[ \]\s/.test(above);
}

const spoken = new RegExp(String.raw`[${stops}][\p{Pf}\p{Pe}"'”]*$`, "u");

/** The bullet of a line, with the white space behind it. */
function bulletOf({ start }: Range, [all, lead = ""]: RegExpExecArray): Range {
  return { start: start + lead.length, end: start + all.length };
}

/** `- <!-- by: K7 --> roda = wheel`: Markdown takes the whole item for the comment. */
function commentFirst(line: { start: number; end: number }, text: string, at: number, problems: Problems): void {
  const comment = /^<!--.*?-->/.exec(text.slice(at))?.[0];
  // Of several all move.
  const all = /^(?:<!--.*?-->[ \t]*)+/.exec(text.slice(at))?.[0] ?? "";
  const rest = text.slice(at + all.length).trim();
  if (!comment || (!commentMeaning(comment) && text.slice(at + comment.length).trim() === "")) return;
  const edits = [
    { range: { start: line.start + at, end: line.start + at + all.length }, text: "" },
    { range: { start: line.end, end: line.end }, text: ` ${all.trim()}` },
  ];
  problems.trap(
    "misplaced-comment",
    { start: line.start + at, end: line.start + at + comment.length },
    "A comment that begins an item makes a comment of all of it, so that it is not read. It belongs at the end.",
    ...(rest === "" ? [] : [{ title: "Move it to the end of the item", edits }]),
  );
}

/** Lines of a paragraph that were meant as items or headings; of an item, only as headings and numbered ones. */
export function paragraphLines(
  lines: LineIndex,
  [first, after]: readonly [number, number],
  inItem: boolean,
  problems: Problems,
): void {
  let told = false;
  // Formatters put a blank line between them.
  let next = after;
  while (next < lines.count && textOf(lines, next).trim() === "") next++;
  const aboveBullets = !inItem && next < lines.count && /^[ \t]{0,3}[-*+][ \t]+\S/.test(textOf(lines, next));
  /** A numbered line stands above. */
  let below = false;
  for (let number = first; number < after; number++) {
    const { start, end } = lines.line(number);
    const text = lines.text.slice(start, end);
    const swallowed = swallowedNumber(lines, [first, number], inItem);
    if (swallowed) {
      // Those below it are in its list.
      if (below || swallowed === "broken") continue;
      below = true;
      problems.trap(
        "swallowed-list",
        { start, end },
        "This numbered line is read as part of the text above it. A blank line before it makes it an item.",
        {
          ...insert("Put a blank line before it", start, lines.newline),
          ...(swallowed === "perhaps" ? { unsure: true as const } : {}),
        },
      );
      continue;
    }
    if (inItem && number === first) continue;
    // White space that Markdown does not know keeps any item from beginning.
    const lead = /^(?:[^\S\n]*[^\S \t\n][^\S\n]*|[ \t]{0,3})/u.exec(text)?.[0].length ?? 0;
    const rest = text.slice(lead);
    const sign = inItem ? undefined : itemSign(rest, told || below || aboveBullets);
    if (sign !== undefined) {
      const at = start + lead;
      problems.trap(
        "not-an-item",
        { start: at, end: at + 1 },
        `This line is no item: an item begins with a hyphen and a space.`,
        // Behind a tab or a space of another kind none can begin.
        write("Make it an item", { start: /[^ ]/.test(text.slice(0, lead)) ? start : at, end: at + sign.length }, "- "),
      );
      told = true;
      continue;
    }
    // A pair without a bullet below such a line is meant as one more.
    if (told && /\S\s+[=＝]\s+\S/u.test(rest)) {
      problems.trap(
        "not-an-item",
        { start: start + lead, end: start + lead + rest.trimEnd().length },
        "This line is no item: an item begins with a hyphen and a space.",
        write("Make it an item", { start, end: start + lead + (madeLetter.exec(rest)?.[0].length ?? 0) }, "- "),
      );
      continue;
    }
    if (!inItem || number > first) tightHeading(lines, number, first + 1 === after, problems);
  }
}

/** What a hyphen should stand for in a line, `below` others that become items; undefined where it was meant as no item. */
function itemSign(line: string, below: boolean): string | undefined {
  const sign = pairSign.exec(line)?.[0];
  if (sign && (dot.test(line) || /\s[=＝]\s/u.test(line.slice(sign.length)))) return sign;
  return below ? (boxed.exec(line) ?? tight.exec(line))?.[0] : undefined;
}

/** A list that four spaces make code. */
export function indentedList(lines: LineIndex, token: Token, problems: Problems): void {
  const [first, after] = token.map ?? [0, 0];
  const numbers = Array.from({ length: after - first }, (_, i) => first + i);
  const items = numbers.filter((number) =>
    /^\s*(?:[-*+]|\d{1,9}[.)])\s+\S/.test(lines.text.slice(lines.start(number), lines.line(number).end)),
  );
  const [head] = items;
  if (
    head === undefined ||
    items.length < numbers.filter((number) => lines.line(number).end > lines.line(number).start).length
  )
    return;
  const text = (number: number): string => lines.text.slice(lines.start(number), lines.line(number).end);
  const indent = Math.min(...items.map((number) => text(number).length - text(number).trimStart().length));
  problems.trap(
    "indented-list",
    { start: lines.start(head), end: lines.line(items.at(-1) ?? head).end },
    "Four spaces or a tab before a list make code of it, so that it is not read.",
    {
      title: "Take the spaces out",
      edits: items.map((number) => ({
        range: { start: lines.start(number), end: lines.start(number) + indent },
        text: "",
      })),
    },
  );
}

/** HTML that a blank line does not end (CommonMark's first five kinds of HTML block). */
const lasting = /^\s*<(?:!--|\?|![A-Za-z[]|(?:script|pre|style|textarea)(?=[\s>]|$))/i;

/** Items swallowed by a block of HTML above them. */
export function listInHtml(lines: LineIndex, token: Token, problems: Problems): void {
  const [first, after] = token.map ?? [0, 0];
  if (lasting.test(token.content)) {
    openComment(lines, token, problems);
    return;
  }
  for (let number = first + 1; number < after; number++) {
    const { start, end } = lines.line(number);
    if (!/^[ \t]{0,3}(?:[-*+]|\d{1,9}[.)])[ \t]+\S/.test(lines.text.slice(start, end))) continue;
    problems.trap(
      "swallowed-list",
      { start, end },
      "This item is read as part of the HTML above it. A blank line before it makes it an item.",
      insert("Put a blank line before it", start, lines.newline),
    );
    return;
  }
}

/**
 * A comment without an end takes everything below it, where it holds more than its own line; with a further comment below, what
 * stands above the end of that one.
 */
function openComment(lines: LineIndex, { map, content }: Token, problems: Problems): void {
  const comment = /^\s*<!--[\s\S]*?(?:-->|$)/.exec(content)?.[0].trim();
  if (!comment?.includes("\n")) return;
  const closed = comment.endsWith("-->");
  const above = comment.slice(0, comment.lastIndexOf("<!--"));
  // In one that is closed by another one's end there is a whole line more.
  if (closed && !above.trim().includes("\n")) return;
  const line = lines.line(map?.[0] ?? 0);
  const message = closed
    ? "This comment ends only where the next one does, so that what stands between them belongs to it."
    : "This comment has no end, so that everything below belongs to it.";
  const fix = insert("End it at the end of this line", line.end, " -->");
  // A section is in use by its activities, and the comment may have taken them all, or the section.
  const taken = /\n {0,3}(?:(?:`{3,}|~{3,})[ \t]*(?:activity|stations)[ \t]*(?:\n|$)|##[ \t])/.test(comment);
  problems.tell(taken ? undefined : true, "swallowed-list", line, message, closed ? { ...fix, unsure: true } : fix);
}

/** Two lists that touch, of different bullets: Markdown parts them. Notes above a blank line are a list of their own. */
export function splitList(lines: LineIndex, before: Token, next: Token, areNotes: boolean, problems: Problems): void {
  const [first, after] = next.map ?? [0, 0];
  if (areNotes && textOf(lines, first - 1).trim() === "") return;
  const wanted = before.markup;
  const edits = [];
  for (let number = first; number < after; number++) {
    const { start, end } = lines.line(number);
    const match = /^([ \t]{0,3}\d{0,9})([-*+.)])(?=[ \t]|$)/.exec(lines.text.slice(start, end));
    if (match?.[2] !== next.markup) continue;
    const at = start + (match[1] ?? "").length;
    edits.push({ range: { start: at, end: at + 1 }, text: wanted });
  }
  const { start } = lines.line(first);
  problems.trap(
    "split-list",
    { start, end: lines.line(first).end },
    `Another sign (“${next.markup}” instead of “${wanted}”) begins a second list here.`,
    { title: `Write “${wanted}” throughout`, edits },
  );
}
