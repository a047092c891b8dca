import type Token from "markdown-it/lib/token.mjs";
import activitySchema from "../../../schemas/activity.schema.json";
import type { LineIndex, Range } from "../../base/range";
import { insert, type Problems, write } from "../problems";
import type { Problem } from "../unit";
import { cutEdits, isClosed, textOf } from "./lines";

/*
 * Fenced blocks: activities and notes that end in the wrong place or stand where they are not read.
 */

/** An activity's option that says what to make, as a line of its own. */
const makes = new RegExp(
  `^[ \\t]*make[ \\t]*[:=：]\\s*["'“]?(?:${activitySchema.properties.make.enum.join("|")})\\b`,
  "imu",
);

/** Lines that are all options, or items of an option's list. */
const onlyOptions = /^(?:[ \t]*(?:#.*|-[ \t].*|[a-z][\w-]*[ \t]*[:=：].*)?(?:\n|$))+$/u;

/** Names of blocks that say nothing but how the text is written. */
const plainName = /^(?:ya?ml|te?xt|plain(?:text)?|markdown|md)?$/i;

/**
 * A block whose name is nearly “activity”, or that has another and says what to make; undefined where it is none. `below`: from which
 * line on is read what stands below it, where it has no end of its own.
 */
export function nearlyActivity(
  lines: LineIndex,
  token: Token,
  problems: Problems,
): { readonly below?: number } | undefined {
  const info = token.info.trim();
  const first = info.split(/\s+/)[0] ?? "";
  if (/^(?:activity|stations)$/.test(first)) return undefined;
  const nearly = /^\W?act[iv]{1,3}t?[iy]{1,2}(?:es)?\W?$/i.test(first);
  const open = openEnd(lines, token);
  const [line] = token.map ?? [0];
  const own = token.content.split("\n");
  const content = open ? own.slice(0, open.extent.end - line - 1).join("\n") : token.content;
  const made = makes.test(content) && /^\s*(?:#.*\s*)?[\w-]+[ \t]*[:=：]/u.test(content);
  const stations = /^\W?stations?\W?$/i.test(first);
  if (!nearly && !made && !stations) return undefined;
  const head = lines.line(line);
  const at = head.start + lines.text.slice(head.start, head.end).indexOf(token.markup) + token.markup.length;
  const text = lines.text.slice(at, head.end);
  const start = at + (text.length - text.trimStart().length);
  const named = { start, end: start + first.length };
  const range = first === "" ? { start: at - token.markup.length, end: at } : named;
  const name = stations ? "stations" : "activity";
  const fix = write(
    `Write “${name}”`,
    nearly || stations ? named : { start, end: Math.max(start, at + text.trimEnd().length) },
    name,
  );
  const message = stations
    ? "This block is no plan of stations: that has the name “stations”."
    : "This block is no activity: that has the name “activity”.";
  // A block in which hardly anything else can be meant is told wherever it stands.
  const bare = plainName.test(info) && onlyOptions.test(content);
  const planned = stations && /^stations[ \t]*:/mu.test(content);
  const isMade = makes.test(info.slice(first.length));
  const sure = planned || (nearly && isMade) || (made && (nearly || bare || /\bactivity\b/i.test(info)));
  problems.tell(
    sure ? undefined : true,
    "not-an-activity",
    range,
    open ? message + endless : message,
    open ? both(fix, open.fix) : fix,
  );
  return open?.extent.below === undefined ? {} : { below: open.extent.below };
}

/** What is said of a block that has no end, besides what else is wrong with it. */
export const endless = " It has no end either, so that everything below belongs to it.";

/** Two fixes as one. */
export const both = (one: OpenEnd["fix"], other: OpenEnd["fix"]): OpenEnd["fix"] => ({
  title: `${one.title} and ${other.title.charAt(0).toLowerCase()}${other.title.slice(1)}`,
  edits: [...one.edits, ...other.edits],
});

/** An activity that four spaces make code. */
export function indentedActivity(lines: LineIndex, { map }: Token, problems: Problems): void {
  const [first, after] = map ?? [0, 0];
  const text = textOf(lines, first);
  if (!/^\s*(?:`{3,}|~{3,})[ \t]*(?:activity|stations)[ \t]*$/.test(text)) return;
  const indent = text.length - text.trimStart().length;
  problems.trap(
    "not-an-activity",
    { start: lines.start(first) + indent, end: lines.line(first).end },
    "Four spaces or a tab before this block make code of it, so that it is no activity.",
    { title: "Take the spaces out", edits: cutEdits(lines, first, after, indent) },
  );
}

/** `´´´activity`, `\'\'\'activity`: a fence of other signs is a paragraph. Whether this is one. */
export function quotedFence(lines: LineIndex, [first, after]: readonly [number, number], problems: Problems): boolean {
  const head = /^([ \t]{0,3})([´'’‘"`]{2,})[ \t]*(?=(?:activity|stations)[ \t]*$)/u.exec(textOf(lines, first));
  if (!head?.[2]) return false;
  const start = lines.start(first) + (head[1] ?? "").length;
  const last = /^[ \t]{0,3}[´'’‘"`]{2,}[ \t]*$/u.test(textOf(lines, after - 1)) ? lines.line(after - 1) : undefined;
  const end = lines.line(after - 1).end;
  problems.add(
    "not-an-activity",
    { start, end: lines.line(first).end },
    `This is no activity: a block begins and ends with three backticks, not with “${head[2]}”.`,
    {
      title: "Write three backticks",
      edits: [
        { range: { start, end: start + head[2].length }, text: "```" },
        last ? { range: last, text: "```" } : { range: { start: end, end }, text: `${lines.newline}\`\`\`` },
      ],
    },
  );
  return true;
}

/** A line that belongs to a unit and hardly to a block of notes. */
const unitLine =
  /^ {0,3}(?:#{2,6}[ \t]+\S|\d{1,9}[.)][ \t]+\S|[-*+][ \t]+(?:\[[ xX]\][ \t]|\S.*[ \t]=[ \t]+\S)|(`{3,}|~{3,})(?:activity|stations)[ \t]*$)/;

/** Lines of an activity: `end` is the one below its last option, `close` that of its closing fence, where it has one. */
export interface Extent {
  readonly end: number;
  readonly close?: number;
  /** Where reading goes on, if the block has no end of its own and is taken to end with its options. */
  readonly below?: number;
}

/** An activity that does not end where its options do. */
interface OpenEnd {
  readonly extent: Extent;
  /** Its head, or the line that was to end it. */
  readonly range: Range;
  /** The line that was to end it stands there, and has other signs. */
  readonly nearly: boolean;
  readonly fix: Problem["fixes"][number];
}

/** `named`: the first line of the block is no option, but its name. */
export function openEnd(lines: LineIndex, token: Token, named = false): OpenEnd | undefined {
  const [first, after] = token.map ?? [0, 0];
  const last = isClosed(token) ? after - 1 : after;
  for (let number = first + 1; number < last; number++) {
    if (token.markup !== "```" || !/^ {0,3}(?:`{1,2}|[´'’‘]{3})[ \t]*$/u.test(textOf(lines, number))) continue;
    const range = lines.line(number);
    const extent = { end: number, close: number, below: number + 1 };
    return { extent, range, nearly: true, fix: write("Write three backticks", range, "```") };
  }
  if (isClosed(token) && !goesTooFar(lines, token)) return undefined;
  const end = endOfOptions(lines, named ? first + 1 : first, after);
  const fix = insert("End it below its options", lines.line(end - 1).end, `${lines.newline}${token.markup}`);
  return { extent: { end, below: end }, range: lines.line(first), nearly: false, fix };
}

/**
 * How far an activity reaches. One without a line that ends it is told, and taken to end below its options: what stands there is
 * read, so that one cause gives one finding.
 */
export function activityExtent(lines: LineIndex, token: Token, problems: Problems): Extent {
  const open = openEnd(lines, token);
  if (!open) {
    const last = (token.map?.[1] ?? 0) - 1;
    return { end: last, close: last };
  }
  const what = /^stations\b/.test(token.info.trim()) ? "plan" : "activity";
  const message = open.nearly
    ? "This line does not end the activity above it, so that everything below belongs to it."
    : `This ${what} has no end, so that everything below belongs to it.`;
  problems.add("open-fence", open.range, message, open.fix);
  return open.extent;
}

/**
 * Whether a line ends a block that was to end something else: there is another activity in it, a section with items, or an item
 * where no option can have one, below a blank line.
 */
function goesTooFar(lines: LineIndex, { map, markup }: Token): boolean {
  const [first, after] = map ?? [0, 0];
  let heading = false;
  let above = "";
  for (let number = first + 1; number < after - 1; number++) {
    const text = textOf(lines, number);
    const isBelow = textOf(lines, number - 1).trim() === "";
    const found = unitLine.exec(text);
    if (found?.[1]?.startsWith(markup)) return true;
    if (found && !/^ {0,3}#/.test(text) && (heading || (isBelow && /^[\w-]+\s*:\s+\S/.test(above)))) return true;
    heading ||= isBelow && /^#{2,6}[ \t]+\S/.test(text);
    if (text.trim() !== "") above = text;
  }
  return false;
}

/** The line below the options that stand at the beginning of a block. */
function endOfOptions(lines: LineIndex, first: number, after: number): number {
  let end = first + 1;
  while (end < after) {
    const text = textOf(lines, end);
    const isOption = /^\s*(?:[\w-]+\s*:(?:\s|$)|-\s+[^\s=]+$)/.test(text);
    // What is further in goes on with the option above.
    const goesOn = end > first + 1 && /^[ \t]+(?!`{3}|~{3})\S/.test(text);
    if (!isOption && !goesOn) break;
    end += 1;
  }
  return end;
}

/**
 * A block of notes without an end: the items and headings below belong to it, or it ends where an activity was to end. The line from
 * which on is read what stands below, where that has an activity.
 */
export function openNotes(lines: LineIndex, token: Token, problems: Problems): number | undefined {
  const [first, after] = token.map ?? [0, 0];
  const text = (number: number): string => lines.text.slice(lines.start(number), lines.line(number).end);
  const closed = isClosed(token);
  const numbers = Array.from({ length: after - first - 1 }, (_, i) => first + 1 + i);
  // In a block that ends, of a longer fence or of other signs, an activity may well be shown.
  const activity = numbers.some((number) => {
    const fence = unitLine.exec(text(number))?.[1];
    return fence !== undefined && (!closed || fence.startsWith(token.markup));
  });
  if (closed && !activity) return undefined;
  for (const number of numbers) {
    if (!unitLine.test(text(number))) continue;
    let last = number - 1;
    while (last > first && text(last).trim() === "") last--;
    const { end } = lines.line(last);
    const newline = lines.newline;
    const message = "This block has no end, so that the items below belong to it.";
    const fix = insert("End it above them", end, newline + token.markup);
    if (activity) problems.add("open-fence", lines.line(first), message, fix);
    else problems.trap("open-fence", lines.line(first), message, fix);
    return activity ? last + 1 : undefined;
  }
  return undefined;
}

/** An activity or a heading that is indented below an item, so that it belongs to that and is not read. */
export function insideItem(lines: LineIndex, token: Token, problems: Problems): void {
  const [first, after] = token.map ?? [0, 0];
  const text = (number: number): string => lines.text.slice(lines.start(number), lines.line(number).end);
  const head = text(first);
  const indent = head.length - head.trimStart().length;
  const heading = token.type === "heading_open";
  const begins = heading ? /^#{2,6}[ \t]/ : /^(?:`{3,}|~{3,})[ \t]*(?:activity|stations)(?=\s|$)/;
  if (indent === 0 || !begins.test(head.trimStart())) return;
  const edits = [];
  for (let number = first; number < after; number++) {
    const line = text(number);
    const own = Math.min(indent, line.length - line.trimStart().length);
    const start = lines.start(number);
    if (own > 0) edits.push({ range: { start, end: start + own }, text: "" });
  }
  const range = { start: lines.start(first) + indent, end: lines.line(first).end };
  const message = `This ${heading ? "heading" : "block"} is indented, so that it belongs to the item above it and is not read.`;
  const fix = { title: "Take the spaces out", edits };
  if (heading) problems.trap("inside-item", range, message, fix);
  else problems.add("inside-item", range, message, fix);
}
