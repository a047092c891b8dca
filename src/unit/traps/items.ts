import type { LineIndex, Range } from "../../base/range";
import type { Steps } from "../../base/steps";
import { type Env, type Span, scan, spacedSeparators, TextMemory } from "../inline";
import type { RawItem } from "../items";
import { drop, type Problems, write } from "../problems";
import type { Shape } from "../shapes";
import type { SourceText } from "../source-text";
import type { Together } from "../together";
import { bareRemark, remarkAt } from "./bare-remarks";
import { gluedPairs, unpartedPair } from "./both-sides";
import { boxedPair } from "./boxed-pair";
import { correctionInLine } from "./corrections";
import { acrossEmphasis } from "./emphasis";
import { endMark } from "./end-marks";
import { lineStart, pairLines } from "./glued";
import { nearlyPicture, picturePath } from "./links";
import { changedComment, colouredText, isAtEnding, looseEmphasis, lowEndings } from "./loose-signs";
import { lostOrder } from "./lost-orders";
import { clearMark, crossedMark, type Mark, type Marked, statementMark } from "./marks";
import { meantAsPair } from "./nearly-pairs";
import { nestedItem } from "./nested-item";
import { eventInLine, innerMark, marksInLine, pairInLine } from "./one-line";
import { linkedPictures, secondPictures } from "./pictures";
import { printedBackslash } from "./printed-backslash";
import { printedBars } from "./printed-bars";
import { printedDot } from "./printed-counters";
import { tightSlash } from "./tight-slash";
import { unprinted } from "./unprinted";

/*
 * What is easily written into an item in a form that means something else, or nothing. Each looks at the raw text, outside of
 * code, links and comments.
 */

/** Texts of late in which there was nothing to tell, by what they were read as. */
const clean = new Map<string, TextMemory<true>>();

/** What is known of the items round one when all of its section is read. */
export interface Around {
  /** It stands in no pile, and its section has pairs or nothing else. */
  readonly lone: boolean;
  /** The bullets of its section. */
  readonly bullets: Together;
  /** What the marks of its section say; of an event, whether its events are judged. */
  readonly marked: Marked;
  readonly lines: LineIndex;
}

/** Looks at one item of a list, read as `shape`; pauses between looks. */
export function* itemTraps(
  item: RawItem,
  shape: Shape,
  around: Around,
  env: Env,
  problems: Problems,
): Steps<void, undefined> {
  const { text, nested, numbered = [] } = item;
  // What stands under an item counts too, the indents of further lines, and its own number before another in its line.
  const counted = shape === "event" && /[.!?…;]\S*\s+\d+[.)]\s/u.test(text.text);
  const alone = text.isWhole && nested.length === 0 && numbered.length === 0 && !counted;
  const { bullets, lone, marked } = around;
  yield* bullets.finding();
  const as = `${shape} ${lone} ${marked.judged} ${marked.custom.key} ${marked.ended?.key} ${marked.remarked} ${bullets.key}`;
  const known = clean.get(as) ?? new TextMemory<true>();
  clean.set(as, known);
  if (alone && known.find(text.text, env)) return;
  const before = problems.list.length;
  const { asked } = bullets;
  yield* looking(item, shape, around, env, problems);
  const told = problems.list.length > before || bullets.asked > asked;
  if (alone && !told) known.get(text.text, env, () => true);
}

function* looking(item: RawItem, shape: Shape, around: Around, env: Env, problems: Problems): Steps<void, undefined> {
  const { text } = item.text;
  const { mask, comments } = scan(text, env);
  const open = (span: Span): boolean => !mask.slice(span.start, span.end).some(Boolean);
  const { ended } = around.marked;
  if (shape === "text" && ended) {
    endMark(item, ended, problems);
    return;
  }
  textTraps(item.text, env, problems);
  underline(item, problems);
  if (shape !== "text") printedDot(item.text, problems);
  yield;
  if (shape === "text") {
    const end = comments[0]?.start ?? text.length;
    const told = problems.list.length;
    const isStatement = statementMark(item, around.marked, problems);
    yield;
    if (!isStatement && around.lone) {
      meantAsPair(item, open, end, around, problems);
      yield;
      if (problems.list.length === told && !mask.some(Boolean)) unpartedPair(item, end, around.bullets, problems);
    }
  }
  if (shape === "event") {
    eventInLine(item, around.lines, open, problems);
    linkedPictures(item.text, undefined, env, problems);
    const mark = around.marked.judged ? clearMark(text) : undefined;
    if (/^\[[ xX]\]\s/.test(text)) numberedStatement(item, problems);
    else if (mark) numberedMark(item, mark, problems);
    else {
      const own = pairLines(text, mask);
      const signs = spacedSeparators(text, mask, "=").filter(
        (sign) => !own.has(lineStart(text, sign.start + text.slice(sign.start).search(/[=＝]/u))),
      );
      if (signs.length > 0) numberedPair(item, problems);
    }
  }
  if (shape === "pair") {
    const signs = spacedSeparators(text, mask, "=", 0, comments[0]?.start ?? text.length);
    pairInLine(item, mask, signs, around.lines, problems);
    acrossEmphasis(item.text, "pair", env, problems);
    yield;
    lopsidedSlash(item.text, open, problems);
    printedBackslash(item.text, signs[0], problems);
    tightSlash(item.text, open, problems);
    yield;
    printedBars(item.text, env, problems);
    lostOrder(item, env, problems);
    yield;
    linkedPictures(item.text, "pair", env, problems);
    gluedPairs(around.lines, item, around.bullets, problems);
  }
  if (shape !== "text" && text.includes("!["))
    secondPictures(item.text, shape === "pair" ? "pair" : undefined, env, problems);
  for (const nested of item.nested) textTraps(nested.text, env, problems);
  if (shape !== "text") nestedNumbers(item, shape === "event", problems);
  if (shape === "event") return;
  const plain = item.nested.filter(
    (nested) => !nestedItem(nested, item, shape === "text", { lines: around.lines, env, problems }),
  );
  yield;
  if (shape === "statement") crossedMark(item, around.marked, problems);
  if (shape === "statement") boxedPair(item.text, mask, problems);
  if (shape === "statement") marksInLine(item, around.lines, comments[0]?.start ?? text.length, open, problems);
  if (shape === "statement") correctionInLine(item, around, open, problems);
  if (shape === "statement") for (const further of plain.slice(1)) secondCorrection(further, problems);
}

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

/** A line of equals signs or hyphens under an item, which makes it a heading or is printed. */
function underline({ text: source }: RawItem, problems: Problems): void {
  // Formatters put a backslash before such a line.
  const match = /\n[^\S\n]*\\?={2,}[^\S\n]*(?=\n|$)/.exec(source.text);
  if (!match) return;
  const start = match.index;
  const range = source.range(start + 1, start + match[0].length);
  const before = source.source(start);
  problems.trap(
    "underlined-item",
    range,
    "This line of signs would be printed as part of the item.",
    write("Take the line out", { start: before, end: range.end }, ""),
  );
}

/** `egg/ eggs`: a slash with white space on one side only is printed; so is a wide one with none. */
function lopsidedSlash(source: SourceText, open: (span: Span) => boolean, problems: Problems): void {
  const backslash = /(?<=[^\s=＝])[^\S\n]+\\[^\S\n]+(?=[^\s=＝])/u.exec(source.text);
  if (backslash) {
    const range = source.range(backslash.index, backslash.index + backslash[0].length);
    const message = "This backslash is printed: between two accepted answers stands a slash.";
    problems.trap("lopsided-slash", range, message, write("Write “ / ”", range, " / "));
  }
  if (!/\S[/／]\s|\s[/／]\S|\S／\S/u.test(source.text)) return;
  for (const match of source.text.matchAll(
    /(?<=[^\s/／<>:])[/／][^\S\n]+(?=[^\s/／=])|(?<=[^\s/／=])[^\S\n]+[/／](?=[^\s/／])|(?<=[^\s/／])／(?=[^\s/／])|(?<=[^\s/／=＝])[^\S\n]+[/／]{2}[^\S\n]+(?=[^\s/／=＝])(?!<!--)/gu,
  )) {
    const span = { start: match.index, end: match.index + match[0].length };
    // At the end of an address it is a part of that.
    if (!open(span) || /:\/\/\S*$/.test(source.text.slice(0, span.start))) continue;
    const range = source.range(span.start, span.end);
    if (/[/／]{2}/u.test(match[0])) {
      if (remarkAt(source.text, span.start)) continue;
      const message = "These slashes are printed: between two accepted answers stands one.";
      problems.trap("lopsided-slash", range, message, write("Write “ / ”", range, " / "));
      continue;
    }
    problems.trap(
      "lopsided-slash",
      range,
      "This slash is printed: between two accepted answers white space stands on both its sides.",
      // Two in a text without white space may be meant to cut it.
      match[0].includes("／")
        ? {
            ...write("Write “ ／ ”", range, " ／ "),
            ...(/^\S+／\S+／/u.test(source.text) ? { unsure: true as const } : {}),
          }
        : {
            ...write("Write “ / ”", range, " / "),
            ...(partsForms(source.text, span) ? { unsure: true as const } : {}),
          },
      write(
        "Mark it as text",
        source.range(span.start + match[0].search(/[/／]/u), span.start + match[0].search(/[/／]/u)),
        "\\",
      ),
    );
  }
}

/** `bonito /a`, `um aluno /uma aluna`: an ending or another form of the word behind a slash is hardly an answer of its own. */
function partsForms(text: string, { start, end }: Span): boolean {
  const words = (side: string): string[] => side.toLowerCase().match(/[\p{L}\p{M}]+/gu) ?? [];
  const [before, behind] = [
    text
      .slice(0, start)
      .split(/\s[=＝/／]\s/u)
      .at(-1) ?? "",
    text.slice(end).split(/\s[=＝/／]\s/u, 1)[0] ?? "",
  ];
  if (/^\s*(?:[-~–]\p{L}|\p{L}{1,2}(?!\S))/u.test(behind)) return true;
  const stems = new Set(words(before).flatMap((word) => (word.length > 3 ? [word.slice(0, 3)] : [])));
  return words(behind).some((word) => word.length > 3 && stems.has(word.slice(0, 3)));
}

function numberedPair({ text: source, block }: RawItem, problems: Problems): void {
  const start = source.source(0);
  problems.trap(
    "numbered-pair",
    source.whole,
    "A numbered item is an event of a story; its “ = ” is read as text. A pair stands behind a hyphen.",
    write("Make it a pair", { start: block.start, end: start }, "- "),
  );
}

function numberedStatement({ text: source, block }: RawItem, problems: Problems): void {
  const start = source.source(0);
  problems.trap(
    "numbered-statement",
    source.range(0, 3),
    "A numbered item is an event of a story; its mark is read as text. A statement stands behind a hyphen.",
    write("Make it a statement", { start: block.start, end: start }, "- "),
  );
}

/** `1. [F] O mar é seco.`: a number instead of the hyphen, and another mark too. */
function numberedMark({ text: source, block }: RawItem, { written, truth }: Mark, problems: Problems): void {
  const sign = truth ? "[x]" : "[ ]";
  const range = { start: block.start, end: source.source(written.length) };
  problems.trap(
    "numbered-statement",
    source.range(0, written.trimEnd().length),
    "A numbered item is an event of a story, and this mark is read as text. A statement stands behind a hyphen, with “[x]” when it is true and “[ ]” when it is false.",
    write(`Write “- ${sign}”`, range, `- ${sign} `),
  );
}

/** Numbered items under an item: only bullets are read there. Under an event those may stand in any order, and steps may not. */
function nestedNumbers({ numbered = [] }: RawItem, ofEvent: boolean, problems: Problems): void {
  const [first] = numbered;
  if (!first) return;
  const sign = ({ text: source, block }: RawItem): Range => ({ start: block.start, end: source.source(0) });
  problems.trap(
    "nested-number",
    first.text.whole,
    "Numbered items under another item are not read; what belongs to that one stands behind hyphens.",
    {
      title: ofEvent && numbered.length > 1 ? "Make bullets of them, in any order" : "Make bullets of them",
      edits: numbered.map((item) => ({ range: sign(item), text: "- " })),
      ...(ofEvent && numbered.length > 1 ? { unsure: true as const } : {}),
    },
  );
}

function secondCorrection({ text: source, block }: RawItem, problems: Problems): void {
  problems.trap(
    "second-correction",
    source.whole,
    "Only the first bullet under a statement is its correction; this one is not read.",
    drop("Take it out", block),
  );
}
