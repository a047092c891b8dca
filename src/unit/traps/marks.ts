import type { Range } from "../../base/range";
import { stops } from "../../base/stops";
import type { RawItem } from "../items";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { markBehind } from "./end-marks";
import { boxes, type Custom, falseWords, isWord, trueWords, truthOf } from "./mark-words";

/*
 * What was meant as the mark of a statement and is none.
 */

/** Nearly a statement's mark: with another sign, other brackets, or one bracket only. */
const nearlyMark =
  /^(?:\[\s*((?:[xXvV✓✔хХｘＸ✗✘✖✕×✅❌☑☒*–−-]\uFE0F?)?)\s*\](?!\(|\[|:)|\[([ xX])\]:(?=\s)|\\\[(?:\s*([xX ])\s*\\|(\\?)|([xX ])(?=\]\s))\]|\[\s*([xX ])\s*[)}]|\(\s*([xX])\s*\]|[［【]\s*([xXｘＸхХ]?)\s*[］】]|\*{1,2}\[([ xX])\]\*{1,2}|\(\s*([xXхХ]?)\s*\)|\[([xX])(?=\s)(?![^\]\n]*\])|([☐☑☒✓✔✖✅❌✗✘]\uFE0F?))(?:[.)](?=\s))?\s*/u;

/** `✓ copied`, `☐ bring tape`, `(x) checked`: what is done or to do, where no sentence stands behind it and nothing else is judged. */
const done = new RegExp(
  `^(?:\\(\\s*[xXхХ]?\\s*\\)|[${boxes}]\\uFE0F?)\\s*(?!\\P{L}*[\\p{Lu}\\p{Lo}][^\\n]*[${stops}]\\P{L}*$)`,
  "u",
);

/** Whether texts are a list of what is done and what is not. */
const areDone = (texts: readonly string[]): boolean => texts.every((text) => done.test(text));

/** What is known of the marks of a section. */
export interface Marked {
  /** Plain items that begin with a mark are likely to be statements that went wrong. */
  readonly judged: boolean;
  readonly custom: Custom;
  /** Marks of statements that are read as true where a cross would say false. */
  readonly crossed: readonly Range[];
  /** What the marks say that stand at the end of all plain items. */
  readonly ended: Custom | undefined;
  /** True statements end with words in brackets too, so that those are remarks. */
  readonly remarked: boolean;
}

/**
 * `[x]text`, `[]`, `[ x ]`, `(x)`, `[✓]`, `☑`: nearly a statement's mark; where the section has statements also `[F]`, `[нет]`, and
 * anywhere `Falso: A sopa está fria.` Whether there was one.
 */
export function statementMark({ text: source }: RawItem, marked: Marked, problems: Problems): boolean {
  const { judged, custom } = marked;
  const match = nearlyMark.exec(source.text);
  if (!match) {
    const other =
      judged && (otherMark(source, marked, problems) || bareMark(source, problems) || markBehind(source, problems));
    return other || claimed(source, problems);
  }
  if (!judged && done.test(source.text)) return true;
  const sign = signOf(match);
  // Marked as true one by one, what is true could not be told from what is crossed.
  const truth = noSign.test(sign) ? false : custom.crossed ? undefined : custom.of(sign);
  tell(source, match[0], truth, problems);
  return true;
}

/** `[x]` where `[✓]` says true and nothing has empty brackets: it is read as true. */
export function crossedMark({ text: source }: RawItem, { crossed }: Marked, problems: Problems): void {
  if (crossed.length === 0 || !/^\[[xX]\]\s/.test(source.text)) return;
  problems.trap(
    "meant-as-statement",
    source.range(0, 3),
    "This is read as true. Where another sign says true a cross may be meant as false, which is “[ ]”.",
    { title: "Write “[ ]” for all crosses", edits: crossed.map((range) => ({ range, text: "[ ]" })), unsure: true },
  );
}

const noSign = /^[–−☐ \\-]?$/u;

/** The sign in a mark, or which it is. */
function signOf(match: RegExpExecArray): string {
  return match.slice(1).find((each) => each !== undefined) ?? "";
}

/** What a mark with another sign says, whatever others there are. */
function truthOfMatch(match: RegExpExecArray): boolean | undefined {
  const sign = signOf(match);
  return /^[×✕]/u.test(sign) ? undefined : !noSign.test(sign) && !/^[✗✘✖☒❌]/u.test(sign);
}

/** A mark in any brackets, or a sign without. A word in round ones may be anything. */
const anyBrackets =
  /^[[［【(（〔][^\S\n]*((?:[\p{L}\p{M}]{1,10}|[√○〇◯⭕×✕✖✗✘✓✔✅❌☑☒👍👎]\uFE0F?)?)[^\S\n]*[\]］】)）〕](?![([:])[^\S\n]*(?=\S)/u;
const bareSign = /^([○〇◯⭕×✕✖✗✘✓✔√☑☒✅❌👍👎]\uFE0F?)[^\S\n]*(?=\p{P}*\p{L})/u;
const bareLetter = /^(\p{L})[^\S\n]+(?=\p{P}*\p{Lu})/u;

function anyMark(text: string): { readonly written: string; readonly mark: string } | undefined {
  const match = anyBrackets.exec(text) ?? bareSign.exec(text);
  const mark = match?.[1] ?? "";
  if (!match || (/^[(（]/u.test(text) && [...mark].length > 1 && truthOf(mark) === undefined)) return undefined;
  return { written: match[0], mark };
}

/** The marks that texts begin with; a letter without brackets counts where each text begins with one. */
export function marksOf(texts: readonly string[]): { readonly marks: readonly string[]; readonly all: boolean } {
  const found = texts.map((text) => anyMark(text)?.mark);
  const marks = found.flatMap((mark) => mark ?? []);
  if (marks.length > 0) return { marks, all: texts.length > 1 && marks.length === texts.length && !areDone(texts) };
  const letters = texts.map((text) => bareLetter.exec(text)?.[1]);
  const all = texts.length > 1 && letters.every((letter) => letter !== undefined);
  return { marks: all ? letters : [], all };
}

/**
 * Says that all of `written`, at the beginning of an item, is no mark; `truth` where it is clear what it was to say, `unsure` where
 * it may well be no mark at all.
 */
function tell(
  source: SourceText,
  written: string,
  truth: boolean | undefined,
  problems: Problems,
  unsure = false,
): void {
  const mark = truth ? "[x] " : "[ ] ";
  const fix = write(`Write “${mark.trim()}”`, source.range(0, written.length), mark);
  problems.trap(
    "meant-as-statement",
    source.range(0, written.trimEnd().length),
    "A statement begins with “[x] ” when it is true and “[ ] ” when it is false; this item is read as plain text.",
    ...(truth === undefined ? [] : [unsure ? { ...fix, unsure: true as const } : fix]),
  );
}

/** A short text in brackets at the beginning of an item, as `[F]`. */
const bracketed = /^\[[^\S\n]*([\p{L}\p{N}\p{M}√○◯●?!+]{1,10})[^\S\n]*\](?![([:])[^\S\n]*(?=\S)/u;

/** `[F]`, `[о]`, `[да]`: the mark in brackets that a text begins with, where it is one: a known word, or very short. */
function bracketMark(
  text: string,
): { readonly written: string; readonly mark: string; readonly truth: boolean | undefined } | undefined {
  const match = bracketed.exec(text);
  if (!match?.[1]) return undefined;
  const truth = truthOf(match[1]);
  // A number may well be that of a source or a note.
  if (truth === undefined && (match[1].length > 3 || /\p{N}/u.test(match[1]))) return undefined;
  return { written: match[0], mark: match[1], truth };
}

/** Whether all bullets of a section, by their texts, begin with marks in brackets, of which one at least is a known one. */
export function allMarked(texts: readonly string[]): boolean {
  if (texts.length < 2 || areDone(texts)) return false;
  const marks = texts.map((text) => (nearlyMark.test(text) ? { truth: true } : bracketMark(text)));
  return marks.every(Boolean) && marks.some((mark) => mark?.truth !== undefined);
}

export interface Mark {
  /** With the white space behind it. */
  readonly written: string;
  readonly truth: boolean;
}

/** What a mark in brackets, or a tick or cross alone, begins with. */
const marked = new RegExp(`^[[［【${boxes}]`, "u");

/** The mark in brackets, other than `[x]` and `[ ]`, or the tick or cross that a text begins with, where it is clear what it says. */
export function clearMark(text: string): Mark | undefined {
  const nearly = marked.test(text) && !/^\[[ xX]\]\s/.test(text) ? nearlyMark.exec(text) : null;
  // A number may well be that of a source or a note.
  const mark = nearly
    ? { written: nearly[0], truth: truthOfMatch(nearly) }
    : /^\[\s*\d/.test(text)
      ? undefined
      : bracketMark(text);
  return mark?.truth === undefined ? undefined : { written: mark.written, truth: mark.truth };
}

/** Whether all texts are judged by clear marks, some as true and some as false. A letter alone may well be a speaker's. */
export function allJudged(texts: readonly string[]): boolean {
  const truths = texts.map((text) => clearMark(text)?.truth);
  return truths.includes(true) && truths.includes(false) && !truths.includes(undefined);
}

function otherMark(source: SourceText, { custom }: Marked, problems: Problems): boolean {
  const { text } = source;
  const found = anyMark(text);
  const letter = !found && custom.both ? bareLetter.exec(text) : null;
  const mark = found?.mark ?? letter?.[1] ?? "";
  const truth = custom.crossed ? undefined : custom.of(mark);
  const isKnown = found && (custom.both || found.written[0] === mark[0] || isWord(mark));
  if ((isKnown || letter) && (custom.crossed || truth !== undefined)) {
    // A letter alone may well be a speaker's.
    tell(source, found?.written ?? letter?.[0] ?? "", truth, problems, !found);
    return true;
  }
  const other = bracketMark(text);
  if (!other) return false;
  // A number may well be that of a source.
  const isNumber = /^\[\s*\d/.test(other.written);
  const said = custom.crossed ? undefined : isNumber ? other.truth : custom.of(other.mark);
  tell(source, other.written, said, problems, isNumber);
  return true;
}

/** A word or a letter that judges, with a sign behind it, or one of few letters alone, before a sentence of two words at least. */
const judging =
  /^[*_]{0,3}(?:(\p{L}{1,12})[*_]{0,3}[^\S\n]*[:：;)–—-]{1,2}[*_]{0,3}|([vVfF])\.|([xXvVfF]))[^\S\n]+(?=\p{P}*\p{Lu}\S*\s+\S)/u;

/** `x A sopa está fria.`, `F A sopa …`, `R: …`, `falso – …` among statements. */
function bareMark(source: SourceText, problems: Problems): boolean {
  const match = judging.exec(source.text);
  const word = match?.slice(1).find((each) => each !== undefined) ?? "";
  // “Nein – Rita kommt.” is what somebody says; so is what stands behind most initials.
  const long = word.toLowerCase();
  if (word.length > 1 ? !trueWords.has(long) && !falseWords.has(long) : !/^[xvfrt]$/.test(long)) return false;
  const truth = long === "x" ? true : truthOf(word);
  if (!match || truth === undefined || /[?？؟]\P{L}*$/u.test(source.text)) return false;
  tell(source, match[0], truth, problems, word.length === 1 && long !== "x");
  return true;
}

/** `Falso: A sopa está fria.`, also in bold: a word for true or false, a colon and a sentence. */
const claim = /^([*_]{0,3})([\p{L}\p{M}]{3,12})(?:\1[^\S\n]*[:：]|[^\S\n]*[:：]\1)[^\S\n]*(?=\p{P}*\p{Lu}\S*\s+\S)/u;

function claimed(source: SourceText, problems: Problems): boolean {
  const match = claim.exec(source.text);
  const word = match?.[2]?.toLowerCase() ?? "";
  if (!match || !(trueWords.has(word) || falseWords.has(word))) return false;
  tell(source, match[0], trueWords.has(word), problems);
  return true;
}
