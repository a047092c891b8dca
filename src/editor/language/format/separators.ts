import type { TextEdit } from "../../../base/finding";
import type { Range } from "../../../base/range";
import { applied } from "../names/rename";
import type { Blocks } from "./blocks";

/** One space on both sides of the signs that count, and after a statement's mark. Other white space than blanks is meant. */
export function spaceSeparators({ unit, lines }: Blocks): readonly string[] {
  const edits: TextEdit[] = [];
  const write = (range: Range, wanted: string): void => {
    const written = unit.text.slice(range.start, range.end);
    if (written !== wanted && /^[ \t]*\S?[ \t]*$/.test(written) && written.trim() === wanted.trim())
      edits.push({ range, text: wanted });
  };
  for (const { pairs, statements } of unit.sections) {
    for (const { left, right } of pairs) {
      write({ start: left.range.end, end: right.range.start }, " = ");
      for (const { answers } of [left, right]) {
        answers.slice(1).forEach((answer, i) => {
          write({ start: answers[i]?.range.end ?? answer.range.start, end: answer.range.start }, " / ");
        });
      }
    }
    for (const { mark, range } of statements) write({ start: mark.end, end: range.start }, " ");
  }
  return edits.length === 0 ? lines : applied(unit.text, edits).split("\n");
}
