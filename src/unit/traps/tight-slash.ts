import type { Span } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * A slash without white space between two accepted answers. Between single words (`seed/pip`, `his/her`, `bonito/a`) it stands in right
 * texts too, so that only words with their articles, or with the same short word before them, are told.
 */

const word = "[\\p{L}\\p{M}][\\p{L}\\p{M}'’-]*";

/** One whole answer of a side: `the basket/the crate`, `der Korb/die Kiste`. */
const tight = new RegExp(
  `(?<=^|\\s[=＝/／][^\\S\\n]+)(?<first>${word})[^\\S\\n]+(?<second>${word}(?:[^\\S\\n]+${word})?)/(?<third>${word})[^\\S\\n]+(?<fourth>${word}(?:[^\\S\\n]+${word})?)(?=[^\\S\\n]*(?:$|<!--)|[^\\S\\n]+[=＝/／]\\s)`,
  "gu",
);

const article =
  /^(?:the|an?|der|die|das|den|dem|des|ein|eine|einen|einem|einer|o|os|as|um|uma|uns|umas|el|la|los|las|una|unos|unas|le|les|une|des|il|lo|gli|uno|i)$/iu;

export function tightSlash(source: SourceText, open: (span: Span) => boolean, problems: Problems): void {
  if (!/[\p{L}\p{M}]\/[\p{L}\p{M}]/u.test(source.text)) return;
  for (const match of source.text.matchAll(tight)) {
    const { first = "", second = "", third = "", fourth = "" } = match.groups ?? {};
    const length = (text: string): number => text.split(/\s+/).length;
    const led = (article.test(first) && article.test(third)) || (first === third && first.length < 5);
    if (!led || length(second) !== length(fourth) || areForms(second, fourth)) continue;
    const at = match.index + match[0].indexOf("/");
    if (!open({ start: match.index, end: match.index + match[0].length })) continue;
    const range = source.range(at, at + 1);
    problems.trap(
      "lopsided-slash",
      range,
      "This slash is printed: between two accepted answers white space stands on both its sides.",
      { ...write("Write “ / ”", range, " / "), unsure: true },
      { ...write("Mark it as text", { start: range.start, end: range.start }, "\\"), unsure: true },
    );
  }
}

/** `o aluno/a aluna`: one card for both. */
const areForms = (one: string, other: string): boolean =>
  one.slice(0, 3).toLowerCase() === other.slice(0, 3).toLowerCase();
