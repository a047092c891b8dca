import type Token from "markdown-it/lib/token.mjs";
import { type Blocks, isBlank, lastLine, nearlyItems } from "./blocks";

interface ItemNode {
  /** Its first line, and the line after its last. */
  readonly first: number;
  readonly after: number;
  /** Columns of the marker and of the text. */
  readonly column: number;
  readonly content: number;
  readonly marker: string;
  readonly lists: readonly ListNode[];
}

interface ListNode {
  readonly ordered: boolean;
  /** Another list of its sort touches it: only their markers keep them apart. */
  readonly touching: boolean;
  readonly items: readonly ItemNode[];
}

const markerLine = /^( *)([-*+]|\d{1,9}[.)])( +(?=\S)|[ \t]*$)/;

/**
 * Hyphens as bullets, numbers that count on from the first, one space behind them, and nested lists right under the text of
 * their item. A list with tabs, or with something else than text at the start of an item, stays as it is; so does one that is
 * nearly nested.
 */
export function tidyLists({ lines, tokens, unit }: Blocks): readonly string[] {
  const out = [...lines];
  const left = nearlyItems(unit);
  tokens.forEach((token, at) => {
    if (token.level !== 0 || !isList(token) || !token.map) return;
    const last = lastLine(lines, token.map);
    if (lines.slice(token.map[0], last).some((line) => /^ *\t|^ *(?:[-*+]|\d+[.)]) *\t|^\uFEFF/.test(line))) return;
    const [first] = token.map;
    if (left.some((line) => first <= line && line < last)) return;
    const list = listAt(lines, tokens, at);
    if (list) layList(list, 0, lines, out);
  });
  return out;
}

function isList({ type }: Token): boolean {
  return type === "bullet_list_open" || type === "ordered_list_open";
}

/** Undefined where something in the list is better left alone. */
function listAt(lines: readonly string[], tokens: readonly Token[], at: number): ListNode | undefined {
  const open = tokens[at];
  if (!open) return undefined;
  const close = open.type.replace("_open", "_close");
  const items: ItemNode[] = [];
  let i = at + 1;
  for (; i < tokens.length; i++) {
    const token = tokens[i];
    if (token?.type === close && token.level === open.level) break;
    if (token?.type !== "list_item_open" || token.level !== open.level + 1) continue;
    const item = itemAt(lines, tokens, i);
    if (!item || items.at(-1)?.first === item.first) return undefined;
    items.push(item);
  }
  const touching = tokens[at - 1]?.type === close || tokens[i + 1]?.type === open.type;
  return { ordered: open.type === "ordered_list_open", touching, items };
}

function itemAt(lines: readonly string[], tokens: readonly Token[], at: number): ItemNode | undefined {
  const open = tokens[at];
  const inner = tokens[at + 1];
  const [first = 0] = open?.map ?? [];
  const match = markerLine.exec(lines[first] ?? "");
  if (!open?.map || !match) return undefined;
  const [whole, indent = "", marker = "", gap = ""] = match;
  const empty = inner?.type === "list_item_close";
  if (!empty && inner?.type !== "paragraph_open") return undefined;
  const lists: ListNode[] = [];
  for (let i = at + 1; i < tokens.length; i++) {
    const token = tokens[i];
    if (!token || (token.type === "list_item_close" && token.level === open.level)) break;
    if (token.level !== open.level + 1 || !isList(token)) continue;
    const list = listAt(lines, tokens, i);
    // A list that begins on the item's own line.
    if (!list || list.items.some((item) => item.first === first)) return undefined;
    lists.push(list);
  }
  const column = indent.length;
  const content = gap.trim() === "" && empty ? column + marker.length + 1 : whole.length;
  return { first, after: lastLine(lines, open.map), column, content, marker, lists };
}

/** Writes a list's lines anew, its markers at `column`. */
function layList(
  { ordered, touching, items }: ListNode,
  column: number,
  lines: readonly string[],
  out: string[],
): void {
  const start = Number.parseInt(items[0]?.marker ?? "1", 10);
  items.forEach(({ first, after, content, marker, lists }, index) => {
    const sign = ordered ? `${start + index}${marker.slice(-1)}` : touching ? marker : "-";
    const now = column + sign.length + 1;
    const line = lines[first] ?? "";
    out[first] = `${" ".repeat(column)}${sign}${rest(line, marker)}`;
    for (let i = first + 1; i < after; i++) {
      const text = lines[i] ?? "";
      // Only spaces: other white space is text to Markdown.
      const indent = /^ */.exec(text)?.[0].length ?? 0;
      // A line that is further left belongs to the item's paragraph all the same, wherever that begins.
      if (!isBlank(text) && indent >= content) out[i] = " ".repeat(indent - content + now) + text.slice(indent);
    }
    for (const list of lists) layList(list, now, lines, out);
  });
}

/** What stands behind the marker, with one space before it; white space alone stays, since a word is still to come. */
function rest(line: string, marker: string): string {
  const behind = line.slice(line.indexOf(marker) + marker.length);
  return behind.trim() === "" ? behind : ` ${behind.trimStart()}`;
}
