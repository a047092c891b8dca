import { type Env, parseLink, type Span } from "./inline";
import type { SourceText } from "./source-text";
import type { Tie } from "./unit";

/** Links of an item that lead to a column of a forms table: `[meço](#medir)`, `[meço](#Verbs/medir "eu")`, `[x](<#to drink>)`. */
export function readTies(source: SourceText, links: readonly Span[], env: Env): Tie[] {
  return links.flatMap(({ start, end }): Tie[] => {
    const raw = source.text.slice(start, end);
    const link = parseLink(raw, env);
    if (!link?.href.startsWith("#")) return [];
    const path = link.href.slice(1);
    const slash = path.indexOf("/");
    const open = raw.lastIndexOf("](");
    const at = raw.indexOf("#", open);
    // A target that stands elsewhere (a reference) or is written in another way cannot be pointed at.
    if (open < 0 || at < 0) return [];
    const stop = /[\s>)]/.exec(raw.slice(at).replace(/^#[^>]*(?=>)/, (inside) => "x".repeat(inside.length)));
    return [
      {
        range: source.range(start, end),
        text: link.text,
        target: source.range(start + at, start + at + (stop?.index ?? 1)),
        column: slash < 0 ? path : path.slice(slash + 1),
        ...(slash < 0 ? {} : { section: path.slice(0, slash) }),
        ...(link.title === "" ? {} : { person: link.title }),
        ...(beginsSentence(source.text.slice(0, start)) ? { opens: true } : {}),
      },
    ];
  });
}

/**
 * Whether a sentence begins after this text of an item, as far as that can be told: nothing but a mark comes before, or the end
 * of another sentence, a colon, the sign between two sides, or an opening quotation mark.
 */
export function beginsSentence(before: string): boolean {
  const text = before.replace(/^\[[ xX]\]\s/u, "").replace(/[*_]/gu, "");
  return (
    /(?:^|[.!?…:][\p{Pe}\p{Pf}"']*\s|[。！？]|\s[=＝/／]\s)[\s\p{Ps}\p{Pi}\p{Pd}"'¿¡]*$/u.test(text) ||
    /[\s\p{Ps}\p{Pd}][«»„“”‚‘"¿¡]\s?$/u.test(text)
  );
}
