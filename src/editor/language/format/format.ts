import type { TextEdit } from "../../../base/finding";
import { LineIndex } from "../../../base/range";
import { type Blocks, blocksOf, isBlank, saysTheSame } from "./blocks";
import { spaceBlocks, trimLines } from "./lines";
import { tidyLists } from "./lists";
import { spaceSeparators } from "./separators";
import { alignTables } from "./tables";

/** Each makes one thing tidy and gives back all lines. None joins, parts or moves lines; blank ones may come and go. */
export const passes: readonly ((blocks: Blocks) => readonly string[])[] = [
  spaceSeparators,
  tidyLists,
  trimLines,
  alignTables,
  spaceBlocks,
];

/**
 * Edits that make a unit tidy and change nothing that it says: what a pass makes is read again, and a pass that would change a
 * meaning is left out. Formatting what was formatted gives no edits.
 */
export function formatUnit(text: string): readonly TextEdit[] {
  const before = linesOf(text);
  let now = blocksOf(before);
  // What one pass tidies may let another one do what it could not do before.
  for (let round = 0; round < mostRounds; round++) {
    const next = tidied(now);
    if (next === now) break;
    now = next;
  }
  return editsBetween(text, before, now.lines);
}

/** More than any text is known to need. */
const mostRounds = 6;

/** The same object where there is nothing to tidy. */
function tidied(blocks: Blocks): Blocks {
  let now = blocks;
  for (const pass of passes) {
    const lines = pass(now);
    if (lines.length === now.lines.length && lines.every((line, i) => line === now.lines[i])) continue;
    const next = blocksOf(lines);
    if (saysTheSame(now.unit, next.unit)) now = next;
  }
  return now;
}

function linesOf(text: string): readonly string[] {
  return text.split(/\r\n|\n|\r/);
}

/** Edits line by line, so that the cursor and what was not touched stay. Lines that are not blank correspond one to one. */
function editsBetween(text: string, before: readonly string[], after: readonly string[]): readonly TextEdit[] {
  const index = new LineIndex(text);
  const newline = index.newline;
  const [old, now] = [runsOf(before), runsOf(after)];
  if (old.length !== now.length) return [];
  const edits: TextEdit[] = [];
  /** Writes the blank lines above a line anew, from the end of the last line that is not blank. */
  const gapEdit = (line: number, above: number, blank: readonly string[]): TextEdit => {
    const first = line - above;
    const start = first === 0 ? 0 : index.line(first - 1).end;
    if (line < before.length) {
      const gap = blank.map((each) => each + newline).join("");
      return { range: { start, end: index.start(line) }, text: (first === 0 ? "" : newline) + gap };
    }
    // Behind the last line there are only line endings, one before each blank line.
    const gap = first === 0 ? blank.slice(1).map(() => newline) : blank.map((each) => newline + each);
    return { range: { start, end: text.length }, text: gap.join("") };
  };
  old.forEach(({ line, blank }, i) => {
    const next = now[i];
    if (!next) return;
    if (JSON.stringify(blank) !== JSON.stringify(next.blank)) edits.push(gapEdit(line, blank.length, next.blank));
    const [from, to] = [before[line], after[next.line]];
    if (from !== undefined && to !== undefined && from !== to) edits.push(...lineEdit(index.start(line), from, to));
  });
  return joined(edits).filter(({ range, text: put }) => text.slice(range.start, range.end) !== put);
}

/** Edits that touch become one: who applies them need not mind their order. */
function joined(edits: readonly TextEdit[]): readonly TextEdit[] {
  const out: TextEdit[] = [];
  for (const edit of edits) {
    const last = out.at(-1);
    if (last?.range.end !== edit.range.start) out.push(edit);
    else
      out[out.length - 1] = {
        range: { start: last.range.start, end: edit.range.end },
        text: last.text + edit.text,
      };
  }
  return out;
}

/** Each line that is not blank with the blank ones above it; at the end a run without such a line. */
function runsOf(lines: readonly string[]): readonly { readonly line: number; readonly blank: readonly string[] }[] {
  const runs: { line: number; blank: readonly string[] }[] = [];
  let blank: string[] = [];
  lines.forEach((text, line) => {
    if (isBlank(text)) blank.push(text);
    else {
      runs.push({ line, blank });
      blank = [];
    }
  });
  return [...runs, { line: lines.length, blank }];
}

/** The part of a line that differs. */
function lineEdit(start: number, from: string, to: string): readonly TextEdit[] {
  let head = 0;
  while (head < Math.min(from.length, to.length) && from[head] === to[head]) head++;
  let tail = 0;
  while (tail < Math.min(from.length, to.length) - head && from.at(-1 - tail) === to.at(-1 - tail)) tail++;
  return [{ range: { start: start + head, end: start + from.length - tail }, text: to.slice(head, to.length - tail) }];
}
