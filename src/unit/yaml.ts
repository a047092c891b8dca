import { isMap, isScalar, isSeq, parseDocument } from "yaml";
import type { Range } from "../base/range";
import { Recent } from "../base/recent";
import { type Problems, write } from "./problems";
import type { SourceText } from "./source-text";
import type { Entry, Mapping } from "./unit";

type Yaml = ReturnType<typeof parseDocument>;

const kept = new Recent<Yaml>(200);

/** Only ever looked at, so that one reading may serve the next. */
function parse(text: string): Yaml {
  return kept.get(text, () =>
    parseDocument(text, { prettyErrors: false, uniqueKeys: false, logLevel: "silent", stringKeys: true }),
  );
}

/** Reads a YAML mapping (YAML 1.2 core schema) with places. What is not a mapping becomes problems and no entries. */
export function readMapping(source: SourceText, range: Range, what: string, problems: Problems): Mapping {
  const document = parse(source.text);
  const said = new Set<number>();
  for (const error of document.errors) {
    const line = source.text.slice(0, error.pos[0]).split("\n").length;
    if (said.has(line)) continue;
    said.add(line);
    const [start, end] = error.pos;
    const stop = source.text.length;
    const place = source.range(Math.min(start, stop), Math.min(Math.max(end, start + 1), stop));
    const message = `This ${what} cannot be read: ${firstSentence(error.message)}`;
    problems.add("unreadable-yaml", place, message, ...quoteLine(source, start, error.message));
  }
  const broken = document.errors.length > 0 ? { broken: true as const } : {};
  const lineOf = (offset: number): number => source.text.slice(0, offset).split("\n").length;
  const brokenLines = new Set(document.errors.flatMap(({ pos }) => pos.map(lineOf)));
  const root = document.contents;
  if (root === null) return { range, entries: [], ...broken };
  if (!isMap(root)) {
    if (document.errors.length === 0) {
      const place = source.range(root.range?.[0] ?? 0, root.range?.[1] ?? source.text.length);
      problems.add("unreadable-yaml", place, `This ${what} needs lines of the form “name: value”.`);
    }
    return { range, entries: [], broken: true };
  }
  const entries: Entry[] = [];
  for (const { key, value } of root.items) {
    if (!isScalar(key) || !key.range || brokenLines.has(lineOf(key.range[0]))) continue;
    const keyRange = source.range(key.range[0], key.range[1]);
    const node = value as unknown;
    const at = nodeRange(node);
    const name = String(key.value);
    if (entries.some((entry) => entry.key === name)) {
      problems.add("option-twice", keyRange, `“${name}” stands here twice; the first one counts.`);
      continue;
    }
    entries.push({
      key: name,
      keyRange,
      value: toJson(node),
      valueRange: at ? source.range(at[0], trimEnd(source.text, at)) : { start: keyRange.end, end: keyRange.end },
      items: isSeq(node)
        ? node.items.map((item) => {
            const place = nodeRange(item);
            return place ? source.range(place[0], trimEnd(source.text, place)) : keyRange;
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
function quoteLine(source: SourceText, offset: number, error: string): ReturnType<typeof write>[] {
  const { text } = source;
  const start = text.lastIndexOf("\n", Math.max(0, offset - 1)) + 1;
  const end = text.indexOf("\n", start);
  const line = text.slice(start, end < 0 ? text.length : end);
  const match = /^(\s*[\w-]+:[ \t]+)([^[{"'\s].*?)\s*$/u.exec(line);
  if (!match?.[1] || !match[2] || !/[:#*&!|>%@`]/.test(match[2])) return [];
  const from = start + match[1].length;
  const to = from + match[2].length;
  const quoted = JSON.stringify(match[2]);
  const errors = (yaml: string): number => parse(yaml).errors.filter(({ message }) => message === error).length;
  if (errors(text.slice(0, from) + quoted + text.slice(to)) >= errors(text)) return [];
  return [write("Put it in quotation marks", source.range(from, to), quoted)];
}

function nodeRange(node: unknown): readonly [number, number] | undefined {
  if (typeof node !== "object" || node === null || !("range" in node)) return undefined;
  const { range } = node;
  return Array.isArray(range) ? [Number(range[0]), Number(range[1])] : undefined;
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

function firstSentence(message: string): string {
  const sentence = message.split("\n")[0] ?? message;
  return /[.!?]$/.test(sentence) ? sentence : `${sentence}.`;
}
