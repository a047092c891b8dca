import type { LineIndex, Range } from "../../base/range";
import type { Problems } from "../problems";
import { textOf } from "./lines";
import { nextLine } from "./numbered-lines";

/*
 * Words with what they mean below them, as other dialects of Markdown have them: `o saco`, and in the next line `: the bag`.
 */

const meaning = /^[ \t]{0,3}[:：](?:[ \t]+|(?<=：))(\S.*?)[ \t]*$/u;

/** A few words and no sentence, which begin with no sign. */
const isShort = (text: string): boolean =>
  /^[\p{L}\p{N}\p{Pi}"'¿¡*_(]/u.test(text) &&
  !/[=＝|｜<`]|[.:;,：]$|^\d+[.)]/u.test(text) &&
  text.split(/\s+/).length <= 6;

const meaningAt = (lines: LineIndex, line: number): string | undefined => {
  const found = line < lines.count ? meaning.exec(textOf(lines, line))?.[1] : undefined;
  return found !== undefined && isShort(found) ? found : undefined;
};

/** The line behind a word and what it means; undefined where no such word begins. */
function defined(lines: LineIndex, line: number): number | undefined {
  if (line >= lines.count || !isShort(textOf(lines, line).trim())) return undefined;
  let after = line + 1;
  while (meaningAt(lines, after) !== undefined) after++;
  return after > line + 1 ? after : undefined;
}

/** Whether a paragraph is such words; all that stand one below the other are told at the first. */
export function definitions(lines: LineIndex, [first, after]: readonly [number, number], problems: Problems): boolean {
  if (after - first < 2 || defined(lines, first) === undefined) return false;
  const above = nextLine(lines, first - 1, -1);
  if (above !== undefined && meaningAt(lines, above) !== undefined) return true;
  const words: (readonly [number, number])[] = [];
  let line: number | undefined = first;
  while (line !== undefined) {
    const end = defined(lines, line);
    if (end === undefined) break;
    words.push([line, end]);
    line = nextLine(lines, end, 1);
  }
  if (!words.some(([, end]) => end >= after)) return false;
  const at = (line: number): Range => {
    const text = textOf(lines, line);
    const start = lines.start(line);
    return { start: start + text.search(/\S/), end: start + text.trimEnd().length };
  };
  const part = (line: number, sign: string) => {
    const { end } = at(line);
    const text = meaningAt(lines, line) ?? "";
    return { range: { start: at(line - 1).end, end: end - text.length }, text: ` ${sign} ` };
  };
  const { end } = at(first + 1);
  problems.tell(
    "pairs",
    "not-an-item",
    { start: end - (meaningAt(lines, first + 1) ?? "").length, end },
    "This is no pair: that begins with a hyphen and a space, and “ = ” stands between its sides, in one line.",
    {
      title: words.length > 1 ? "Make pairs of these lines" : "Make a pair of it",
      edits: words.flatMap(([word, last]) => [
        { range: { start: lines.start(word), end: at(word).start }, text: "- " },
        ...Array.from({ length: last - word - 1 }, (_, i) => part(word + 1 + i, i === 0 ? "=" : "/")),
      ]),
      unsure: true,
    },
  );
  return true;
}
