import { Composer, isMap, isScalar, isSeq, Lexer, Parser, parseDocument } from "yaml";
import type { Range } from "../base/range";
import { Recent } from "../base/recent";
import type { Steps } from "../base/steps";
import { drop, type Problems, write } from "./problems";
import type { SourceText } from "./source-text";
import type { Entry, Mapping } from "./unit";
import { hasOption } from "./yaml-layout";
import { type Mend, mendedText, unmended } from "./yaml-mend";
import { findMends, type Outcome } from "./yaml-mends";
import { otherDigits, textOptions } from "./yaml-signs";

/** What reads YAML, a part of it at each step: so it is there when a text is read, which takes one step. */
export function* practisingYaml(text: string): Steps<void, undefined> {
  const all = (found: Iterable<unknown>): void => void [...found];
  all(new Lexer().lex(text));
  yield;
  const tokens = [...new Parser().parse(text)];
  yield;
  all(new Composer().compose(tokens));
  yield;
  parse(text);
}

type Yaml = ReturnType<typeof parseDocument>;

const kept = new Recent<Yaml>(200);

/** Only ever looked at, so that one reading may serve the next. */
function parse(text: string): Yaml {
  return kept.get(text, () =>
    parseDocument(text, { prettyErrors: false, uniqueKeys: false, logLevel: "silent", stringKeys: true }),
  );
}

/**
 * Reads a YAML mapping (YAML 1.2 core schema) with places. What is not a mapping becomes problems and no entries. `newline`: what ends
 * the lines of the file.
 */
export function readMapping(
  source: SourceText,
  range: Range,
  what: string,
  problems: Problems,
  newline = "\n",
): Mapping {
  const mends = findMends(source.text, what, outcome);
  for (const { start, end, message, title, edits } of mends) {
    problems.add("unreadable-yaml", source.range(start, end), message, {
      title,
      edits: edits.map((edit) => ({
        range: placeOf(source, edit.start, edit.end),
        text: edit.text.replaceAll("\n", newline),
      })),
    });
  }
  const text = mendedText(source.text, mends);
  const back = (offset: number): number => Math.min(unmended(mends, offset), source.text.length);
  const rangeOf = (start: number, end: number): Range => source.range(back(start), back(end));
  const document = parse(text);
  const said = new Set<number>();
  const lineOf = (offset: number): number => text.slice(0, offset).split("\n").length;
  for (const error of document.errors) {
    const [start, end] = error.pos;
    if (said.has(lineOf(start))) continue;
    said.add(lineOf(start));
    const message = `This ${what} cannot be read: ${plainFault(error.code, error.message)}`;
    const quote = quoteLine(text, start, error.message);
    const fix = quote && write("Put it in quotation marks", rangeOf(quote.from, quote.to), quote.quoted);
    const fixes = fix && quote ? [hasOption(quote.quoted, what) ? { ...fix, unsure: true as const } : fix] : [];
    problems.add("unreadable-yaml", rangeOf(start, Math.max(end, start + 1)), message, ...fixes);
  }
  const broken = document.errors.length > 0 || mends.length > 0 ? { broken: true as const } : {};
  const brokenLines = new Set(document.errors.flatMap(({ pos }) => pos.map(lineOf)));
  const root = document.contents;
  if (root === null) return { range, entries: [], ...broken };
  if (!isMap(root)) {
    if (document.errors.length === 0) {
      const place = rangeOf(root.range?.[0] ?? 0, root.range?.[1] ?? text.length);
      problems.add("unreadable-yaml", place, `This ${what} needs lines of the form “name: value”.`);
    }
    return { range, entries: [], broken: true };
  }
  const entries: Entry[] = [];
  for (const { key, value } of root.items) {
    if (!isScalar(key) || !key.range || brokenLines.has(lineOf(key.range[0]))) continue;
    const keyRange = rangeOf(key.range[0], key.range[1]);
    const node = value as unknown;
    const at = nodeRange(node);
    const name = String(key.value);
    if (entries.some((entry) => entry.key === name)) {
      const whole = linesOf(text, key.range[0], at?.[1] ?? key.range[1]);
      const fixes = whole ? [drop("Take this one out", placeOf(source, back(whole.start), back(whole.end)))] : [];
      problems.add("option-twice", keyRange, `“${name}” stands here twice; the first one counts.`, ...fixes);
      continue;
    }
    if (!textOptions.has(name)) {
      for (const { written, value, start } of numbersIn(node)) {
        const other = otherDigits(written, value);
        const place = rangeOf(start, start + written.length);
        if (other)
          problems.add("unreadable-yaml", place, other.message, write(`Write “${other.put}”`, place, other.put));
      }
    }
    const within = at ? { start: back(at[0]), end: back(trimEnd(text, at)) } : { start: 0, end: 0 };
    entries.push({
      key: name,
      keyRange,
      value: toJson(node),
      ...(mends.some((mend) => changes(source.text, mend, within)) ? { mended: true as const } : {}),
      valueRange: at ? rangeOf(at[0], trimEnd(text, at)) : { start: keyRange.end, end: keyRange.end },
      items: isSeq(node)
        ? node.items.map((item) => {
            const place = nodeRange(item);
            return place ? rangeOf(place[0], trimEnd(text, place)) : keyRange;
          })
        : [],
    });
  }
  return { range, entries, ...broken };
}

/**
 * Where a line's value has a colon or another sign that YAML takes for its own: the value in quotation marks, if that makes the
 * error go away.
 */
function quoteLine(
  text: string,
  offset: number,
  error: string,
): { readonly from: number; readonly to: number; readonly quoted: string } | undefined {
  const start = text.lastIndexOf("\n", Math.max(0, offset - 1)) + 1;
  const end = text.indexOf("\n", start);
  const line = text.slice(start, end < 0 ? text.length : end);
  const match = /^(\s*[\w-]+:[ \t]+)([^[{"'\s].*?)\s*$/u.exec(line);
  if (!match?.[1] || !match[2] || !/[:#*&!|>%@`]/.test(match[2])) return undefined;
  const from = start + match[1].length;
  const to = from + match[2].length;
  const quoted = JSON.stringify(match[2]);
  const errors = (yaml: string): { readonly such: number; readonly lines: number } => {
    const all = parse(yaml).errors;
    const lines = new Set(all.map(({ pos: [at] }) => yaml.lastIndexOf("\n", at - 1)));
    return { such: all.filter(({ message }) => message === error).length, lines: lines.size };
  };
  const [now, then] = [errors(text), errors(text.slice(0, from) + quoted + text.slice(to))];
  // In what is no mapping at all the line stays wrong, for another reason.
  return then.such < now.such && then.lines < now.lines ? { from, to, quoted } : undefined;
}

/** The lines of an option that stands on lines of its own: with the line ending behind it, else the one before it. */
function linesOf(
  text: string,
  key: number,
  valueEnd: number,
): { readonly start: number; readonly end: number } | undefined {
  const start = text.lastIndexOf("\n", key - 1) + 1;
  const end = trimEnd(text, [key, valueEnd]);
  const rest = /^[ \t]*(?:#.*)?(\n|$)/.exec(text.slice(end));
  if (!rest || text.slice(start, key).trim() !== "") return undefined;
  const after = end + rest[0].length;
  return rest[1] === "" ? { start: Math.max(0, start - 1), end: after } : { start, end: after };
}

/** Whether a mend writes over a part of a value, other than the white space in it. */
function changes(text: string, { edits }: Mend, value: Range): boolean {
  return edits.some(
    ({ start, end }) => value.start <= start && end <= value.end && text.slice(start, end).trim() !== "",
  );
}

/** The place of an edit: one that ends with a line ending ends where the next line's own text begins. */
function placeOf(source: SourceText, start: number, end: number): Range {
  if (end === start || source.text.charAt(end - 1) !== "\n") return source.range(start, end);
  return { start: source.source(start), end: source.source(end) };
}

function outcome(text: string): Outcome {
  const { errors, contents } = parse(text);
  return {
    faults: errors.length + (contents === null || isMap(contents) ? 0 : 1),
    value: JSON.stringify(toJson(contents)),
  };
}

function nodeRange(node: unknown): readonly [number, number] | undefined {
  if (typeof node !== "object" || node === null || !("range" in node)) return undefined;
  const { range } = node;
  return Array.isArray(range) ? [Number(range[0]), Number(range[1])] : undefined;
}

interface WrittenNumber {
  readonly written: string;
  readonly value: number;
  readonly start: number;
}

/** All numbers in a value, as written. */
function numbersIn(node: unknown): WrittenNumber[] {
  if (isSeq(node)) return node.items.flatMap(numbersIn);
  if (isMap(node)) return node.items.flatMap(({ value }) => numbersIn(value));
  const start = nodeRange(node)?.[0];
  if (!isScalar(node) || typeof node.value !== "number" || start === undefined) return [];
  return [{ written: node.source ?? "", value: node.value, start }];
}

function trimEnd(text: string, [start, end]: readonly [number, number]): number {
  return start + text.slice(start, end).trimEnd().length;
}

function toJson(node: unknown): unknown {
  if (isScalar(node)) return node.value;
  if (isSeq(node)) return node.items.map(toJson);
  if (isMap(node))
    return Object.fromEntries(
      node.items.map(({ key, value }) => [String(isScalar(key) ? key.value : key), toJson(value)]),
    );
  return null;
}

/** What the parser's codes mean to one who never saw YAML. */
const faults: Readonly<Record<string, string>> = {
  BAD_ALIAS: "an asterisk refers to something that is not there.",
  BAD_COLLECTION_TYPE: "this is a list or a mapping where another is named.",
  BAD_DQ_ESCAPE:
    "in double quotation marks a backslash stands only before certain signs; single ones take it as it is.",
  BAD_INDENT: "this line stands too far in, or not far enough.",
  BAD_SCALAR_START: "a value cannot begin with this sign. In quotation marks it can.",
  BLOCK_AS_IMPLICIT_KEY: "a value with a colon and a space in it stands in quotation marks.",
  BLOCK_IN_FLOW: "lines with hyphens or names cannot stand in brackets.",
  MISSING_CHAR: "a sign is missing here: a comma, a colon, a bracket or a quotation mark.",
  MULTILINE_IMPLICIT_KEY: "a name and its colon stand on one line.",
  MULTIPLE_ANCHORS: "“&” stands here twice.",
  MULTIPLE_DOCS: "a line of three hyphens ends it here.",
  MULTIPLE_TAGS: "“!” stands here twice.",
  TAB_AS_INDENT: "a tab stands at the beginning of a line; YAML takes only spaces there.",
  TAG_RESOLVE_FAILED: "“!” names a type that is not known.",
  UNEXPECTED_TOKEN:
    "this stands where nothing more is expected. A value with signs of its own stands in quotation marks.",
};

function plainFault(code: string, message: string): string {
  const plain = faults[code];
  if (plain !== undefined) return plain;
  const sentence = message.split("\n")[0] ?? message;
  return /[.!?]$/.test(sentence) ? sentence : `${sentence}.`;
}
