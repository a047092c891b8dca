/*
 * Where in a unit's YAML a place is: in an activity block or the front matter, at a key or at a value. It works on text that
 * is being typed, so it looks at lines rather than at parsed YAML.
 */

/** YAML inside a unit. Offsets are UTF-16 units of the unit's text, `end` exclusive. */
export interface YamlBlock {
  readonly kind: "activity" | "front";
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
    | { readonly marker: string; readonly kind: "activity" | "front" | "other"; readonly start: number }
    | undefined;
  for (const { start, next, line } of linesOf(text)) {
    if (!open && start > offset) return undefined;
    if (!open) {
      const [, marker, word] = fence.exec(line) ?? [];
      if (marker) open = { marker, kind: word === "activity" ? "activity" : "other", start: next };
      else if (start === 0 && line.trimEnd() === "---") open = { marker: "---", kind: "front", start: next };
    } else if (closes(line, open.marker)) {
      if (open.kind !== "other" && offset >= open.start && offset < start)
        return { kind: open.kind, start: open.start, end: start };
      open = undefined;
    }
  }
  return open && open.kind !== "other" && offset >= open.start
    ? { kind: open.kind, start: open.start, end: text.length }
    : undefined;
}

function closes(line: string, marker: string): boolean {
  const bare = line.trim();
  if (marker === "---") return /^(---|\.\.\.)$/.test(bare);
  return bare.length >= marker.length && bare === marker.charAt(0).repeat(bare.length);
}

/** What stands at the offset. Undefined in comments and wherever neither a key nor a value can be. */
export function spotAt(text: string, block: YamlBlock, offset: number): KeySpot | ValueSpot | undefined {
  const start = Math.max(block.start, text.lastIndexOf("\n", offset - 1) + 1);
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
    list && {
      at: "value",
      key: list.key,
      item: true,
      flow: false,
      others: list.others,
      ...token(item, after, offset, /[\r\n]/),
    }
  );
}

function valueSpot(key: string, value: string, after: string, offset: number): ValueSpot | undefined {
  if (/(^|\s)#/.test(value)) return undefined;
  if (!value.startsWith("["))
    return { at: "value", key, item: false, flow: false, others: [], ...token(value, after, offset, /\s#|\s*$/) };
  if (value.includes("]")) return undefined;
  const typed = value.slice(value.lastIndexOf(value.includes(",") ? "," : "[") + 1).trimStart();
  const spot = token(typed, after, offset, /[,\]]|$/);
  const earlier = value.slice(1).split(",").slice(0, -1);
  const later = after
    .slice(spot.end - offset)
    .replace(/\].*$/, "")
    .split(",");
  return {
    at: "value",
    key,
    item: true,
    flow: true,
    others: [...earlier, ...later].map(unquoted).filter(Boolean),
    ...spot,
  };
}

function token(typed: string, after: string, offset: number, ends: RegExp): Token {
  const stop = after.search(ends);
  return { start: offset - typed.length, end: offset + (stop < 0 ? after.trimEnd().length : stop) };
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
