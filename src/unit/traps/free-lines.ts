import type { LineIndex } from "../../base/range";
import type { RawItem } from "../items";
import type { Problems } from "../problems";
import { column } from "./nesting";

/*
 * Lines without bullets below an event that ends in a colon, which were meant to follow it in any order. Below a sentence a line may be
 * its second one, and a line alone may be the end of the first: such are left as they are.
 */

/** A few words and no sentence, with a comma or a semicolon behind it perhaps. */
const few = /^(?!\p{L}[.)]\s)[\p{L}\p{N}\p{Pi}"'¿¡][^.!?…:：。]*$/u;

/** No program breaks a line where the first words of the next one would still have stood within so many characters. */
const wrapped = 60;

/** `um selim` and `uma roda` below `2. Ela procura:`. Whether there are such lines. */
export function freeLines(lines: LineIndex, { text: source, block, nested }: RawItem, problems: Problems): boolean {
  const [first = "", ...below] = source.text.split("\n").map((line) => line.trim());
  if (below.length < 2 || nested.length > 0 || !/[:：]$/u.test(first)) return false;
  if (!below.every((line) => few.test(line) && line.split(/\s+/).length <= 4)) return false;
  const all = [first, ...below];
  if (below.some((line, i) => `${all[i]} ${line.split(/\s/, 1)[0]}`.length > wrapped)) return false;
  const under = " ".repeat(column(lines.text.slice(block.start, source.source(0))));
  const from = lines.lineAt(source.source(0)) + 1;
  const places = below.map((line, i) => {
    const { start } = lines.line(from + i);
    return { start, at: start + lines.text.slice(start).indexOf(line) };
  });
  const [head] = places;
  if (!head) return false;
  problems.trap(
    "not-an-item",
    { start: head.at, end: head.at + (below[0] ?? "").length },
    "This line goes on the event above it, with which it is printed; what follows an event in any order stands behind bullets under it.",
    {
      title: "Make bullets of these lines",
      edits: places.flatMap(({ start, at }, i) => {
        const line = below[i] ?? "";
        const comma = /\s*[,;，；]$/u.exec(line)?.[0].length ?? 0;
        const end = at + line.length;
        return [
          { range: { start, end: at }, text: `${under}- ` },
          ...(comma > 0 ? [{ range: { start: end - comma, end }, text: "" }] : []),
        ];
      }),
      unsure: true,
    },
  );
  return true;
}
