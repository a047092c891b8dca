import type { Fix } from "../../base/finding";
import { readUnit } from "../../unit/read";
import type { Unit } from "../../unit/unit";

/** Headings of other levels, and those without the space behind their signs. */
const signs = /^ {0,3}[#＃]{1,6}[^\S\n]*(?=[^\s#＃])/u;

/** In a unit without sections: makes the last heading of another level above an activity, by its number, one of level two. */
export function otherHeading({ text, lines, activities }: Unit, index: number): Fix[] {
  const fence = activities[index]?.fence.start ?? 0;
  for (let number = lines.lineAt(fence) - 1; number >= 0; number--) {
    const { start, end } = lines.line(number);
    const line = text.slice(start, end);
    const name = line.replace(signs, "").trim();
    const below = lines.line(number + 1);
    const underlined = /^ {0,3}=+[ \t]*$/.test(text.slice(below.start, below.end)) && /^ {0,3}[^\s#>+*-]/.test(line);
    if (!signs.test(line) && !underlined) continue;
    const range = { start, end: underlined ? below.end : end };
    const edit = { range, text: `## ${name}` };
    // What looks like a heading may stand in a block of notes or in an item.
    const after = readUnit(text.slice(0, range.start) + edit.text + text.slice(range.end));
    if ((after.activities[index]?.section ?? -1) < 0) continue;
    return [{ title: `Make a section of “${name}”`, edits: [edit], preferred: true }];
  }
  return [];
}
