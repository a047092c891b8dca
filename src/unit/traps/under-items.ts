import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../../base/range";
import { type Env, scan, spacedSeparators } from "../inline";
import { drop, type Problems } from "../problems";
import type { Shape } from "../shapes";
import { SourceText } from "../source-text";
import { isReadTable } from "../tables";
import { pairSign } from "./glued";
import { blankAround, cutEdits, textOf } from "./lines";
import { textUnder } from "./under-text";

/*
 * What stands below an item in a form that is not read there: a table, a further pair, bullets under bullets.
 */

const marker = /^([ \t]*)(?:[-*+]|\d{1,9}[.)])[ \t]+(?=\S)/;

/** Tokens of a list's items, and the shape of the item that each belongs to. */
export class UnderItems {
  private quotes = 0;
  private owner: { readonly token: Token; readonly shape: Shape | undefined; readonly inPile: boolean } | undefined;

  constructor(
    private readonly lines: LineIndex,
    private readonly env: Env,
    private readonly problems: Problems,
  ) {}

  /** A further item of the list begins. */
  begin(token: Token, shape: Shape | undefined, inPile: boolean): void {
    this.owner = { token, shape, inPile };
    this.quotes = 0;
  }

  /** Looks at one token behind the beginning of the item. */
  look(tokens: readonly Token[], at: number): void {
    const token = tokens[at];
    if (!token || !this.owner?.shape) return;
    if (token.type === "blockquote_open" && this.quotes++ === 0)
      textUnder(this.lines, tokens, at, this.owner, this.problems);
    else if (token.type === "blockquote_close") this.quotes--;
    if (this.quotes > 0) return;
    if (token.type === "table_open") this.table(token);
    else if (token.type === "code_block") this.code(token);
    else if (token.type === "paragraph_open") {
      const told = token.level === this.owner.token.level + 1 && this.paragraph(tokens, at);
      if (!told) textUnder(this.lines, tokens, at, this.owner, this.problems);
    } else if (token.level === this.owner.token.level + 3 && /^(?:bullet|ordered)_list_open$/.test(token.type))
      this.deeper(tokens, at);
  }

  private table({ map }: Token): void {
    const [first, after] = map ?? [0, 0];
    const text = textOf(this.lines, first);
    const indent = text.length - text.trimStart().length;
    const start = this.lines.start(first);
    if (marker.test(text) || !isReadTable(this.lines, first, after, start + indent)) return;
    this.problems.trap(
      "inside-item",
      { start: start + indent, end: this.lines.line(first).end },
      "This table is indented, so that it belongs to the item above it and is not read.",
      {
        title: "Take the spaces out",
        edits: [...cutEdits(this.lines, first, after, indent), ...blankAround(this.lines, first, after)],
      },
    );
  }

  /** `uva = grape` so far in below `- ovo = egg` that it is code. */
  private code({ map, level }: Token): void {
    const { lines, owner } = this;
    if (!map || !owner || owner.shape === "event" || level !== owner.token.level + 1) return;
    const found: { readonly start: number; readonly at: number; readonly end: number }[] = [];
    for (let number = map[0]; number < map[1]; number++) {
      const text = textOf(lines, number);
      if (text.trim() === "") continue;
      const lead = /^\s*(?:[-*+]\s+)?/.exec(text)?.[0].length ?? 0;
      if (!isShaped(text.slice(lead).trim(), this.env)) return;
      const start = lines.start(number);
      found.push({ start, at: start + lead, end: start + text.trimEnd().length });
    }
    const [first] = found;
    if (!first) return;
    this.problems.trap(
      "indented-list",
      { start: first.at, end: first.end },
      "So many spaces below an item make this code, so that it is not read.",
      {
        title: "Make it an item",
        edits: found.map(({ start, at }) => ({ range: { start, end: at }, text: this.bullet() })),
      },
    );
  }

  /** `uva = grape` in a paragraph of its own below `- ovo = egg`, with those in further lines. Whether it is one. */
  private paragraph(tokens: readonly Token[], at: number): boolean {
    const { lines, env, owner } = this;
    const inline = tokens[at + 1];
    if (!inline?.map || !owner || owner.shape === "event" || tokens[at - 1] === owner.token) return false;
    const [from, after] = inline.map;
    const found = Array.from({ length: after - from }, (_, i) => {
      const text = textOf(lines, from + i);
      const at = lines.start(from + i);
      const start = at + text.length - text.trimStart().length;
      const own = pairSign.exec(text.trim())?.[0] ?? "";
      return { at, start, end: at + text.trimEnd().length, own, text: text.trim().slice(own.length) };
    });
    const [first] = found;
    if (!first || !isShaped(first.text, env)) return false;
    this.problems.trap(
      "not-an-item",
      { start: first.start, end: first.end },
      "This line is no item: an item begins with a hyphen and a space.",
      {
        title: "Make it an item",
        edits: found
          .filter(({ text }) => isShaped(text, env))
          .map(({ at, start, own }) => ({ range: { start: at, end: start + own.length }, text: this.bullet() })),
      },
    );
    return true;
  }

  /** The bullet of the item with the white space before it, and one space. */
  private bullet(): string {
    const { lines, owner } = this;
    const text = owner ? textOf(lines, owner.token.map?.[0] ?? 0) : "";
    return `${/^([ \t]*)[-*+]/.exec(text)?.[0] ?? "-"} `;
  }

  /** A list under a bullet that itself stands under an item. */
  private deeper(tokens: readonly Token[], at: number): void {
    const { lines, owner, problems } = this;
    const list = tokens[at];
    const parent = this.parentOf(tokens, at);
    if (!list?.map || !owner || !parent) return;
    const found: { readonly text: SourceText; readonly sign: Range }[] = [];
    let plain = true;
    for (let i = at + 1; i < tokens.length; i++) {
      const token = tokens[i];
      if (!token || (token.level === list.level && token.type.endsWith("_list_close"))) break;
      if (token.type === "list_item_open") {
        const inline = tokens[i + 2];
        const sign = this.signOf(token);
        if (tokens[i + 1]?.type === "paragraph_open" && inline?.map && sign)
          found.push({ text: SourceText.inLines(lines, inline.map[0], inline.content), sign });
        else plain = false;
      } else if (token.nesting === 1 && token.type !== "paragraph_open" && !token.type.endsWith("_list_open"))
        plain = false;
      else if (token.nesting === 0 && token.type !== "inline") plain = false;
    }
    const [first] = found;
    if (!first) return;
    const shaped = owner.shape !== "event" && found.every(({ text }) => isShaped(text.text, this.env));
    // Of a note only what surely is an item is told.
    if (owner.shape === "text" && !shaped) return;
    const message = `This stands two levels below an item, where nothing is read.`;
    const signs = (put: string) => found.map(({ sign }) => ({ range: sign, text: put }));
    const fix = shaped
      ? { title: "Make an item of it", edits: signs(this.bullet()) }
      : owner.shape === "statement"
        ? drop("Take it out", { start: lines.start(list.map[0]), end: this.endOf(list.map) })
        : { title: "Take it one level out", edits: signs(`${parent} `) };
    problems.trap("too-deep", first.text.whole, message, ...(plain ? [fix] : []));
  }

  /** The bullet above a deeper list, with the white space before it; undefined where both stand in one line. */
  private parentOf(tokens: readonly Token[], at: number): string | undefined {
    const level = (tokens[at]?.level ?? 0) - 1;
    let i = at - 1;
    while (i > 0 && !(tokens[i]?.type === "list_item_open" && tokens[i]?.level === level)) i--;
    const number = tokens[i]?.map?.[0] ?? 0;
    const inline = tokens[i + 2];
    // A numbered item or a block there is told of itself, and so is an item that is not one of this.
    if (number === tokens[at]?.map?.[0] || inline?.type !== "inline") return undefined;
    if (this.owner?.shape !== "event" && isShaped(inline.content, this.env)) return undefined;
    return /^[ \t]*[-*+]/.exec(textOf(this.lines, number))?.[0];
  }

  private signOf({ map }: Token): Range | undefined {
    const number = map?.[0] ?? 0;
    const start = this.lines.start(number);
    const match = marker.exec(textOf(this.lines, number));
    return match ? { start, end: start + match[0].length } : undefined;
  }

  /** The end of lines without the blank ones at their end. */
  private endOf([first, after]: readonly [number, number]): number {
    let last = after;
    while (last > first + 1 && textOf(this.lines, last - 1).trim() === "") last--;
    return this.lines.start(last);
  }
}

function isPair(text: string, env: Env): boolean {
  return (
    /[=＝]/u.test(text) &&
    spacedSeparators(text.trim(), scan(text.trim(), env).mask, "=").some(
      ({ start, end }) => start > 0 && end < text.trim().length,
    )
  );
}

function isShaped(text: string, env: Env): boolean {
  return /^\[[ xX]\]\s+\S/.test(text) || isPair(text, env);
}
