import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * Pictures that Markdown does not take for such.
 */

/** `![a](my picture.png)`: Markdown takes no white space in a path without angle brackets, and none before the bracket. */
export function picturePath(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  for (const match of source.text.matchAll(/(!\[[^\]\n]*\])(\s+)\([^()\s]+\.[a-z]{2,4}\)/giu)) {
    if (mask[match.index]) continue;
    const start = match.index + (match[1] ?? "").length;
    const end = start + (match[2] ?? "").length;
    problems.trap(
      "picture-path",
      source.range(match.index, match.index + match[0].length),
      "Markdown reads no picture here: nothing stands between the two pairs of brackets.",
      write("Take the space out", { start: source.source(start), end: source.source(end) }, ""),
    );
  }
  foreignPicture(source, mask, problems);
  for (const match of source.text.matchAll(
    /!\[[^\]]*\]\((?!<|(?:file|data):)([^()<>"]*?\S[^\S\n]+[^()<>"]*?)(\s+"[^"]*")?\)/gu,
  )) {
    const path = match[1]?.trim() ?? "";
    if (mask[match.index] || !/\s/.test(path)) continue;
    const start = match.index + match[0].indexOf(`(${match[1] ?? ""}`) + 1;
    const range = source.range(start, start + path.length);
    problems.trap(
      "picture-path",
      range,
      `Markdown reads no picture here: a path with a space stands in angle brackets.`,
      write("Put it in angle brackets", range, `<${path}>`),
    );
  }
}

/** `![a spoon](file:///c:/spoon.png)`, as programs copy it: Markdown takes no such address, so that all of this is printed. */
function foreignPicture(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  for (const match of source.text.matchAll(/!\[[^\]\n]*\]\(\s*(<?)((?:file|data):[^()<>"\n]+)(>?)/giu)) {
    const path = match[2]?.trimEnd() ?? "";
    if (mask[match.index]) continue;
    const end = match.index + match[0].length - (match[3] ?? "").length - ((match[2]?.length ?? 0) - path.length);
    const start = end - path.length;
    const name = /^file:.*[/\\]([^/\\]+\.[a-z]{3,4})$/iu.exec(path)?.[1];
    const wanted = name && (/\s/.test(name) && match[1] === "" ? `<${name}>` : name);
    problems.trap(
      "picture-path",
      source.range(start, end),
      "Markdown reads no picture here, and all of this is printed: a picture is named by its path from the unit.",
      ...(wanted ? [{ ...write(`Write “${wanted}”`, source.range(start, end), wanted), unsure: true as const }] : []),
    );
  }
}

/** `![[spoon.png]]`, `![a][spoon.png]`, `!(a)[spoon.png]` and `![a](spoon.png` without its end. */
export function nearlyPicture(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  const nearly =
    /!\[\[([^\]|\n]+?)(?:\|[^\]\n]*)?\]\]|(!\[[^\]\n]*\]\([^()\s]+\.[a-z]{2,4})(?=\s|$)(?![^\n]*\))|!(?:\[([^\]\n]*)\]|\(([^()\n]*)\))\[([^\][\n]+\.(?:png|jpe?g|gif|svg|webp))\]/giu;
  for (const match of source.text.matchAll(nearly)) {
    if (mask[match.index]) continue;
    const range = source.range(match.index, match.index + match[0].length);
    const path = (match[1] ?? match[5])?.trim() ?? "";
    const name = match[3] ?? match[4] ?? path.replace(/^.*\//u, "").replace(/\.[a-z]+$/iu, "");
    const wanted = match[2] ? `${match[2]})` : `![${name}](${/\s/.test(path) ? `<${path}>` : path})`;
    problems.trap(
      "picture-path",
      range,
      "Markdown reads no picture here: it is written ![what it shows](its path).",
      write(`Write “${wanted}”`, range, wanted),
    );
  }
}
