import type Token from "markdown-it/lib/token.mjs";
import { markdown } from "../../../unit/inline";
import { readUnit } from "../../../unit/read";
import type { Unit } from "../../../unit/unit";

/** A text as its lines, without line endings, and what Markdown makes of them. */
export interface Blocks {
  readonly lines: readonly string[];
  readonly unit: Unit;
  readonly tokens: readonly Token[];
  /** Lines of the front matter; 0 without one. */
  readonly front: number;
  /** For each line, whether it is code or HTML, where every character may matter. */
  readonly opaque: readonly boolean[];
}

export function blocksOf(lines: readonly string[]): Blocks {
  const unit = readUnit(lines.join("\n"));
  const front = unit.front.range.start > 0 ? unit.lines.lineAt(unit.front.range.end) + 1 : 0;
  const body =
    "\n".repeat(front) +
    lines
      .slice(front)
      .join("\n")
      .replace(/^\uFEFF/, " ");
  const tokens = markdown.parse(body, {});
  const opaque = lines.map((_, line) => line < front);
  for (const { type, map } of tokens) {
    if (map && (type === "fence" || type === "code_block" || type === "html_block"))
      opaque.fill(true, map[0], lastLine(lines, map));
  }
  return { lines, unit, tokens, front, opaque };
}

/** The line after the last one of a block that is not blank. */
export function lastLine(lines: readonly string[], [first, after]: readonly [number, number]): number {
  let end = Math.min(after, lines.length);
  while (end > first + 1 && isBlank(lines[end - 1] ?? "")) end--;
  return end;
}

export function isBlank(line: string): boolean {
  return /^[ \t]*$/.test(line);
}

/**
 * First lines of bullets that are nearly nested: only their spaces, and that they touch the item above, show what was meant; and of
 * events that only their numbers show to be lines of a sentence.
 */
export function nearlyItems({ problems, lines, text }: Unit): readonly number[] {
  const isFirst = (start: number): boolean => text.slice(lines.start(lines.lineAt(start)), start).trim() === "";
  return problems
    .filter(({ code, range }) => code === "not-nested" || (code === "list-in-list" && isFirst(range.start)))
    .map(({ range }) => lines.lineAt(range.start));
}

/** Whether two texts say the same: everything that was read, but for places, and the kinds of what could not be read. */
export function saysTheSame(before: Unit, after: Unit): boolean {
  return sayings(before) === sayings(after);
}

function sayings({ front, sections, activities, stations, silences, problems }: Unit): string {
  const codes = problems.map(({ code }) => code).sort();
  return JSON.stringify({ front, sections, activities, stations, silences, codes }, (_, value: unknown) =>
    isPlace(value) ? null : value,
  );
}

function isPlace(value: unknown): boolean {
  return typeof value === "object" && value !== null && Object.keys(value).join() === "start,end";
}
