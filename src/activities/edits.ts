import type { TextEdit } from "../base/finding";
import { lineStart, nextLine, type Range } from "../base/range";
import type { ActivityBlock } from "../unit/unit";

/** Sets several options: what is missing becomes lines at the end of the block, in one edit. */
export function setOptions(block: ActivityBlock, text: string, options: Readonly<Record<string, string>>): TextEdit[] {
  const edits = Object.entries(options).map(([key, value]) => setOption(block, text, key, value));
  const isNew = ({ range }: TextEdit): boolean => range.start === block.body.end && range.end === block.body.end;
  const [first, ...more] = edits.filter(isNew);
  if (!first) return edits;
  const lines = [first.text, ...more.map((edit) => edit.text.replace(/^[\r\n]+/, ""))].join("");
  return [...edits.filter((edit) => !isNew(edit)), { ...first, text: lines }];
}

/** Sets an option of an activity: replaces its value where it stands, else adds a line at the end of the block. */
export function setOption(block: ActivityBlock, text: string, key: string, value: string): TextEdit {
  const entry = block.options.entries.find((candidate) => candidate.key === key);
  if (entry) {
    const { start, end } = entry.valueRange;
    const glue = start === end && start === entry.keyRange.end ? ": " : "";
    return { range: { start, end }, text: `${glue}${value}` };
  }
  const before = text.slice(block.fence.start, block.body.start);
  const indent = /^[ \t]*/.exec(before)?.[0] ?? "";
  const newline = /(?:\r\n|\r|\n)$/.exec(before)?.[0] ?? "\n";
  const open = block.body.end > 0 && !/[\r\n]/.test(text.charAt(block.body.end - 1)) ? newline : "";
  return { range: { start: block.body.end, end: block.body.end }, text: `${open}${indent}${key}: ${value}${newline}` };
}

/** Takes out the whole lines that a place stands on, with the final line ending. */
export function dropLines(text: string, { start, end }: Range): TextEdit {
  return { range: { start: lineStart(text, start), end: nextLine(text, end) }, text: "" };
}

/** Takes an option's whole line out. */
export function removeOption(block: ActivityBlock, text: string, key: string): TextEdit | undefined {
  const entry = block.options.entries.find((candidate) => candidate.key === key);
  if (!entry) return undefined;
  const start = Math.max(lineStart(text, entry.keyRange.start), block.body.start);
  return { range: { start, end: nextLine(text, entry.valueRange.end) }, text: "" };
}
