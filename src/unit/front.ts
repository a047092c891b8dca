import type { LineIndex } from "../base/range";
import type { Steps } from "../base/steps";
import { frontElsewhere } from "./front-elsewhere";
import { type FrontLines, settingsIn } from "./front-lines";
import { insert, type Problems, write } from "./problems";
import { SourceText } from "./source-text";
import { hiddenHead } from "./traps/hidden-signs";
import type { Mapping } from "./unit";
import { readMapping } from "./yaml";

/** Front matter as it was read. */
export interface Front {
  readonly mapping: Mapping;
  /** Problems in it. */
  readonly problems: number;
  /** The line below it. */
  readonly body: number;
}

/** Lines that other programs, or those that correct what is typed, have instead of the hyphens; formatters make stars of them. */
const other = /^ {0,3}(?:\*{3,}|_{3,}|\+{3,}|;{3,}|={3,}|(?:-[ \t]+){2,}-|[‐-―−]+-?|--)\s*$/;

/** Reads the settings above a unit, with a pause where they are found. Never throws: what cannot be read is in `problems`. */
export function* readingFront(lines: LineIndex, problems: Problems): Steps<Front, undefined> {
  const found = findFront(lines, problems);
  yield;
  if (!found) {
    return { mapping: { range: { start: 0, end: 0 }, entries: [] }, problems: problems.list.length, body: 0 };
  }
  const { first, after, body } = found;
  const range = { start: lines.start(first), end: lines.start(after) };
  const content = lines.text.slice(range.start, range.end).replace(/\r\n?/g, "\n").replace(/\n$/, "");
  const source = SourceText.inLines(lines, first, content);
  yield;
  const mapping = readMapping(source, range, "front matter", problems, lines.newline);
  return { mapping, problems: problems.list.length, body };
}

/**
 * Finds the front matter: lines of settings between two lines of three hyphens at the beginning of a file. Where it surely was
 * meant (an option's name stands in it), blank lines before it and a wrong or missing end are problems, and it is read all
 * the same.
 */
function findFront(lines: LineIndex, problems: Problems): FrontLines | undefined {
  const textOf = (number: number): string => {
    const { start, end } = lines.line(number);
    return lines.text.slice(start, end).replace(hiddenHead, "");
  };
  const count = lines.count;
  let open = 0;
  while (open < count - 1 && textOf(open).trim() === "") open++;
  if (!other.test(textOf(open)) && !/^ {0,3}-{3,}\s*$/.test(textOf(open)))
    return frontElsewhere(lines, textOf, open, problems);
  const begins = open === 0 && /^---\s*$/.test(textOf(open));
  // A byte order mark is no part of the line.
  const head = { start: lines.line(open).end - textOf(open).length, end: lines.line(open).end };
  const first = open + 1;
  let close = first;
  while (close < count && !/^(?:---|\.\.\.)\s*$/.test(textOf(close))) close++;

  // Settings as far as they look like it.
  let end = first;
  const isSetting = (text: string): boolean => /^(?:\s*$|\s*#|[\w-]+[ \t]*[:=：]|[ \t]+\S|- )/u.test(text);
  while (end < count && isSetting(textOf(end)) && !other.test(textOf(end))) end++;
  const named = (stop: number): boolean => settingsIn(textOf, first, stop) > 0;

  const stars =
    !begins && open === 0 && (other.test(textOf(end)) || (other.test(textOf(0)) && textOf(end).startsWith("--")));
  if (end < close && stars && named(end)) {
    const [above, below] = [open, end].map((number) => ({
      start: lines.start(number) + lines.text.slice(lines.start(number)).search(/\S/),
      end: lines.line(number).end,
    }));
    if (!above || !below) return undefined;
    problems.add("unreadable-yaml", above, "Front matter stands between two lines of three hyphens.", {
      title: "Write three hyphens",
      edits: [above, below].map((place) => ({ range: place, text: "---" })),
    });
    return { first, after: end, body: end + 1 };
  }
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
      const newline = lines.newline;
      const at = lines.line(blank - 1).end;
      problems.add(
        "unreadable-yaml",
        head,
        "The front matter that begins here never ends; close it with a line of three hyphens.",
        insert("Close it below its settings", at, `${newline}---`),
      );
      return { first, after: blank, body: blank };
    }
    if (close === count) {
      if (begins)
        problems.add(
          "unreadable-yaml",
          head,
          "The front matter that begins here never ends; close it with a line of three hyphens.",
        );
      return undefined;
    }
  }

  if (!begins) {
    if (end < close || !named(close)) return undefined;
    const from = lines.text.startsWith("\uFEFF") ? 1 : 0;
    const range = {
      start: from,
      end: lines.start(open) + lines.text.slice(lines.start(open), head.end).trimEnd().length,
    };
    problems.add(
      "unreadable-yaml",
      head,
      "Front matter begins with three hyphens in the first line of a file, with nothing before them; so it is not read.",
      write("Begin the file with three hyphens", range, "---"),
    );
  }
  // Two thematic breaks with text between them are ordinary Markdown.
  const content = range(first, close).map(textOf);
  const filled = content.filter((line) => line.trim() !== "");
  const isOurs =
    content.some((line) => /^(?:[\w-]+|\s*"[\w-]+")[ \t]*:/.test(line)) ||
    (end >= close && named(close)) ||
    // Names in other languages.
    filled.every((line, i) => (i > 0 && /^(?:[ \t]|- |#)/.test(line)) || /^[\p{L}\p{M}_-]+[ \t]*:(?:\s|$)/u.test(line));
  if (filled.length > 0 && !isOurs) return undefined;
  return { first, after: close, body: close + 1 };
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);
}
