import schema from "../../schemas/front-matter.schema.json";
import type { LineIndex } from "../base/range";
import { insert, type Problems, write } from "./problems";

/** Numbers of lines: where the settings begin, the line after them, and the line that Markdown begins at. */
export interface FrontLines {
  readonly first: number;
  readonly after: number;
  readonly body: number;
}

/**
 * Finds the front matter: lines of settings between two lines of three hyphens at the beginning of a file. Where it surely was
 * meant (an option's name stands in it), blank lines before it and a wrong or missing end are problems, and it is read all
 * the same.
 */
export function findFront(lines: LineIndex, problems: Problems): FrontLines | undefined {
  const textOf = (number: number): string => {
    const { start, end } = lines.line(number);
    return lines.text.slice(start, end).replace(/^\uFEFF/, "");
  };
  const count = lines.count;
  let open = 0;
  while (open < count - 1 && textOf(open).trim() === "") open++;
  // Formatters make stars of hyphens that begin no front matter.
  const rule = /^ {0,3}(-{3,}|\*{3,}|_{3,})\s*$/.exec(textOf(open));
  if (!rule) return undefined;
  const begins = open === 0 && /^---\s*$/.test(textOf(open));
  const first = open + 1;
  let close = first;
  while (close < count && !/^(?:---|\.\.\.)\s*$/.test(textOf(close))) close++;

  // Settings as far as they look like it.
  let end = first;
  while (end < count && /^(?:\s*$|\s*#|[\w-]+[ \t]*[:=：]|[ \t]+\S|- )/u.test(textOf(end))) end++;
  const named = (stop: number): boolean =>
    range(first, stop).some((number) => {
      const name = /^([\w-]+)[ \t]*[:=：]/u.exec(textOf(number))?.[1];
      return name !== undefined && Object.hasOwn(schema.properties, name);
    });

  if (end < close && /^-{2,}\s*$/.test(textOf(end)) && named(end)) {
    const place = { start: lines.start(end), end: lines.start(end) + textOf(end).trimEnd().length };
    problems.add(
      "unreadable-yaml",
      place,
      "The front matter ends with a line of three hyphens.",
      write("Write three hyphens", place, "---"),
    );
    close = end;
  } else {
    const blank = range(first, Math.min(end, count)).find((number) => textOf(number).trim() === "") ?? end;
    const swallows = range(blank, close).some((number) => /^(?:## |```)/.test(textOf(number)));
    if (blank > first && named(blank) && (swallows || close === count) && begins) {
      const newline = lines.text.includes("\r\n") ? "\r\n" : "\n";
      const at = lines.line(blank - 1).end;
      problems.add(
        "unreadable-yaml",
        lines.line(open),
        "The front matter that begins here never ends; close it with a line of three hyphens.",
        insert("Close it below its settings", at, `${newline}---`),
      );
      return { first, after: blank, body: blank };
    }
    if (close === count) {
      if (begins)
        problems.add(
          "unreadable-yaml",
          lines.line(open),
          "The front matter that begins here never ends; close it with a line of three hyphens.",
        );
      return undefined;
    }
  }

  if (!begins) {
    if (end < close || !named(close)) return undefined;
    const from = lines.text.startsWith("\uFEFF") ? 1 : 0;
    const sign = lines.start(open) + lines.text.slice(lines.start(open)).search(/[-*_]/);
    const range = { start: from, end: sign + (rule[1]?.length ?? 3) };
    problems.add(
      "unreadable-yaml",
      lines.line(open),
      "Front matter begins with three hyphens in the first line of a file, with nothing before them; so it is not read.",
      write("Begin the file with three hyphens", range, "---"),
    );
  }
  // Two thematic breaks with text between them are ordinary Markdown.
  const content = range(first, close).map(textOf);
  if (content.some((line) => line.trim() !== "") && !content.some((line) => /^[\w-]+[ \t]*:/.test(line)))
    return undefined;
  return { first, after: close, body: close + 1 };
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);
}
