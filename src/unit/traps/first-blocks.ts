import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../../base/range";
import { drop, type Problems, write } from "../problems";
import { isReadTable } from "../tables";
import { blankAround, cutEdits, isClosed, textOf } from "./lines";

/*
 * A block that begins on a bullet's own line, where the text of the item was to stand: `- | a | b |`, `- ```activity`.
 */

/** What stands behind a bullet: the item's token, the token of the block (or of the item's end), the bullet and the rest of its line. */
export interface FirstBlock {
  readonly item: Token;
  readonly inner: Token;
  /** The number of the line. */
  readonly line: number;
  /** Where the rest of the line begins. */
  readonly at: number;
  readonly rest: string;
  /** The bullet with what stands before it, as `  - `. */
  readonly marker: string;
}

/** A fence, a table, HTML or a link's target on a bullet's line. */
export function firstBlock(lines: LineIndex, block: FirstBlock, problems: Problems): void {
  const { inner } = block;
  if (inner.type === "fence") fence(lines, block, problems);
  else if (inner.type === "table_open") table(lines, block, problems);
  else if (inner.type === "html_block") html(lines, block, problems);
  else if (inner.type === "list_item_close") target(block, problems);
}

function fence(lines: LineIndex, block: FirstBlock, problems: Problems): void {
  const { inner, at, rest, line } = block;
  const range = { start: at, end: at + rest.trimEnd().length };
  const name = /^(?:activity|stations)(?=\s|$)/.exec(inner.info.trim())?.[0];
  if (name) {
    const message = `This block stands behind a bullet, so that it belongs to an item and is not read.`;
    const fix = { title: "Take the bullet out", edits: withoutBullet(lines, block) };
    problems.add("block-in-item", range, message, fix);
    return;
  }
  const [first, after] = inner.map ?? [line, line + 1];
  const written = Array.from({ length: after - first - 1 }, (_, i) => first + 1 + i);
  const last = written.at(-1);
  const closed = last !== undefined && isClosed(inner);
  const inside = (closed ? written.slice(0, -1) : written).filter((number) => textOf(lines, number).trim() !== "");
  const shaped = inside.some((number) => /\s[=＝]\s|^\s*(?:[-*+]\s+)?\[[ xX]\]\s/u.test(textOf(lines, number)));
  // Code in a language is a note, if nothing in it looks like an item and no event is lost.
  if (inner.info.trim() !== "" && !shaped && !/\d/.test(block.marker)) return;
  const [head, ...further] = inside;
  const message = `“${inner.markup}” makes code of this item, so that it is not read.`;
  if (head === undefined) {
    const whole = { start: lines.start(line), end: lines.start(after) };
    problems.trap("block-in-item", range, message, drop("Take the item out", whole));
    return;
  }
  const begin = (number: number): number =>
    lines.start(number) + (/^\s*(?:[-*+]\s+)?/.exec(textOf(lines, number))?.[0].length ?? 0);
  const edits = [
    { range: { start: at, end: begin(head) }, text: "" },
    ...further.map((number) => ({ range: { start: lines.start(number), end: begin(number) }, text: block.marker })),
  ];
  if (closed) edits.push({ range: { start: lines.line(last - 1).end, end: lines.line(last).end }, text: "" });
  problems.trap("block-in-item", range, message, { title: "Make an item of it", edits });
}

function table(lines: LineIndex, block: FirstBlock, problems: Problems): void {
  const { inner, at, rest } = block;
  const [first, after] = inner.map ?? [block.line, block.line + 1];
  if (!isReadTable(lines, first, after, at)) return;
  problems.trap(
    "block-in-item",
    { start: at, end: at + rest.trimEnd().length },
    "This table stands behind a bullet, so that it belongs to an item and is not read.",
    { title: "Take the bullet out", edits: [...withoutBullet(lines, block), ...blankAround(lines, first, after)] },
  );
}

function withoutBullet(lines: LineIndex, { item, at, line }: FirstBlock) {
  const start = lines.start(line);
  const after = item.map?.[1] ?? line + 1;
  return [{ range: { start, end: at }, text: "" }, ...cutEdits(lines, line + 1, after, at - start)];
}

const tag = /<\/?[a-z][^<>]*>/gi;

function html(lines: LineIndex, { inner, at, line }: FirstBlock, problems: Problems): void {
  const [, after] = inner.map ?? [line, line + 1];
  const { end } = lines.line(after - 1);
  const text = lines.text.slice(at, end);
  const first = /^<\/?[a-z][^<>]*>/i.exec(text)?.[0];
  const words = text.replace(tag, " ").replace(/\s+/g, " ").trim();
  if (!first || words === "" || /^[#>|`~=+*-]|<|^\d+[.)]\s/.test(words)) return;
  problems.trap(
    "block-in-item",
    { start: at, end: at + first.length },
    `“${first}” makes a block of HTML of this item, so that it is not read.`,
    write("Take the HTML out", { start: at, end: at + text.trimEnd().length }, words),
  );
}

/** `- [ref]: target`: nothing is left of such an item. */
function target({ at, rest }: FirstBlock, problems: Problems): void {
  const name = /^\[[^\]]+\]:/.exec(rest)?.[0];
  if (!name) return;
  if (/^\[[ xX]\]:/.test(name)) {
    const range = { start: at, end: at + name.length };
    const message = "Markdown reads this mark as the name of a link, so that this statement is not read.";
    problems.trap("block-in-item", range, message, write("Take the colon out", { start: at + 3, end: at + 4 }, ""));
    return;
  }
  problems.trap(
    "block-in-item",
    { start: at, end: at + name.length },
    `Markdown reads “${name}” as the target of a link, so that this item is not read. A backslash makes it text.`,
    write(`Write “\\${name}”`, { start: at, end: at }, "\\"),
  );
}
