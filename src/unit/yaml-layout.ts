import activitySchema from "../../schemas/activity.schema.json";
import type { Line, Mend, MendEdit } from "./yaml-mend";

/*
 * Options that do not stand one under the other, which YAML cannot read.
 */

const kinds: readonly string[] = activitySchema.properties.make.enum;

/** `make: tiles, grid: 2 x 2`, `make: tiles grid: 2 x 2`: options in one line. A title may have colons of its own. */
export function optionsInLine(lines: readonly Line[]): Mend[] {
  return lines.flatMap(({ start, text }): Mend[] => {
    const [, indent = "", key, first] = /^([ \t]*)([a-z]+):[ \t]+([a-z]*)/u.exec(text) ?? [];
    if (key === undefined || key === "title" || /["'#]/.test(text)) return [];
    const sure = key === "make" && kinds.includes(first ?? "");
    const stops = [...text.matchAll(/(?<=\S)(?:[ \t]*[,;][ \t]*|[ \t]+)(?=[a-z]+:[ \t]+\S)/gu)].filter(
      ([sign]) => sure || /[,;]/.test(sign),
    );
    const [one] = stops;
    if (!one) return [];
    const edits = stops.map(({ index, 0: sign }): MendEdit => {
      return { start: start + index, end: start + index + sign.length, text: `\n${indent}` };
    });
    const at = one.index + one[0].length;
    return [
      {
        start: start + at,
        end: start + text.indexOf(":", at),
        message: "Each option stands on a line of its own.",
        title: "Put each option on a line of its own",
        edits,
      },
    ];
  });
}

/** `make: tiles` and `  grid: 2 x 2` below it: options that are not equally far in. What stands below a name without a value is its own. */
export function unevenOptions(lines: readonly Line[]): Mend[] {
  const edits: MendEdit[] = [];
  let parent: number | undefined;
  let level: number | undefined;
  let uneven = false;
  for (const line of lines) {
    const [, indent = "", value] = /^( *)[a-z][\w-]*:(?:[ \t]+(.*))?$/u.exec(line.text) ?? [];
    if (value === undefined && !/:[ \t]*$/.test(line.text)) continue;
    if (parent !== undefined && indent.length > parent) continue;
    parent = /\S/.test(value ?? "") ? undefined : indent.length;
    level ??= indent.length;
    uneven ||= indent.length !== level;
    if (indent !== "") edits.push({ start: line.start, end: line.start + indent.length, text: "" });
  }
  const [first] = edits;
  if (!uneven || !first) return [];
  return [
    {
      start: first.start,
      end: first.end,
      message: "Options stand one under the other, without spaces before them.",
      title: edits.length > 1 ? "Take the spaces before options out" : "Take the spaces out",
      edits,
    },
  ];
}
