import { type Env, parseRuns } from "../inline";
import { plain } from "../phrases";
import { drop, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { markdownPicture } from "./html-picture";

/*
 * Signs in an item that Markdown takes away without a trace on paper, or that it leaves and no reader of the paper knows.
 */

/** Names of HTML that only change how text looks. */
const looks: ReadonlySet<string> = new Set(
  "a abbr b bdi bdo big br cite code del dfn em font i ins kbd mark q s samp small span strike strong sub sup tt u var wbr".split(
    " ",
  ),
);

/** HTML, `~~struck~~`, stars within words and footnotes in a text that is printed. */
export function unprinted(source: SourceText, mask: readonly boolean[], env: Env, problems: Problems): void {
  const { text } = source;
  if (text.includes("<")) html(source, mask, problems);
  if (text.includes("~~")) struck(source, mask, env, problems);
  if (text.includes("*")) stars(source, mask, env, problems);
  if (text.includes("[^")) footnotes(source, problems);
}

function html(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  const { text } = source;
  for (const match of text.matchAll(/<(\/?)([a-z][a-z0-9-]*)(?:\s[^<>]*|\/)?>/giu)) {
    const [tag, closes, name = ""] = match;
    // A tag is masked from its own first sign on; in code or a link the stretch begins before it.
    if (!mask[match.index] || (match.index > 0 && mask[match.index - 1] && !text.slice(0, match.index).endsWith(">")))
      continue;
    const range = source.range(match.index, match.index + tag.length);
    const known = looks.has(name.toLowerCase());
    // Of two that belong together the first is told.
    if (known && closes && new RegExp(`<${name}[\\s>]`, "i").test(text.slice(0, match.index))) continue;
    const close = known && !closes ? text.toLowerCase().indexOf(`</${name.toLowerCase()}>`, match.index) : -1;
    const put = /^w?br$/i.test(name) ? " " : "";
    const out = {
      title: "Take it out",
      edits: [
        { range, text: put },
        ...(close < 0 ? [] : [{ range: source.range(close, close + name.length + 3), text: "" }]),
      ],
      // A line break may part two answers.
      ...(put === "" ? {} : { unsure: true as const }),
    };
    const between = close < 0 ? "" : text.slice(match.index + tag.length, close);
    if (/^(?:u|ins|span)$/i.test(name) && /^(?:[\s_\u200b]|&nbsp;|&emsp;|&ensp;)+$/iu.test(between)) {
      const whole = source.range(match.index, close + name.length + 3);
      const message = "Of a line under white space nothing is printed: a gap is written “[...]”.";
      problems.trap("html-in-text", whole, message, write("Write “[...]”", whole, "[...]"));
      continue;
    }
    const picture = markdownPicture(tag);
    const draw = picture === undefined ? [] : [write(`Write “${picture}”`, range, picture)];
    const keep = write(`Write “\\${tag}”`, { start: range.start, end: range.start }, "\\");
    problems.trap(
      "html-in-text",
      range,
      picture !== undefined
        ? "Markdown prints no pictures that are written in HTML."
        : known
          ? `“${tag}” is HTML, and nothing of it is printed; the words stand as if it were not there.`
          : `Markdown takes “${tag}” for HTML, so that it is not printed. A backslash makes it text.`,
      ...(picture !== undefined ? [...draw, out] : known ? [out] : [keep, out]),
    );
  }
}

/** The text printed without emphasis and other signs. */
const printed = (text: string, env: Env): string => plain(parseRuns(text, env).runs);

function struck(source: SourceText, mask: readonly boolean[], env: Env, problems: Problems): void {
  const { text } = source;
  for (const match of text.matchAll(/~~(?=[^\s~])([^~]*[^\s~])~~/gu)) {
    const end = match.index + match[0].length;
    if (mask[match.index] || mask[end - 1] || printed(match[0], env).includes("~")) continue;
    problems.trap(
      "struck-text",
      source.range(match.index, end),
      "Text between these signs is not struck out on paper: it is printed like any other.",
      // Without them nobody sees any more that it was to be gone.
      {
        title: "Take the signs out",
        edits: [match.index, end - 2].map((at) => ({ range: source.range(at, at + 2), text: "" })),
        unsure: true,
      },
      drop("Take the text out", source.range(match.index, end + (/^\s/.test(text.slice(end)) ? 1 : 0))),
    );
  }
}

/** `Lehrer*in oder Schüler*in`, `2*3*4`: two stars within words make what stands between them italic, and are gone. */
function stars(source: SourceText, mask: readonly boolean[], env: Env, problems: Problems): void {
  const { text } = source;
  for (const match of text.matchAll(
    /(?<=[\p{L}\p{N}])\*(?=[\p{L}\p{N}])([^*\n]*)(?<=[\p{L}\p{N}])\*(?=[\p{L}\p{N}])/gu,
  )) {
    const end = match.index + match[0].length;
    const inside = match[1] ?? "";
    // Sides and answers are read by themselves, so that two stars in different ones are none.
    if (/\s[=＝/／]\s/u.test(inside)) continue;
    // A part of a word in italics is meant: `com*pu*tador`.
    if (mask[match.index] || mask[end - 1] || !(/\s/.test(inside) || /^\d+$/.test(inside))) continue;
    if (printed(text, env).includes(match[0])) continue;
    problems.trap(
      "star-in-word",
      source.range(match.index, end),
      "Markdown takes these two stars for the signs of italics, so that they are not printed. Backslashes make them text.",
      {
        title: "Write “\\*”",
        edits: [match.index, end - 1].map((at) => ({ range: source.range(at, at), text: "\\" })),
      },
    );
  }
}

function footnotes(source: SourceText, problems: Problems): void {
  for (const match of source.text.matchAll(/(?<![\\!\]])\[\^[^\]\s]+\](?![(:[])/gu)) {
    const range = source.range(match.index, match.index + match[0].length);
    const message = `A piece has no foot for a note: the mark “${match[0]}” is printed with the text.`;
    problems.trap("footnote", range, message, write("Take it out", range, ""));
  }
}
