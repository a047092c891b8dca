import type { RawItem } from "../items";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * What was meant as the mark of a statement and is none.
 */

/** Words for true and false in languages that are often taught or explain. */
const trueWords = words(
  "true right correct verdadeiro verdadeira certo correto correcto verdadero cierto correcto vrai juste vero giusto richtig wahr stimmt правда правильно вірно верно prawda waar",
);
const falseWords = words(
  "false wrong incorrect falso falsa errado incorreto incorrecto faux falsch unwahr sbagliato неправда неправильно невірно неверно ложь хиба fałsz onwaar",
);

/** Letters, signs and short words that say the same in brackets. `o`, `w` or `e` may say either. */
const trueMarks = words("v r t p c s 1 ok √ + sim sí si sì oui yes y ja j tak да д так п");
const falseMarks = words("f n 0 não nao no non nein nie нет ні н л х");

function words(text: string): ReadonlySet<string> {
  return new Set(text.split(" "));
}

/** Nearly a statement's mark: with another sign, other brackets, or one bracket only. */
const nearlyMark =
  /^(?:\[\s*([xXvV✓✔хХｘＸ✗✘✕×*–−-]?)\ufe0f?\s*\](?!\(|\[|:)(?:[.)](?=\s))?|\[([ xX])\]:(?=\s)|\\\[(?:\s*([xX ])\s*\\|(\\?)|([xX ])(?=\]\s))\]|\[\s*([xX ])\s*[)}]|\(\s*([xX])\s*\]|[［【]\s*([xXｘＸхХ]?)\s*[］】]|\*{1,2}\[([ xX])\]\*{1,2}|\(\s*([xXхХ]?)\s*\)|\[([xX])(?=\s)(?![^\]\n]*\])|([☐☑☒✓✔✅❌✗✘])\ufe0f?)\s*/u;

/** `✓ copied`, `☐ bring tape`, `(x) checked`: what is done or to do, where no sentence stands behind it and nothing else is judged. */
const done = /^(?:\(\s*[xXхХ]?\s*\)|[☐☑☒✓✔✅❌✗✘]\ufe0f?)\s*(?!\P{L}*[\p{Lu}\p{Lo}][^\n]*[.!?…。！？]\P{L}*$)/u;

/**
 * `[x]text`, `[]`, `[ x ]`, `(x)`, `[✓]`, `☑`: nearly a statement's mark; where the section has statements also `[F]`, `[нет]`, and
 * anywhere `Falso: A sopa está fria.` Whether there was one.
 */
export function statementMark({ text: source }: RawItem, judged: boolean, problems: Problems): boolean {
  const match = nearlyMark.exec(source.text);
  if (!match)
    return (
      (judged && (otherMark(source, problems) || bareMark(source, problems) || markBehind(source, problems))) ||
      claimed(source, problems)
    );
  if (!judged && done.test(source.text)) return true;
  tell(source, match[0], truthOfSign(match), problems);
  return true;
}

/** What a mark with another sign says. */
function truthOfSign(match: RegExpExecArray): boolean {
  const sign = match.slice(1).find((each) => each !== undefined) ?? "";
  return !/^[✗✘–−☐❌☒ \\-]?$/u.test(sign);
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

/** What a mark in other words or letters says; undefined where it is none, or may say either. */
function truthOf(written: string): boolean | undefined {
  const word = written.toLowerCase();
  if (trueMarks.has(word) || trueWords.has(word)) return true;
  return falseMarks.has(word) || falseWords.has(word) ? false : undefined;
}

/** A short text in brackets at the beginning of an item, as `[F]`. */
const bracketed = /^\[[^\S\n]*([\p{L}\p{N}\p{M}√○◯●?!+]{1,10})[^\S\n]*\](?![([:])[^\S\n]*(?=\S)/u;

/** `[F]`, `[о]`, `[да]`: the mark in brackets that a text begins with, where it is one: a known word, or very short. */
function bracketMark(text: string): { readonly written: string; readonly truth: boolean | undefined } | undefined {
  const match = bracketed.exec(text);
  if (!match?.[1]) return undefined;
  const truth = truthOf(match[1]);
  // A number may well be that of a source or a note.
  if (truth === undefined && (match[1].length > 3 || /\p{N}/u.test(match[1]))) return undefined;
  return { written: match[0], truth };
}

/** Whether all bullets of a section, by their texts, begin with marks in brackets, of which one at least is a known one. */
export function allMarked(texts: readonly string[]): boolean {
  if (texts.length < 2) return false;
  const marks = texts.map((text) => (nearlyMark.test(text) ? { truth: true } : bracketMark(text)));
  return marks.every(Boolean) && marks.some((mark) => mark?.truth !== undefined);
}

export interface Mark {
  /** With the white space behind it. */
  readonly written: string;
  readonly truth: boolean;
}

/** The mark in brackets, other than `[x]` and `[ ]`, or the tick or cross that a text begins with, where it is clear what it says. */
export function clearMark(text: string): Mark | undefined {
  const nearly = /^[[［【☐☑☒✓✔✅❌✗✘]/u.test(text) && !/^\[[ xX]\]\s/.test(text) ? nearlyMark.exec(text) : null;
  // A number may well be that of a source or a note.
  const mark = nearly
    ? { written: nearly[0], truth: truthOfSign(nearly) }
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

function otherMark(source: SourceText, problems: Problems): boolean {
  const mark = bracketMark(source.text);
  // A number may well be that of a source.
  if (mark) tell(source, mark.written, mark.truth, problems, /^\[\s*\d/.test(mark.written));
  return mark !== undefined;
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

/** A tick, a cross, or a word or letter in brackets behind a sentence. */
const behind =
  /^(\S+\s[^\n]*[.!…。！]\p{P}*)(\s*(?:([✓✔✅❌✗✘☑☒])\ufe0f?|[([（［]\s*(\p{L}{1,12}|[✓✔✗✘])\s*[)\]）］]))\s*$/u;

/** `A sopa está fria. (falso)`, `A sopa arde. ✓` among statements. */
function markBehind(source: SourceText, problems: Problems): boolean {
  const [, said = "", tail = "", sign, word = ""] = behind.exec(source.text) ?? [];
  const truth = /^[✓✔✅☑]/u.test(sign ?? word) ? true : /^[✗✘❌☒]/u.test(sign ?? word) ? false : truthOf(word);
  // A small letter says a gender, or a number.
  if (said === "" || /^(?![xX])[^TFVR✓✔✗✘]$/u.test(word)) return false;
  if (word !== "" && word.toLowerCase() !== "x" && truth === undefined) return false;
  const start = said.length + (/^\s*/.exec(tail)?.[0].length ?? 0);
  const mark = truth === false ? "[ ] " : "[x] ";
  problems.trap(
    "meant-as-statement",
    source.range(start, said.length + tail.trimEnd().length),
    "A statement begins with “[x] ” when it is true and “[ ] ” when it is false; this item is read as plain text.",
    {
      title: `Write “${mark.trim()}” before it`,
      edits: [
        { range: source.range(0, 0), text: mark },
        { range: source.range(said.length, said.length + tail.trimEnd().length), text: "" },
      ],
      unsure: true,
    },
  );
  return true;
}

/** `Falso: A sopa está fria.`, also in bold: a word for true or false, a colon and a sentence. */
const claim = /^([*_]{0,3})(\p{L}{4,12})(?:\1[^\S\n]*[:：]|[^\S\n]*[:：]\1)[^\S\n]*(?=\p{P}*\p{Lu}\S*\s+\S)/u;

function claimed(source: SourceText, problems: Problems): boolean {
  const match = claim.exec(source.text);
  const word = match?.[2]?.toLowerCase() ?? "";
  if (!match || !(trueWords.has(word) || falseWords.has(word))) return false;
  tell(source, match[0], trueWords.has(word), problems);
  return true;
}
