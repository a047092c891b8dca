import type { Finding, TextEdit } from "../base/finding";
import { finished, type Steps } from "../base/steps";
import { readingRules } from "../check/rules";

/** Findings on what was not read as it was meant. */
const ofReading: ReadonlySet<string> = new Set(readingRules.map(({ code }) => code));

/** Rounds after which fixing stops: each may bring up what the one before it covered. */
const mostRounds = 30;

/**
 * A text with all preferred fixes applied, of one code where one is given: as many at once as do not overlap, then again on
 * what came of it, until there is none left or a text comes back. `find` reads a text.
 */
export function fixAll(text: string, find: (text: string) => readonly Finding[], code?: string): string {
  return finished(fixingAll(text, find, code));
}

/** The same in steps, where reading has some: each is as long as the first one, and nobody need wait for it. */
export function* fixingAll(
  text: string,
  find: (text: string) => readonly Finding[] | Steps<readonly Finding[]>,
  code?: string,
): Steps<string> {
  const seen = new Set([text]);
  let now = text;
  for (let round = 0; round < mostRounds; round++) {
    const reading = find(now);
    const found = ("next" in reading ? yield* reading : reading).filter(
      (finding) => (code === undefined || finding.code === code) && finding.fixes.some(({ preferred }) => preferred),
    );
    // What was mistyped goes first: an option may be right as soon as all items are read.
    const mistyped = found.filter((finding) => ofReading.has(finding.code));
    const fixes = (mistyped.length > 0 ? mistyped : found).flatMap(({ fixes: all }) =>
      all.filter(({ preferred }) => preferred).slice(0, 1),
    );
    const edits: TextEdit[] = [];
    for (const fix of fixes) {
      const clear = fix.edits.every((edit) => edits.every((taken) => apart(edit, taken)));
      if (clear) edits.push(...fix.edits);
    }
    if (edits.length === 0) return now;
    now = applyEdits(now, edits);
    if (seen.has(now)) return now;
    seen.add(now);
  }
  return now;
}

function apart(a: TextEdit, b: TextEdit): boolean {
  return a.range.end < b.range.start || b.range.end < a.range.start;
}

/** Applies edits that do not overlap. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  return [...edits]
    .sort((a, b) => b.range.start - a.range.start || b.range.end - a.range.end)
    .reduce((now, { range, text: inserted }) => now.slice(0, range.start) + inserted + now.slice(range.end), text);
}

/** The one edit that makes `after` of `before`: what lies between their common beginning and end. */
export function editBetween(before: string, after: string): TextEdit | undefined {
  if (before === after) return undefined;
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start++;
  let end = 0;
  while (end < before.length - start && end < after.length - start && before.at(-1 - end) === after.at(-1 - end)) end++;
  return { range: { start, end: before.length - end }, text: after.slice(start, after.length - end) };
}
