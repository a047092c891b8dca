import type { LineIndex } from "../../base/range";
import { type Problems, write } from "../problems";
import { textOf } from "./lines";

/*
 * Headings without the space behind their number signs.
 */

const tight = /^([^\S\n]{0,3})(#{1,6}|＃{2,6}[ \t]*)([^\S\n]*)(?=[^\s#＃])/u;

const heading = /^[ \t]{0,3}(#{1,6})[ \t]+\S/;

/** An item of any shape, and one that is no card: a pair, a statement or an event. */
const item = /^[ \t]{0,3}(?:[-*+]|\d{1,9}[.)])[ \t]+\S/;
const shaped = /^[ \t]{0,3}(?:\d{1,9}[.)][ \t]+\S|[-*+][ \t]+(?:\[[ xX]\]\s|.*\s[=＝]\s))/u;

/** The first line from one on that is not blank. */
function lineFrom(lines: LineIndex, from: number): string {
  let number = from;
  while (number < lines.count && textOf(lines, number).trim() === "") number++;
  return number < lines.count ? textOf(lines, number) : "";
}

/** Whether items stand between a line and the heading of its section, and the depth of the last deeper heading there. */
function above(lines: LineIndex, line: number): { readonly items: boolean; readonly deeper: number | undefined } {
  let items = false;
  let deeper: number | undefined;
  for (let number = line - 1; number >= 0; number--) {
    const text = textOf(lines, number);
    const depth = heading.exec(text)?.[1]?.length ?? 0;
    if (depth === 1 || depth === 2) break;
    if (depth > 2) deeper ??= depth;
    items ||= item.test(text);
  }
  return { items, deeper };
}

/**
 * `##Gemüse`. Four signs or more where no heading stands between it and its section skip a depth: above pairs, statements or events a
 * further section is meant, as it is by one sign between items, unless those are in piles. `#A1` right below a heading is a tag. `alone` says that nothing else
 * stands in its paragraph.
 */
export function tightHeading(lines: LineIndex, number: number, alone: boolean, problems: Problems): void {
  const { start, end } = lines.line(number);
  const match = tight.exec(lines.text.slice(start, end));
  // Of white space Markdown skips spaces only, and asks for one behind the signs.
  const lead = /^[ \t]*/.exec(match?.[1] ?? "")?.[0].length ?? 0;
  if (!match || (lead === match[1]?.length && /^[ \t]/.test(match[3] ?? ""))) return;
  const depth = match[2]?.trim().length ?? 0;
  const at = start + lead;
  const sign = { start: at, end: start + match[0].length };
  const name = lines.text.slice(sign.end, end).trim();
  const next = lineFrom(lines, number + 1);
  const { items, deeper } = above(lines, number);
  const wanted = "#".repeat(deeper !== undefined && !shaped.test(next) ? deeper : 2);
  const meant = { ...write(`Write “${wanted} ${name}”`, sign, `${wanted} `), unsure: true as const };
  if (depth === 1 && !(alone && items && item.test(next) && /^\p{Lu}[^#]*$/u.test(name))) return;
  const spaced = write("Put a space there", sign, `${"#".repeat(depth)} `);
  const skips = depth > 3 && deeper === undefined && shaped.test(next);
  problems.trap(
    "not-a-heading",
    { start: at, end },
    "This line is no heading: number signs and a space stand before its text.",
    ...(depth === 1 ? [meant] : skips ? [meant, { ...spaced, unsure: true as const }] : [spaced]),
  );
}
