import type { Span } from "../inline";
import { insert, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/**
 * `o pão\ = the bread`: a backslash makes text of the sign right behind it alone, so that this is a pair with a backslash on paper. The
 * sign itself may have been meant to be text.
 */
export function printedBackslash(source: SourceText, sign: Span | undefined, problems: Problems): void {
  const { text } = source;
  if (!sign || !text.includes("\\")) return;
  // Of two the first says that the second is meant to be printed.
  const before = /(?<!\\)(?:\\\\)*\\$/.test(text.slice(0, sign.start)) ? sign.start - 1 : -1;
  const behind = /^\\\s/.test(text.slice(sign.end)) ? sign.end : -1;
  const at = Math.max(before, behind);
  if (at < 0) return;
  const range = source.range(at, at + 1);
  const out = at === before ? range : source.range(at, at + 1 + (/^\s*/.exec(text.slice(at + 1))?.[0].length ?? 0));
  problems.trap(
    "lopsided-slash",
    range,
    "This backslash is printed: it makes text only of a sign that stands right behind it.",
    { ...write("Take it out", out, ""), unsure: true },
  );
}

/** `- o pão = the bread\\`: a backslash breaks a line, and at the end of an item there is none to break. `end`: where its words end. */
export function lastBackslash(source: SourceText, end: number, problems: Problems): void {
  const said = source.text.slice(0, end).trimEnd();
  if (!said.endsWith("\\")) return;
  const at = said.length - 1;
  const before = said.slice(0, at).trimEnd();
  // As a side, a part or the end of a path it is meant.
  if (before === "" || /[\\:=＝/|]$/.test(before)) return;
  problems.trap(
    "lopsided-slash",
    source.range(at, at + 1),
    "This backslash is printed: it breaks a line, and none comes below it in this item.",
    { ...write("Take it out", source.range(before.length, at + 1), ""), unsure: true },
    insert("Mark it as text", source.source(at), "\\"),
  );
}
