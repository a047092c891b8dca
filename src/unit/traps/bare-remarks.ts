import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * What was meant to name the writer of an item and is no comment, so that it is printed.
 */

const remark =
  /(?<![-–—<!\s])[^\S\n]+(?:(?:\/\/|%{1,2}|#)[^\S\n]*|[([{][^\S\n]*)?(?:[Bb]y|BY)(?::|(?<=[([{][^\S\n]*..)(?=\s))[^\S\n]*(\p{Lu}{1,3}\d{1,3}(?:[^\S\n]*[,&+][^\S\n]*\p{Lu}{1,3}\d{1,3})*)[^\S\n]*[)\]}]?[^\S\n]*$/u;

/** `the light // by: K8`, `the bell (by K9)`, `the hub by: K7, K2`, at the end of an item. */
export function bareRemark(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  const match = remark.exec(source.text);
  if (!match || match.index === 0 || mask[match.index + match[0].search(/by/i)]) return;
  const range = source.range(match.index, match.index + match[0].length);
  const wanted = `<!-- by: ${match[1]} -->`;
  problems.trap(
    "nearly-a-remark",
    range,
    "This is no comment, so that it is printed: the writer of an item is named by <!-- by: CODE -->.",
    write(`Write “${wanted}”`, range, ` ${wanted}`),
  );
}

/** Whether such a remark begins in a text at an offset. */
export function remarkAt(text: string, at: number): boolean {
  return remark.exec(text)?.index === at;
}
