import type { LineIndex } from "../../base/range";
import type { Steps } from "../../base/steps";
import { type Env, type Span, scan, spacedSeparators, TextMemory } from "../inline";
import type { RawItem } from "../items";
import { drop, type Problems, write } from "../problems";
import type { Shape } from "../shapes";
import type { SourceText } from "../source-text";
import type { Together } from "../together";
import { remarkAt } from "./bare-remarks";
import { gluedPairs, unpartedPair } from "./both-sides";
import { boxedPair } from "./boxed-pair";
import { correctionInLine } from "./corrections";
import { acrossEmphasis } from "./emphasis";
import { endMark } from "./end-marks";
import { lineStart, pairLines } from "./glued";
import { lostOrder } from "./lost-orders";
import { clearMark, crossedMark, type Marked, statementMark } from "./marks";
import { meantAsPair } from "./nearly-pairs";
import { nestedItem } from "./nested-item";
import { nestedNumbers, numberedMark, numberedPair, numberedStatement } from "./numbered-items";
import { eventInLine, marksInLine, pairInLine } from "./one-line";
import { linkedPictures, secondPictures } from "./pictures";
import { lastBackslash, printedBackslash } from "./printed-backslash";
import { printedBars } from "./printed-bars";
import { printedDot } from "./printed-counters";
import { textTraps } from "./text-traps";
import { tightSlash } from "./tight-slash";

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
  if (shape !== "text") {
    lastBackslash(item.text, comments[0]?.start ?? text.length, problems);
    for (const nested of item.nested) lastBackslash(nested.text, nested.text.text.length, problems);
  }
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

function secondCorrection({ text: source, block }: RawItem, problems: Problems): void {
  problems.trap(
    "second-correction",
    source.whole,
    "Only the first bullet under a statement is its correction; this one is not read.",
    drop("Take it out", block),
  );
}
