import type { LineIndex } from "../../base/range";
import type { RawItem } from "../items";
import { insert, type Problems } from "../problems";

const sign = /^[ \t]*(\d{1,9})[.)]/;

const stop = /[.!?…:;。！？।؟]\P{L}*$/u;

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
    problems.trap(
      "list-in-list",
      { start: end - whole.trimStart().length, end },
      `“${whole.trimStart()}” begins an event here, though the one above has not ended. With a backslash it is text of that.`,
      { ...insert("Write a backslash before its sign", end - 1, "\\"), unsure: true },
    );
  }
}
