import { type Env, type Span, scan } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { bareRemark } from "./bare-remarks";
import { nearlyPicture, picturePath } from "./links";
import { changedComment, colouredText, isAtEnding, looseEmphasis, lowEndings } from "./loose-signs";
import { innerMark } from "./one-line";
import { unprinted } from "./unprinted";

/** Looks at what may be wrong in any text that is printed. */
export function textTraps(source: SourceText, env: Env, problems: Problems): void {
  // Most texts have none of what is looked for.
  if (
    !/![[(]|_\\?_|\[\s*(?:\.\.|…|\])|\.{4}|-{4}|[–—]{3}|<|‹|＜|〈|~~|(?:[bB]y|BY):|[([{][bB]y\s|[*_]\s|\s[*_]|[^\s*]\*[^\s*]|\[\^|==[^\s=]/.test(
      source.text,
    )
  )
    return;
  const { mask } = scan(source.text, env);
  unprinted(source, mask, env, problems);
  looseEmphasis(source, mask, env, problems);
  if (source.text.includes("__")) lowEndings(source, mask, false, problems);
  colouredText(source, mask, problems);
  changedComment(source, mask, problems);
  bareRemark(source, mask, problems);
  picturePath(source, mask, problems);
  nearlyPicture(source, mask, problems);
  gaps(source, (span) => !mask.slice(span.start, span.end).some(Boolean), problems);
  openComment(source, mask, problems);
}

/** A gap drawn with low lines, which Markdown may take for emphasis, with many dots or hyphens, or with other signs in its brackets. */
const drawnGap =
  /\[[^\S\n]*(?:_{2,}|(?:\\_){2,}|\.{2,}|…+)[^\S\n]*\](?!\()|(?<=\S[^\S\n]+)\[[^\S\n]*\](?![\S])|_{2,}|(?:\\_){2,}|(?<=^|\s)(?:\.{4,}|-{4,}|[–—]{3,})(?=$|[\s,;:!?])/gu;

function gaps(source: SourceText, open: (span: Span) => boolean, problems: Problems): void {
  for (const { index, 0: drawn } of source.text.matchAll(drawnGap)) {
    // The mark of a statement whose line break was lost, or which goes on the item above it since it stands too far in.
    if (drawn === "[...]" || (/^\[.\]$/.test(drawn) && isMark(source.text, index))) continue;
    const span = { start: index, end: index + drawn.length };
    const escaped = drawn.includes("\\");
    const strong =
      drawn.length === 2 &&
      /(?<![\w_])__(?=\S)[^_]*\S__(?![\w_])/u.test(source.text.slice(Math.max(0, index - 80), index + 80));
    if (strong || (!escaped && !open(span)) || (drawn === "__" && isAtEnding(source.text, index))) continue;
    const range = source.range(span.start, span.end);
    const message = drawn.startsWith("_")
      ? "Markdown may read these low lines as emphasis; a gap is written [...]."
      : "This is printed as it stands; a gap is written [...].";
    problems.trap("underscore-gap", range, message, write("Write [...]", range, "[...]"));
  }
}

const isMark = (text: string, at: number): boolean =>
  innerMark(text)?.mark === at || /^[^\S\n]*[-*+•–—][^\S\n]+$/.test(text.slice(text.lastIndexOf("\n", at) + 1, at));

/** `<!-- by: K7` without its end is printed. */
function openComment(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  const { text } = source;
  const start = text.lastIndexOf("<!--");
  if (start < 0 || mask[start] || text.includes("-->", start)) return;
  const line = /^.*/.exec(text.slice(start))?.[0].trimEnd() ?? "";
  const kept = line.slice(0, 4) + line.slice(4).replace(/\s*[-–—−]{0,2}[>›]?$/u, "");
  problems.trap(
    "open-comment",
    source.range(start, start + line.length),
    "This comment has no end, so that it is printed.",
    write("End it", source.range(start + kept.length, start + line.length), " -->"),
  );
}
