import { lineStart } from "../../base/range";

/*
 * Where in a unit's YAML a place is: in an activity block, a plan of stations or the front matter, at a key or at a value. It
 * works on text that is being typed, so it looks at lines rather than at parsed YAML.
 */

/** YAML inside a unit. Offsets are UTF-16 units of the unit's text, `end` exclusive. */
export interface YamlBlock {
  readonly kind: "activity" | "stations" | "front" | "settings";
  readonly start: number;
  readonly end: number;
}

interface Token {
  /** Where what is being typed starts, and where the whole word or value ends. */
  readonly start: number;
  readonly end: number;
}

export interface KeySpot extends Token {
  readonly at: "key";
  /** A colon stands behind it already. */
  readonly colon: boolean;
}

export interface ValueSpot extends Token {
  readonly at: "value";
  readonly key: string;
  /** What is there before the place, without quotes. */
  readonly typed: string;
  /** The quotation mark that it begins with, or nothing. */
  readonly quote: "" | '"' | "'";
  /** An item of a list, in brackets or after a dash. */
  readonly item: boolean;
  /** In brackets. */
  readonly flow: boolean;
  /** The list's other items, as written without quotes. */
  readonly others: readonly string[];
}

const fence = /^ {0,3}(`{3,}|~{3,})[ \t]*([^\s`]*)[^`]*$/;

/** The block that holds the offset, ends included; undefined in prose. */
export function blockAt(text: string, offset: number): YamlBlock | undefined {
  let open:
    | { readonly marker: string; readonly kind: "activity" | "stations" | "front" | "other"; readonly start: number }
    | undefined;
  for (const { start, next: after, line } of linesOf(text)) {
    if (!open && start > offset) return undefined;
    if (!open) {
      const [, marker] = fence.exec(line) ?? [];
      if (marker) open = { ...(openedIn(line) ?? { marker, kind: "other" }), start: after };
      else if (start === 0 && line.trimEnd() === "---") open = { marker: "---", kind: "front", start: after };
    } else {
      // An activity that is not closed yet does not take the next one with it.
      const next = open.kind === "activity" || open.kind === "stations" ? openedIn(line) : undefined;
      if (!next && !closes(line, open.marker)) continue;
      if (open.kind !== "other" && offset >= open.start && offset < start)
        return { kind: open.kind, start: open.start, end: start };
      open = next && { ...next, start: after };
    }
  }
  return open && open.kind !== "other" && offset >= open.start
    ? { kind: open.kind, start: open.start, end: text.length }
    : undefined;
}

/** The activity or plan that a line begins. */
function openedIn(line: string): { readonly marker: string; readonly kind: "activity" | "stations" } | undefined {
  const [, marker, word] = fence.exec(line) ?? [];
  return marker && (word === "activity" || word === "stations") ? { marker, kind: word } : undefined;
}

/** A `cutwork.yml` is YAML as a whole. */
export function settingsBlock(text: string): YamlBlock {
  return { kind: "settings", start: 0, end: text.length };
}

function closes(line: string, marker: string): boolean {
  const bare = line.trim();
  if (marker === "---") return /^(---|\.\.\.)$/.test(bare);
  return bare.length >= marker.length && bare === marker.charAt(0).repeat(bare.length);
}

/** What stands at the offset. Undefined in comments and wherever neither a key nor a value can be. */
export function spotAt(text: string, block: YamlBlock, offset: number): KeySpot | ValueSpot | undefined {
  const start = Math.max(block.start, lineStart(text, offset));
  const lineEnd = text.slice(offset, block.end).search(/[\r\n]/);
  const end = lineEnd < 0 ? block.end : offset + lineEnd;
  const before = text.slice(start, offset);
  const after = text.slice(offset, end);

  if (/^[\w-]*$/.test(before) && !before.startsWith("- ") && before !== "-") {
    const rest = /^[\w-]*/.exec(after)?.[0] ?? "";
    return { at: "key", start, end: offset + rest.length, colon: /^\s*:/.test(after.slice(rest.length)) };
  }
  const [, key, value] = /^([\w-]+)[ \t]*:(?:[ \t]+(.*))?$/.exec(before) ?? [];
  if (key !== undefined) return value === undefined ? undefined : valueSpot(key, value, after, offset);

  const [, item] = /^[ \t]*-[ \t]+(.*)$/.exec(before) ?? [];
  if (item === undefined) return undefined;
  const list = listAround(text, block, start);
  return (
    list && { at: "value", key: list.key, item: true, flow: false, others: list.others, ...token(item, after, offset) }
  );
}

function valueSpot(key: string, value: string, after: string, offset: number): ValueSpot | undefined {
  if (commentIn(value)) return undefined;
  if (!value.startsWith("["))
    return { at: "value", key, item: false, flow: false, others: [], ...token(value, after, offset) };
  const start = offset - value.length;
  const whole = value + after;
  const items = flowItems(whole);
  const here = items.findIndex((item) => item.start <= value.length && value.length <= item.end);
  const item = items[here];
  if (!item) return undefined;
  const inner = whole.slice(item.start, item.end);
  const from = Math.min(item.start + inner.length - inner.trimStart().length, value.length);
  return {
    at: "value",
    key,
    item: true,
    flow: true,
    others: items
      .filter((each) => each !== item)
      .map((each) => unquoted(whole.slice(each.start, each.end)))
      .filter(Boolean),
    ...opened(value.slice(from)),
    start: start + from,
    end: item.open ? offset : Math.max(offset, start + item.start + inner.trimEnd().length),
  };
}

/** The places between the brackets and commas of a list in brackets, `open` where a quotation mark is not closed. */
function flowItems(text: string): readonly (Token & { readonly open: boolean })[] {
  const items: (Token & { readonly open: boolean })[] = [];
  let start = 1;
  let quote = "";
  for (let at = 1; at <= text.length; at++) {
    const sign = text.charAt(at);
    if (quote !== "") {
      if (sign === "\\" && quote === '"') at++;
      else if (sign === quote) quote = "";
      if (at < text.length) continue;
    }
    const begins = text.slice(start, at).trim() === "";
    if ((sign === '"' || sign === "'") && begins) quote = sign;
    else if (sign === "," || sign === "]" || sign === "" || (sign === "#" && /\s/.test(text.charAt(at - 1)))) {
      items.push({ start, end: at, open: quote !== "" });
      if (sign !== ",") break;
      start = at + 1;
    }
  }
  return items;
}

function commentIn(value: string): boolean {
  return !/^["']/.test(value) && /(^|\s)#/.test(value);
}

function token(typed: string, after: string, offset: number): Token & Pick<ValueSpot, "typed" | "quote"> {
  const start = opened(typed);
  const stop = start.quote === "" ? after.search(/\s#|\s*$/) : (endOf(start.quote).exec(after)?.[0].length ?? -1);
  return { ...start, start: offset - typed.length, end: offset + (stop < 0 ? after.trimEnd().length : stop) };
}

/** The rest of a text in quotation marks, with the one at its end. */
function endOf(quote: '"' | "'"): RegExp {
  return quote === '"' ? /^(?:[^"\\]|\\.)*"/ : /^(?:[^']|'')*'/;
}

function opened(written: string): Pick<ValueSpot, "typed" | "quote"> {
  const quote = written.startsWith('"') ? '"' : written.startsWith("'") ? "'" : "";
  return { quote, typed: written.slice(quote.length) };
}

/** The key that a dashed item belongs to, and the items on the other lines. */
function listAround(
  text: string,
  block: YamlBlock,
  lineStart: number,
): { key: string; others: readonly string[] } | undefined {
  let key: string | undefined;
  let others: string[] = [];
  let passed = false;
  for (const { start, line } of linesOf(text.slice(block.start, block.end))) {
    const dashed = /^[ \t]*-[ \t]+(.*)$/.exec(line)?.[1];
    const here = block.start + start === lineStart;
    if (here) passed = true;
    else if (dashed !== undefined) others.push(unquoted(dashed));
    else if (line.trim() !== "") {
      if (passed) break;
      key = /^([\w-]+)[ \t]*:[ \t]*$/.exec(line)?.[1];
      others = [];
    }
  }
  return key === undefined ? undefined : { key, others };
}

/** The value of a key written on one line of the block, without quotes. */
export function plainValue(text: string, block: YamlBlock, key: string): string | undefined {
  for (const { line } of linesOf(text.slice(block.start, block.end))) {
    const colon = line.indexOf(":");
    if (colon > 0 && line.slice(0, colon).trim() === key) return unquoted(line.slice(colon + 1).replace(/\s#.*$/, ""));
  }
  return undefined;
}

/** The value of a key as a list: in brackets, on lines with dashes, or the one that it is; without quotes. */
export function listValue(text: string, block: YamlBlock, key: string): readonly string[] {
  const plain = plainValue(text, block, key);
  if (plain === undefined) return [];
  if (plain.startsWith("[")) return flowItems(plain).map(({ start, end }) => unquoted(plain.slice(start, end)));
  return plain === "" ? dashedItems(text, block, key) : [plain];
}

function dashedItems(text: string, block: YamlBlock, key: string): readonly string[] {
  const lines = [...linesOf(text.slice(block.start, block.end))].map(({ line }) => line);
  const items = lines.slice(lines.findIndex((line) => new RegExp(`^${key}[ \\t]*:`).test(line)) + 1);
  const end = items.findIndex((line) => line.trim() !== "" && !/^[ \t]*-[ \t]/.test(line));
  return items
    .slice(0, end < 0 ? items.length : end)
    .flatMap((line) => unquoted(line.replace(/^[ \t]*-[ \t]+/, "")) || []);
}

/** Keys that stand at the start of the block's lines, but for the line at `offset`. */
export function otherKeys(text: string, block: YamlBlock, offset: number): readonly string[] {
  const keys: string[] = [];
  for (const { start, next, line } of linesOf(text.slice(block.start, block.end))) {
    const key = /^([\w-]+)[ \t]*:/.exec(line)?.[1];
    const here = offset >= block.start + start && offset < block.start + next;
    if (key !== undefined && !here) keys.push(key);
  }
  return keys;
}

function unquoted(written: string): string {
  const text = written.trim();
  return /^(".*"|'.*')$/.test(text) ? text.slice(1, -1) : text;
}

function* linesOf(text: string): Generator<{ readonly start: number; readonly next: number; readonly line: string }> {
  for (let start = 0; start <= text.length; ) {
    const newline = text.indexOf("\n", start);
    const next = newline < 0 ? text.length + 1 : newline + 1;
    yield { start, next, line: text.slice(start, newline < 0 ? text.length : newline).replace(/\r$/, "") };
    start = next;
  }
}
