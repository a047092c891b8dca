import activitySchema from "../../schemas/activity.schema.json";
import frontSchema from "../../schemas/front-matter.schema.json";
import { keyed, type Line, type Mend } from "./yaml-mend";

/*
 * What YAML cannot read, and what was meant.
 */

/** `- make: board`: options need no hyphens. */
export function listOfOptions(lines: readonly Line[]): Mend[] {
  const written = lines.filter(({ text }) => /^[ \t]*[^\s#]/.test(text));
  const [first] = written;
  const hyphened = ({ text }: Line): boolean => /^- [\w-]+:(?:[ \t]|$)/.test(text);
  if (!first) return [];
  if (!hyphened(first)) return furtherHyphens(written, hyphened);
  const all = written.every(({ text }) => /^(?:- | {2})/.test(text));
  const touched = written.filter((line) => all || hyphened(line));
  return [
    {
      start: first.start,
      end: first.start + 1,
      message: "No hyphen stands before an option.",
      title: touched.length > 1 ? "Take the hyphens out" : "Take the hyphen out",
      edits: touched.map(({ start }) => ({ start, end: start + 2, text: "" })),
    },
  ];
}

/** `- grid: 2 x 2` below `make: tiles`; below a name without a value it is a list. */
function furtherHyphens(written: readonly Line[], hyphened: (line: Line) => boolean): Mend[] {
  const above = written.findIndex(hyphened) - 1;
  if (!/:[ \t]+[^\s#]/.test(written[above]?.text ?? "")) return [];
  const touched = written.filter(hyphened);
  const [start = 0] = touched.map((line) => line.start);
  const title = touched.length > 1 ? "Take the hyphens out" : "Take the hyphen out";
  const edits = touched.map((line) => ({ start: line.start, end: line.start + 2, text: "" }));
  return [{ start, end: start + 1, message: "No hyphen stands before an option.", title, edits }];
}

/** Options of every activity, and what front matter may say. */
const names: ReadonlySet<string> = new Set(Object.keys(activitySchema.properties));
const frontNames: ReadonlySet<string> = new Set(Object.keys(frontSchema.properties));

/** Lines that YAML cannot read; only taken where the text can be read better so. */
export function loudTraps(lines: readonly Line[], what: string): Mend[] {
  const kinds: readonly string[] = activitySchema.properties.make.enum;
  const made = lines.some(({ text }) => /^[ \t-]*make[ \t]*[:=：]/u.test(text));
  return lines.flatMap(({ start, text }, i): Mend[] => {
    const mend = (from: number, to: number, message: string, title: string, put: string): Mend[] => [
      {
        start: start + from,
        end: start + to,
        message,
        title,
        edits: [{ start: start + from, end: start + to, text: put }],
      },
    ];
    const word = text.trim();
    const indent = text.search(/\S|$/);
    if (what === "activity" && !made && kinds.includes(word))
      return mend(
        indent,
        indent + word.length,
        `What to make is written “make: ${word}”.`,
        `Write “make: ${word}”`,
        `make: ${word}`,
      );
    const bare = /^([ \t]*)([a-z]+)[ \t]+(?=[^\s:=：])/u.exec(text);
    // Kinds have options of their own; whoever names one begins a line with it.
    const known = (name: string): boolean =>
      what === "front matter" ? frontNames.has(name) : names.has(name) || (what === "activity" && made && indent === 0);
    if (bare?.[2] && known(bare[2]) && !/[:=：]/u.test(text))
      return mend(
        indent,
        indent + bare[2].length,
        "A colon and a space stand between an option and its value.",
        `Write “${bare[2]}: ”`,
        `${bare[2]}:`,
      );
    // A space that does not break the line is none to YAML.
    const sign =
      /^([ \t]*[A-Za-z][\w-]*)([ \t]*=[ \t]*|[^\S\n]*：[^\S\n]*|[^\S\n]*:(?![ \t])[^\S\n]+|[^\S\n \t]+:[ \t]*|:)(?=[^\s:=])/u.exec(
        text,
      );
    if (sign?.[1] && sign[2]) {
      const from = sign[1].length;
      const message = /^[^\S\n]*:[^\S\n]*$/u.test(sign[2])
        ? "A space stands behind the colon of an option."
        : `Between an option and its value stands a colon and a space, not “${sign[2].trim()}”.`;
      return mend(from, from + sign[2].length, message, `Write “${sign[1].trim()}: ”`, ": ");
    }
    const [, , key, value = ""] = keyed.exec(text) ?? [];
    // Before a line with a bare sign there is no name, so that it is no value.
    if (value === "" || (!key && /^[@`%?]/.test(value) && !/^\s*-/.test(text))) return [];
    const at = text.lastIndexOf(value);
    return valueTrap(value, lines[i + 1]?.text ?? "").map(({ message, title, put }) => ({
      start: start + at,
      end: start + at + value.length,
      message,
      title,
      // No space is left at the end of a line.
      edits: [
        {
          start: start + (put.startsWith("\n") ? text.slice(0, at).trimEnd().length : at),
          end: start + at + value.length,
          text: put,
        },
      ],
    }));
  });
}

/** A value that YAML cannot read to its end. */
function valueTrap(value: string, below: string): { message: string; title: string; put: string }[] {
  const first = value.charAt(0);
  if (/^- \S/.test(value)) {
    const indent = /^([ \t]+)- /.exec(below)?.[1];
    return [
      {
        message: "A list cannot begin behind the name of an option.",
        title: indent ? "Begin the list on the next line" : "Take the hyphen out",
        put: indent ? `\n${indent}${value}` : value.slice(2).trimStart(),
      },
    ];
  }
  if (first === '"' || first === "'") {
    const inner = value.slice(1, -1);
    if (value.length > 1 && value.endsWith(first)) {
      const put = first === "'" ? JSON.stringify(inner.replaceAll("''", "'")) : `'${inner.replaceAll("'", "''")}'`;
      if (!inner.includes(first)) return [];
      const other = first === "'" ? "double" : "single";
      return [{ message: `The text ends at the second ${first}.`, title: `Use ${other} quotation marks`, put }];
    }
    if (value.slice(1).includes(first)) {
      const message = `The text ends at the second ${first}, and more stands behind it.`;
      return [{ message, title: "Put all of it in quotation marks", put: JSON.stringify(value) }];
    }
    return [{ message: "The quotation mark is never closed.", title: "Close it at the end", put: value + first }];
  }
  if (first === "[" && !value.includes("]"))
    return [{ message: "The bracket is never closed.", title: "Close it at the end", put: `${value}]` }];
  if (first === "[" && !value.endsWith("]"))
    return [
      {
        message: "YAML reads the brackets as a list, and more stands behind them.",
        title: "Put all of it in quotation marks",
        put: JSON.stringify(value),
      },
    ];
  if (/^(?:[@`%]|\?[ \t])/.test(value))
    return [
      {
        message: `A value cannot begin with “${first}”. In quotation marks it stays as written.`,
        title: "Put it in quotation marks",
        put: JSON.stringify(value),
      },
    ];
  if (/^\{\s*[a-z][\w-]*\s*:(?:\s|$)/u.test(value) && !value.includes("}"))
    return [{ message: "The brace is never closed.", title: "Close it at the end", put: `${value} }` }];
  if (first === "{" && value.length > 1 && !value.includes("}"))
    return [
      {
        message: "YAML reads a brace as the beginning of a mapping. In quotation marks it stays as written.",
        title: "Put it in quotation marks",
        put: JSON.stringify(value),
      },
    ];
  return [];
}

/** Tabs at the beginning of lines, as two spaces each, as the depth of a list, or as nothing: what can be read best is taken. */
export function tabs(lines: readonly Line[]): Mend[][] {
  const tabbed = lines.filter(({ text }) => /^ *\t[ \t]*\S/.test(text));
  const [first] = tabbed;
  if (!first) return [];
  const indentOf = (text: string): string => /^[ \t]*/.exec(text)?.[0] ?? "";
  const mend = (put: (indent: string) => string): Mend[] => [
    {
      start: first.start,
      end: first.start + indentOf(first.text).length,
      message: "YAML cannot read a tab at the beginning of a line.",
      title: put("\t") === "" ? "Take it out" : "Write spaces instead",
      edits: tabbed.map(({ start, text }) => ({
        start,
        end: start + indentOf(text).length,
        text: put(indentOf(text)),
      })),
    },
  ];
  return [mend((indent) => indent.replaceAll("\t", "  ")), mend(() => "")];
}
