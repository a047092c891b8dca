import type { Report, Rule } from "../../base/finding";
import type { Range } from "../../base/range";
import { plain, type Run } from "../../base/run";
import { type CheckContext, sectionsInUse, takenOf } from "../context";
import { eachPhrase, PhraseMemory } from "../phrases";

/** Letters of other scripts that are drawn like Latin ones: a part of the confusables of Unicode Technical Standard 39. */
const likeLatin: Readonly<Record<string, string>> = Object.fromEntries(
  ["аaеeоoрpсcуyхxіiјjѕsһhԁdАAВBЕEКKМMНHОOРPСCТTУYХXІIЈJЅS", "οoνvΑAΒBΕEΖZΗHΙIΚKΜMΝNΟOΡPΤTΥYΧX"].flatMap((both) =>
    [...both].flatMap((letter, i, all) => (i % 2 === 0 ? [[letter, all[i + 1] ?? ""]] : [])),
  ),
);
const fromLatin: Readonly<Record<string, readonly string[]>> = Object.entries(likeLatin).reduce<
  Record<string, string[]>
>((table, [other, latin]) => {
  table[latin] = [...(table[latin] ?? []), other];
  return table;
}, {});

const scripts = { Latin: /\p{Script=Latin}/u, Cyrillic: /\p{Script=Cyrillic}/u, Greek: /\p{Script=Greek}/u };
type Script = keyof typeof scripts;

const someOther = /[\u0370-\u03ff\u0400-\u052f]/;
const someLatin = /[A-Za-z]/;

const kept = new PhraseMemory();

export const mixedLetters: Rule<CheckContext> = {
  code: "mixed-letters",
  severity: "warning",
  title: "Letters of two scripts in one word",
  why: "One letter of this word is of another script than the rest, though on paper it looks the same: on a keyboard with two scripts that happens easily. Learners see one word where Cutwork has two, so that no proof counts for them.",
  example: {
    wrong:
      "## Home\n\n- a \u0441asa = the house\n- a porta = the door\n- a sala = the living room\n- a cama = the bed\n\n```activity\nmake: tiles\n```",
    right:
      "## Home\n\n- a casa = the house\n- a porta = the door\n- a sala = the living room\n- a cama = the bed\n\n```activity\nmake: tiles\n```",
  },
  check: (context) => {
    const { text } = context.unit;
    const reports: Report[] = [];
    const hasBoth = ({ runs }: { readonly runs: readonly Run[] }): boolean => {
      const printed = plain(runs);
      return someOther.test(printed) && someLatin.test(printed);
    };
    for (const section of sectionsInUse(context)) {
      if (!kept.has(context.unit, section, hasBoth)) continue;
      eachPhrase(takenOf(context, section), ({ runs, range }) => {
        const printed = plain(runs);
        for (const [word] of printed.matchAll(/[\p{L}\p{M}]+/gu)) {
          const mixed = mixedIn(word);
          const place = mixed && placeOf(word, range, text);
          if (mixed) reports.push(report(word, mixed, place ?? range, place !== undefined));
        }
      });
    }
    return reports;
  },
};

interface Mixed {
  readonly letters: readonly string[];
  readonly script: Script;
  readonly rest: Script;
  /** The word in one script. */
  readonly mended: string;
}

/** The letters of a word that are of another script than the rest, where each looks like one of that; the fewer ones if both do. */
function mixedIn(word: string): Mixed | undefined {
  const counts = (Object.keys(scripts) as Script[])
    .map((name) => ({ name, count: [...word].filter((letter) => scripts[name].test(letter)).length }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  const [most, least, third] = counts.map(({ name }) => name);
  if (!most || !least || third || (most !== "Latin" && least !== "Latin")) return undefined;
  return straysIn(word, least, most) ?? straysIn(word, most, least);
}

function straysIn(word: string, script: Script, rest: Script): Mixed | undefined {
  const like = (letter: string): string | undefined =>
    rest === "Latin" ? likeLatin[letter] : fromLatin[letter]?.find((each) => scripts[rest].test(each));
  const letters = [...word];
  const strays = letters.filter((letter) => scripts[script].test(letter));
  if (strays.some((letter) => like(letter) === undefined)) return undefined;
  const mended = letters.map((letter) => (scripts[script].test(letter) ? (like(letter) ?? letter) : letter));
  return { letters: [...new Set(strays)], script, rest, mended: mended.join("") };
}

function placeOf(word: string, { start, end }: Range, text: string): Range | undefined {
  const at = text.slice(start, end).indexOf(word);
  return at < 0 ? undefined : { start: start + at, end: start + at + word.length };
}

function report(word: string, { letters, script, rest, mended }: Mixed, range: Range, found: boolean): Report {
  const which = letters.map((letter) => `“${letter}”`).join(", ");
  return {
    range,
    message: `In “${word}” ${which} ${letters.length === 1 ? `is a ${script} letter` : `are ${script} letters`} among ${rest} ones: it looks like “${mended}” and is another word.`,
    fixes: found ? [{ title: "Write all of it in one script", edits: [{ range, text: mended }], preferred: true }] : [],
  };
}
