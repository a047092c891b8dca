import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../base/range";
import type { Env } from "./inline";
import type { RawItem } from "./items";
import type { Problems } from "./problems";
import { SourceText } from "./source-text";
import { blockInItem, paragraphLines } from "./traps/blocks";
import { gluedLines } from "./traps/glued";

/** The item that opens at a token, with what is nested in it; undefined where it begins with no paragraph. */
export function rawItem(
  lines: LineIndex,
  tokens: readonly Token[],
  at: number,
  env: Env,
  problems: Problems,
): RawItem | undefined {
  const item = tokens[at];
  const inline = tokens[at + 2];
  if (tokens[at + 1]?.type !== "paragraph_open" || inline?.type !== "inline" || !inline.map || !item?.map)
    return undefined;
  paragraphLines(lines, inline.map, true, problems);
  const nested: RawItem[] = [];
  const numbered: RawItem[] = [];
  for (let i = at + 3; i < tokens.length; i++) {
    const token = tokens[i];
    if (token?.type === "list_item_close" && token.level === item.level) break;
    const below = tokens[i + 2];
    if (token?.type !== "list_item_open" || token.level !== item.level + 2 || !token.map) continue;
    if (tokens[i + 1]?.type !== "paragraph_open" || below?.type !== "inline" || !below.map) {
      blockInItem(lines, token, tokens[i + 1], problems, undefined, inline.content);
      continue;
    }
    const text = SourceText.inLines(lines, below.map[0], below.content);
    const block = wholeLines(lines, token.map);
    if (/^[-*+]$/.test(token.markup)) nested.push({ text, block, nested: [] });
    else {
      const start = block.start + lines.text.slice(block.start, block.end).search(/\S/);
      numbered.push({ text, block: { start, end: block.end }, nested: [] });
    }
  }
  const text = SourceText.inLines(lines, inline.map[0], inline.content);
  const raw = { text, block: wholeLines(lines, item.map), nested, numbered };
  gluedLines(lines, raw, false, env, problems);
  for (const below of nested) gluedLines(lines, below, true, env, problems);
  return raw;
}

/** Without the blank lines at the end. */
function wholeLines(lines: LineIndex, [first, after]: readonly [number, number]): Range {
  let last = after;
  while (last > first + 1) {
    const { start, end } = lines.line(last - 1);
    if (lines.text.slice(start, end).trim() !== "") break;
    last--;
  }
  return { start: lines.start(first), end: lines.start(last) };
}
