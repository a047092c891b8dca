import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../../base/range";
import { type Problems, write } from "../problems";
import type { Shape } from "../shapes";
import { textOf } from "./lines";
import { column } from "./nesting";

/*
 * Further paragraphs and quotations under an item: only bullets are read there, so that they would be lost.
 */

/** A text under an item: the lines that it stands in, and what it says, where that is one paragraph. */
interface Under {
  readonly first: number;
  readonly content: string | undefined;
}

/** Signs of quotation with the white space round them. */
const lead = /^[ \t]*(?:>[ \t]?)*[ \t]*/;

/** Signs that mean something else where the text is joined to another, or begins a bullet. */
const meaning = /[*_`<=＝\\~|｜]/u;

/** A paragraph that is not the first one of its item, or a quotation; `owner` is the item of the list at the margin. */
export function textUnder(
  lines: LineIndex,
  tokens: readonly Token[],
  at: number,
  owner: { readonly token: Token; readonly shape: Shape | undefined; readonly inPile: boolean },
  problems: Problems,
): void {
  const token = tokens[at];
  const { shape } = owner;
  // A plain item is a note, unless it is a card of a pile.
  if (!token?.map || !shape || (shape === "text" && !owner.inPile)) return;
  const item = itemOf(tokens, at);
  if (!item || tokens[at - 1] === item || !/^[-*+.)]$/.test(item.markup)) return;
  // What stands under numbers there is told of itself.
  const nested = item !== owner.token;
  if (nested && (/[.)]/.test(item.markup) || item.level !== owner.token.level + 2)) return;
  const under = textOfBlock(tokens, at);
  const text = textOf(lines, under.first);
  const line = lines.start(under.first);
  const start = line + (lead.exec(text)?.[0].length ?? 0);
  const quoted = token.type === "blockquote_open";
  const single = under.content !== undefined && !under.content.includes("\n") ? under.content : undefined;
  const join = single === undefined ? [] : joins(lines, tokens, at, start, single, shape === "pair" && !nested);
  const bullet =
    single === undefined || nested || !takesBullet(tokens, owner, single)
      ? []
      : [
          write(
            "Make a bullet of it",
            { start: line, end: start + arrowLength(shape, single) },
            `${" ".repeat(textColumn(lines, owner.token))}- `,
          ),
        ];
  if (nested && shape === "text") return;
  problems.tell(
    shape === "text" ? "piles" : true,
    "unread-text",
    { start, end: Math.max(start + 1, line + text.trimEnd().length) },
    `This ${quoted ? "quotation" : "paragraph"} under the item is not read: what belongs to an item stands in its line or behind a bullet.`,
    ...(shape === "event" && !afterColon(tokens, at, owner.token) ? [...join, ...bullet] : [...bullet, ...join]),
  );
}

/** How long the arrow is that a correction begins with. */
const arrowLength = (shape: Shape | undefined, text: string): number =>
  shape === "statement" ? (/^(?:[→⇒➔➜⟶]|[-–—=]{1,2}>)\s*/u.exec(text)?.[0].length ?? 0) : 0;

/** Whether the text of an item ends in a colon and what stands under it are only paragraphs up to one: they are what it names. */
function afterColon(tokens: readonly Token[], at: number, item: Token): boolean {
  const from = tokens.indexOf(item);
  const between = tokens.slice(from + 1, at + 1);
  return (
    /[:：]\s*$/u.test(tokens[from + 2]?.content ?? "") &&
    between.every(({ type }) => ["paragraph_open", "inline", "paragraph_close"].includes(type))
  );
}

/** The item that a block stands in. */
function itemOf(tokens: readonly Token[], at: number): Token | undefined {
  const level = (tokens[at]?.level ?? 0) - 1;
  let i = at - 1;
  while (i >= 0 && (tokens[i]?.level ?? 0) > level) i--;
  return tokens[i]?.type === "list_item_open" ? tokens[i] : undefined;
}

function textOfBlock(tokens: readonly Token[], at: number): Under {
  const first = tokens[at]?.map?.[0] ?? 0;
  if (tokens[at]?.type === "paragraph_open") return { first, content: tokens[at + 1]?.content };
  const one = tokens[at + 1]?.type === "paragraph_open" && tokens[at + 4]?.type === "blockquote_close";
  return { first, content: one ? tokens[at + 2]?.content : undefined };
}

/** Puts the text behind the paragraph right above it, where neither has signs that reach into the other. */
function joins(lines: LineIndex, tokens: readonly Token[], at: number, start: number, own: string, never: boolean) {
  const above = tokens[at - 2];
  if (never || tokens[at - 1]?.type !== "paragraph_close" || above?.type !== "inline" || !above.map) return [];
  if (meaning.test(own) || meaning.test(above.content)) return [];
  const { start: line, end } = lines.line(above.map[1] - 1);
  const range: Range = { start: line + lines.text.slice(line, end).trimEnd().length, end: start };
  return [write("Join it to the text above", range, " ")];
}

/** Whether a bullet with this text would be read under the item, and be nothing but text. */
function takesBullet(
  tokens: readonly Token[],
  { token, shape }: { token: Token; shape: Shape | undefined },
  own: string,
) {
  if (shape === "event") return true;
  if (shape === "text") return false;
  if (/[|｜=＝]|^\[/u.test(own)) return false;
  if (shape === "pair") return true;
  const from = tokens.indexOf(token);
  if (!/^\[ \]/.test(tokens[from + 2]?.content ?? "")) return false;
  for (let i = from + 1; tokens[i] && tokens[i]?.type !== "list_item_close"; i++)
    if (tokens[i]?.type === "bullet_list_open") return false;
  return true;
}

/** The column that the text of an item begins at. */
function textColumn(lines: LineIndex, { map }: Token): number {
  return column(/^[ \t]*\S+[ \t]+/.exec(textOf(lines, map?.[0] ?? 0))?.[0] ?? "  ");
}
