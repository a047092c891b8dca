import { commentMeaning } from "../comments";
import { type Env, parseRuns } from "../inline";
import { plain } from "../phrases";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * Signs of emphasis and of comments that are nearly right, so that they are printed.
 */

/** Emphasis with white space inside its signs, which stand where such signs may. */
const loose =
  /(?<![\p{L}\p{N}\\*_])(\*{1,3}|_)([^\S\n]*)(?=[^\s*_])([^*_\n]*?[^\s*_\\])([^\S\n]*)\1(?![\p{L}\p{N}*_])/gu;

const printed = (text: string, env: Env): string => plain(parseRuns(text, env).runs);

/** `** sol **`, `**c **`: Markdown takes such signs for text. */
export function looseEmphasis(source: SourceText, mask: readonly boolean[], env: Env, problems: Problems): void {
  const { text } = source;
  for (const match of text.matchAll(loose)) {
    const [whole, sign = "", before = "", inside = "", after = ""] = match;
    if (before + after === "" || mask.slice(match.index, match.index + whole.length).some(Boolean)) continue;
    // One sign with white space on both of its sides multiplies, as two do with numbers; a separator parts the signs.
    if ((sign.length === 1 && before !== "" && after !== "") || /^[\p{N}\p{P}\s]*$/u.test(inside)) continue;
    if (/\s[=＝/／]\s|[|｜]/u.test(inside) || printed(sign + inside + sign, env).includes(sign)) continue;
    const start = match.index + sign.length;
    const end = match.index + whole.length - sign.length;
    const cut = [
      { start, end: start + before.length },
      { start: end - after.length, end },
    ].filter((space) => space.end > space.start);
    problems.trap(
      "loose-emphasis",
      source.range(match.index, match.index + whole.length),
      `“${sign}” is printed as it stands: no white space stands between such signs and the words that they are about.`,
      {
        title: "Take the white space out",
        edits: cut.map((space) => ({ range: source.range(space.start, space.end), text: "" })),
      },
    );
  }
}

/** Low lines round the end of a word. */
const ending = /(?<=\p{L})(_{1,2})(\p{L}+)\1(?![\p{L}\p{N}_])/gu;

/**
 * `com__emos__`: within a word low lines are text. One on each side may stand for letters that are left out, but not in the `forms` of a
 * table.
 */
export function lowEndings(source: SourceText, mask: readonly boolean[], forms: boolean, problems: Problems): void {
  for (const { 0: whole, 1: sign = "", 2: inside = "", index } of source.text.matchAll(ending)) {
    const end = index + whole.length;
    if ((sign === "_" && !forms) || mask.slice(index, end).some(Boolean)) continue;
    const range = source.range(index, end);
    const stars = "*".repeat(sign.length);
    problems.trap(
      "loose-emphasis",
      range,
      `“${sign}” is printed as it stands: within a word bold and italic letters stand between asterisks.`,
      { ...write(`Write “${stars}${inside}${stars}”`, range, `${stars}${inside}${stars}`), unsure: true },
    );
  }
}

/** Whether two low lines at a place of a text are round the end of a word. */
export const isAtEnding = (text: string, at: number): boolean =>
  [...text.matchAll(ending)].some(
    ({ 0: whole, 1: sign = "", index }) => sign.length === 2 && (index === at || index + whole.length - 2 === at),
  );

/** `==sol==`: a colour behind words in other dialects of Markdown. */
const coloured = /(?<![=\p{L}\p{N}])==(?=[^\s=])([^=\n]*[^\s=\\])==(?![=\p{L}\p{N}])/gu;

export function colouredText(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  for (const { 0: whole, 1: inside = "", index } of source.text.matchAll(coloured)) {
    const end = index + whole.length;
    if (mask.slice(index, end).some(Boolean)) continue;
    const range = source.range(index, end);
    problems.trap(
      "loose-emphasis",
      range,
      "“==” is printed as it stands: words have no colour behind them on paper. Two asterisks make them bold.",
      write("Make it bold", range, `**${inside}**`),
      write("Take the signs out", range, inside),
    );
  }
}

/** A comment whose signs a program has changed, or that lacks some of them. */
const changed = /[<‹＜〈][^\S\n]*[!！][-–—−­]{1,3}(?!-?>)([^\n<>‹›]*?)[^\S\n]*[-–—−]{1,3}[^\S\n]*[>›＞〉]/gu;

/** `<!- by: K7 ->`, `‹!—- by: K7 -—›`: no comments, so that they are printed. */
export function changedComment(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  const { text } = source;
  for (const match of text.matchAll(changed)) {
    const inside = match[1]?.trim() ?? "";
    // One that begins rightly is told as one without an end.
    if (inside === "" || mask[match.index] || match[0].startsWith("<!--")) continue;
    const wanted = `<!-- ${inside} -->`;
    const start = match.index;
    const end = start + match[0].length;
    const last = text.slice(end).trim() === "";
    // In the middle of an item a comment with a meaning is lost.
    if (!last && (commentMeaning(wanted) || start === 0)) {
      const at = source.source(text.trimEnd().length - 1) + 1;
      const tail = /^[^\S\n]*/.exec(text.slice(end))?.[0].length ?? 0;
      tell(source, start, end, problems, {
        title: `Write “${wanted}” at the end of the item`,
        edits: [
          { range: source.range(start, end + tail), text: "" },
          { range: { start: at, end: at }, text: ` ${wanted}` },
        ],
      });
    } else tell(source, start, end, problems, write(`Write “${wanted}”`, source.range(start, end), wanted));
  }
}

function tell(source: SourceText, start: number, end: number, problems: Problems, fix: ReturnType<typeof write>): void {
  const message = "This is no comment, so that it is printed: a comment begins with <!-- and ends with -->.";
  problems.trap("open-comment", source.range(start, end), message, fix);
}
