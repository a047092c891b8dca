import type { RawItem } from "../items";
import type { Problems } from "../problems";
import type { SourceText } from "../source-text";
import { type Custom, customOf, truthOf, truthOfSign } from "./mark-words";

/*
 * Marks that stand behind their statements: `- O pão voa. [ ]`, `- A hal úszik. (I)`, `- O pão voa. – F`.
 */

const behind =
  /^(?!\[)([^\n]*\S)[^\S\n]+(?:([[(（［])[^\S\n]*([\p{L}\p{M}]{1,10}|[√○〇◯×✕✖✗✘✓✔✅❌]\uFE0F?|)[^\S\n]*[\])）］]|[–—-][^\S\n]+(\p{L}{1,12}))[^\S\n]*$/u;

const markOf = (match: RegExpExecArray | null): string | undefined => match?.[3] ?? match?.[4];

/**
 * What the marks say with which all texts end; undefined where some have none, or not both are used. Beside statements, `judged`, one
 * in square brackets is enough; others are told by each sentence there.
 */
export function endCustom(texts: readonly string[], judged: boolean): Custom | undefined {
  if (texts.length < (judged ? 1 : 2)) return undefined;
  const marks = texts.flatMap((text) => markOf(behind.exec(text)) ?? []);
  if (marks.length < texts.length) return undefined;
  const isBoxes = marks.every((mark) => /^[xX]?$/.test(mark));
  if (isBoxes && (judged || new Set(marks.map((mark) => mark === "")).size > 1))
    return { key: "end", both: true, crossed: false, of: (mark) => mark !== "" };
  const custom = customOf(marks, []);
  return custom.both && !judged ? custom : undefined;
}

/** Tells the mark at the end of an item, where all have one. */
export function endMark({ text: source }: RawItem, custom: Custom, problems: Problems): void {
  const match = behind.exec(source.text);
  const truth = custom.of(markOf(match) ?? "");
  if (!match?.[1] || truth === undefined) return;
  // A letter may say something else of a sentence.
  tell(source, match[1].length, truth, match[2] !== "[", problems);
}

/** A tick, a cross, or a word or letter in brackets behind a sentence. */
const behindSentence =
  /^(\S+\s[^\n]*[.!…。！]\p{P}*)\s*(?:([✓✔✅❌✗✘☑☒])\uFE0F?|[([（［]\s*(\p{L}{1,12}|[✓✔✗✘])\s*[)\]）］])\s*$/u;

/** `A sopa está fria. (falso)`, `A sopa arde. ✓` among statements, whatever others have. Whether there is such a mark. */
export function markBehind(source: SourceText, problems: Problems): boolean {
  const [, said = "", sign, word = sign ?? ""] = behindSentence.exec(source.text) ?? [];
  if (said === "") return false;
  const truth = truthOfSign(word.toLowerCase()) ?? truthOf(word);
  // A small letter says a gender, or a number.
  if (truth === undefined || /^(?![xXTFVR])\p{L}$/u.test(word)) return false;
  tell(source, said.length, truth, true, problems);
  return true;
}

function tell(source: SourceText, start: number, truth: boolean, unsure: boolean, problems: Problems): void {
  const { text } = source;
  problems.trap(
    "meant-as-statement",
    source.range(start + (/\S/.exec(text.slice(start))?.index ?? 0), text.trimEnd().length),
    "This mark stands behind its text: a statement begins with “[x] ” when it is true and “[ ] ” when it is false.",
    {
      title: `Write “[${truth ? "x" : " "}]” before it`,
      edits: [
        { range: source.range(0, 0), text: truth ? "[x] " : "[ ] " },
        { range: source.range(start, text.length), text: "" },
      ],
      ...(unsure ? { unsure: true as const } : {}),
    },
  );
}
