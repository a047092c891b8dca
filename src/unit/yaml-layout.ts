import activitySchema from "../../schemas/activity.schema.json";
import frontSchema from "../../schemas/front-matter.schema.json";
import type { Line, Mend, MendEdit } from "./yaml-mend";

/*
 * Options that do not stand one under the other, which YAML cannot read.
 */

const kinds: readonly string[] = activitySchema.properties.make.enum;

const settings: ReadonlySet<string> = new Set(Object.keys(frontSchema.properties));
/**
 * Whether an option may follow within a value: `title: A roda, grid: 2 x 2` may be one title, or two options. Kinds have options of
 * their own. `what` as in `findMends`.
 */
export function hasOption(value: string, what: string): boolean {
  return [...value.matchAll(/[,;|]\s*([a-z]+):\s/gu)].some(
    ([, name = ""]) => what === "activity" || settings.has(name),
  );
}

/** Settings whose values are one word. */
const oneWord: ReadonlySet<string> = new Set(["teaches", "explains", "paper"]);

/**
 * `make: tiles, grid: 2 x 2`, `make: tiles grid: 2 x 2`: options in one line, and `teaches: pt, explains: en`. A title may have colons
 * of its own. `what` as in `findMends`.
 */
export function optionsInLine(lines: readonly Line[], what: string): Mend[] {
  const ofUnit = what !== "activity";
  return lines.flatMap(({ start, text }): Mend[] => {
    const [, indent = "", key, first] = /^([ \t]*)([a-z]+):[ \t]+([a-z]*)/u.exec(text) ?? [];
    if (key === undefined || key === "title" || /["'#]/.test(text)) return [];
    // The front matter of other programs has names of theirs.
    if (ofUnit && !settings.has(key)) return [];
    const sure = ofUnit ? oneWord.has(key) : key === "make" && kinds.includes(first ?? "");
    const stops = [...text.matchAll(/(?<=\S)(?:[ \t]*[,;|][ \t]*|[ \t]+)(?=([a-z]+):[ \t]+\S)/gu)].filter(
      ([sign, next = ""]) => (sure || /[,;|]/.test(sign)) && (!ofUnit || settings.has(next)),
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
