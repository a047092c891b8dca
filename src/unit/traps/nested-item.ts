import type { LineIndex } from "../../base/range";
import { type Env, scan, spacedSeparators } from "../inline";
import type { RawItem } from "../items";
import type { Problems } from "../problems";
import type { Problem } from "../unit";
import { isAbout } from "./corrections";
import { column } from "./nesting";

interface Around {
  readonly lines: LineIndex;
  readonly env: Env;
  readonly problems: Problems;
}

/**
 * A pair or statement that stands one level too deep under `owner`: it is read as an example or a correction; `note` where that
 * one is not read. Whether it is one.
 */
export function nestedItem(item: RawItem, owner: RawItem, note: boolean, { lines, env, problems }: Around): boolean {
  const { text: source } = item;
  const pair = spacedSeparators(source.text, scan(source.text, env).mask, "=").length > 0;
  const statement = /^\[[ xX]\]\s/.test(source.text);
  // The correction of a sum is a sum: `- [ ] 3 x 3 = 8`.
  if (pair && !statement && sum(owner.text.text, env)) return false;
  if (!pair && !statement) return false;
  const out = { title: "Move it out", edits: movedOut(item, owner, lines) };
  if (isCorrection(item, owner)) {
    const edits = [{ range: source.range(0, /^\[.\]\s+/u.exec(source.text)?.[0].length ?? 0), text: "" }];
    const message = "This has a box of its own, which a correction of the statement above it does not need.";
    problems.trap("nested-item", source.whole, message, { title: "Take the box out", edits }, out);
    return true;
  }
  problems.trap(
    "nested-item",
    source.whole,
    `This ${pair ? "pair" : "statement"} stands under another item, ${note ? "which is a note, so that it is not read" : "so that it is read as a sentence about that one"}.`,
    out,
  );
  return true;
}

/** `  - [x] A roda é velha.` under `- [ ] A roda é nova.`; of two words any two sentences may have one in common. */
function isCorrection({ text, nested }: RawItem, { text: above }: RawItem): boolean {
  return (
    nested.length === 0 &&
    /^\[[xX]\]\s/.test(text.text) &&
    /^\[ \]\s/.test(above.text) &&
    isAbout(above.text.slice(4), text.text.slice(4)) &&
    /\s\S+\s/.test(text.text.slice(4).trim())
  );
}

/** Whether a text is a statement with ` = ` in it. */
function sum(text: string, env: Env): boolean {
  return /^\[[ xX]\]\s/.test(text) && spacedSeparators(text, scan(text, env).mask, "=").length > 0;
}

/**
 * The item begins as its owner does, and what stands under it moves with it: behind another bullet, items further down might come
 * to stand under this one, and its own bullets too far in.
 */
export function movedOut(
  { text, block }: RawItem,
  owner: RawItem,
  lines: LineIndex,
): Problem["fixes"][number]["edits"] {
  const before = lines.text.slice(block.start, text.source(0));
  const own = lines.text.slice(owner.block.start, owner.text.source(0));
  const put = own.includes("\n") ? own.replace(/\s*\n[\s\S]*$/, " ") : own;
  const by = column(before) - column(put);
  const first = lines.lineAt(text.source(0));
  const edits = [{ range: { start: block.start, end: text.source(0) }, text: put }];
  for (let number = first + 1; number < lines.count && lines.start(number) < block.end; number++) {
    const { start, end } = lines.line(number);
    const lead = /^[ \t]*(?=\S)/.exec(lines.text.slice(start, end))?.[0] ?? "";
    const kept = Math.max(0, column(lead) - Math.max(0, by));
    if (by > 0 && lead !== "") edits.push({ range: { start, end: start + lead.length }, text: " ".repeat(kept) });
  }
  return edits;
}
