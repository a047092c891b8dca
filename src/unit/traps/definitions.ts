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

/** Lines of a word and of what it means: of the word, of the first meaning, and the one behind the last. */
type Defined = readonly [word: number, first: number, after: number];

/** The word that is defined on a line, and below it, perhaps below a blank line; undefined where none is. */
function defined(lines: LineIndex, line: number): Defined | undefined {
  if (line >= lines.count || !isShort(textOf(lines, line).trim())) return undefined;
  const isBlank = line + 1 < lines.count && textOf(lines, line + 1).trim() === "";
  const first = line + (isBlank ? 2 : 1);
  let after = first;
  while (meaningAt(lines, after) !== undefined) after++;
  return after > first ? [line, first, after] : undefined;
}

/** Whether a paragraph is such words; all that stand one below the other are told at the first. */
export function definitions(lines: LineIndex, [first, after]: readonly [number, number], problems: Problems): boolean {
  if (!defined(lines, first)) return false;
  const above = nextLine(lines, first - 1, -1);
  if (above !== undefined && meaningAt(lines, above) !== undefined) return true;
  const words: Defined[] = [];
  let line: number | undefined = first;
  while (line !== undefined) {
    const word = defined(lines, line);
    if (!word) break;
    words.push(word);
    line = nextLine(lines, word[2], 1);
  }
  const [head] = words;
  if (!head || !words.some(([, , end]) => end >= after)) return false;
  const at = (line: number): Range => {
    const text = textOf(lines, line);
    const start = lines.start(line);
    return { start: start + text.search(/\S/), end: start + text.trimEnd().length };
  };
  const part = (line: number, sign: string) => {
    const { end } = at(line);
    const text = meaningAt(lines, line) ?? "";
    return {
      range: { start: at(nextLine(lines, line - 1, -1) ?? line).end, end: end - text.length },
      text: ` ${sign} `,
    };
  };
  const { end } = at(head[1]);
  problems.tell(
    "pairs",
    "not-an-item",
    { start: end - (meaningAt(lines, head[1]) ?? "").length, end },
    "This is no pair: that begins with a hyphen and a space, and “ = ” stands between its sides, in one line.",
    {
      title: words.length > 1 ? "Make pairs of these lines" : "Make a pair of it",
      edits: words.flatMap(([word, from, last]) => [
        { range: { start: lines.start(word), end: at(word).start }, text: "- " },
        ...Array.from({ length: last - from }, (_, i) => part(from + i, i === 0 ? "=" : "/")),
      ]),
      unsure: true,
    },
  );
  return true;
}
