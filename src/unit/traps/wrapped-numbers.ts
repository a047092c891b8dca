import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../../base/range";
import { stops } from "../../base/stops";
import type { RawItem } from "../items";
import { insert, type Problems } from "../problems";
import { textOf } from "./lines";

const sign = /^[ \t]*(\d{1,9})[.)]/;

const stop = new RegExp(String.raw`[${stops}:;]\P{L}*$`, "u");

const numberedLine = /^[ \t]{0,3}(\d{1,9})[.)][ \t]+(\S.*)/;

const pair = /\S\s[=＝]\s/u;

/**
 * How sure it is that a numbered line below other text of its paragraph, which begins at `first`, was meant as an item: `am` and below it
 * `12. Mai` are one sentence that was broken into lines. Undefined for a line that Markdown reads as it was meant, or with no number.
 */
export function swallowedNumber(
  lines: LineIndex,
  [first, number]: readonly [number, number],
  inItem: boolean,
): "surely" | "perhaps" | "broken" | undefined {
  const [, count, rest = ""] = (number > first && numberedLine.exec(textOf(lines, number))) || [];
  if (count === undefined) return undefined;
  const above = textOf(lines, number - 1);
  const below = number + 1 < lines.count ? Number(sign.exec(textOf(lines, number + 1))?.[1]) : Number.NaN;
  if (stop.test(above) || below === Number(count) + 1 || /^\[[ xX]?\]/.test(rest)) return "surely";
  if (pair.test(rest) && pair.test(above)) return "surely";
  return count === "2" && !inItem ? "perhaps" : "broken";
}

/**
 * `1. Der Kahn fährt im Jahr` and below it `2025. aufs Meer.`: a number of a sentence that has come to the beginning of a line, as in a text that an
 * editor has broken into lines, begins an event. Told where the item above has not ended and what comes after it counts on from there.
 */
export function wrappedNumbers(lines: LineIndex, events: readonly RawItem[], problems: Problems): void {
  const found = events.map(({ block }) => sign.exec(lines.text.slice(block.start, block.start + 20)));
  const numbers = found.map((match) => Number(match?.[1] ?? Number.NaN));
  for (const [i, { block }] of events.entries()) {
    const [above, number = Number.NaN, below] = [numbers[i - 1], numbers[i], numbers[i + 1]];
    const whole = found[i]?.[0];
    if (above === undefined || whole === undefined || number <= above + 1) continue;
    if (below === undefined ? number < above + 20 : below !== above + 1) continue;
    if (stop.test(events[i - 1]?.text.text.trimEnd() ?? "")) continue;
    const end = block.start + whole.length;
    begun({ start: end - whole.trimStart().length, end }, whole.trimStart(), problems);
  }
}

function begun(range: Range, number: string, problems: Problems): void {
  problems.trap(
    "list-in-list",
    range,
    `“${number}” begins an event here, though the item above has not ended. With a backslash it is text of that.`,
    { ...insert("Write a backslash before its sign", range.end - 1, "\\"), unsure: true },
  );
}

/**
 * `- [x] Der Kahn fährt um` and below it `9. Uhr ab.`, with nothing before its number: the one event of a list right below a statement that
 * has not ended. `next`: where its list begins.
 */
export function wrappedBelow(
  lines: LineIndex,
  { block, text }: RawItem,
  [tokens, next]: readonly [readonly Token[], number],
  problems: Problems,
): void {
  const [list, item] = [tokens[next], tokens[next + 1]];
  if (list?.type !== "ordered_list_open" || !list.map || !item?.map || item.map[1] < list.map[1]) return;
  const { start } = lines.line(list.map[0]);
  const line = textOf(lines, list.map[0]);
  const number = sign.exec(line)?.[0];
  if (number === undefined || start > block.end + lines.newline.length) return;
  if (stop.test(text.text.trimEnd()) || Number.parseInt(number, 10) === 1) return;
  begun({ start, end: start + number.length }, number.trimStart(), problems);
}
