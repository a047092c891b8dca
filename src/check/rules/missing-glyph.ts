import type { Report, Rule } from "../../base/finding";
import type { Range } from "../../base/range";
import { plain, type Run } from "../../base/run";
import { mapped } from "../../base/steps";
import type { Typeface } from "../../text/typeface";
import { type CheckContext, sectionsInUse, takenOf } from "../context";
import { eachPhrase, PhraseMemory } from "../phrases";
import { glyphFixes, type Missed, type Option, occurrences } from "./glyph-fixes";

export const missingGlyph: Rule<CheckContext> = {
  code: "missing-glyph",
  severity: "error",
  lasting: true,
  title: "A character that cannot be printed",
  why: "The typeface has no drawing for this character, so that it would print as a box or not at all. The built-in face covers Latin with all diacritics, Greek and Cyrillic. Where several letters of another script are wanted, that is one finding, with all their places. Turned off, it is told as information still, since the character is left out on paper.",
  example: {
    wrong: "## Weather\n\n- o sol = the sun ☀\n\n```activity\nmake: tiles\n```",
    right: "## Weather\n\n- o sol = the sun\n\n```activity\nmake: tiles\n```",
  },
  *check(context) {
    const { unit, press } = context;
    const missed: Missed[] = [];
    const look = (option: Option, place: Range): void => report(press.typeface.missing(option.word), place, option);
    // A sign that is told as no bullet or mark is not meant to be printed.
    const signs = new Set(unit.problems.filter(({ code }) => signCodes.has(code)).map(({ range }) => range.start));
    const marks = unit.problems.filter(({ code }) => markCodes.has(code)).map(({ range }) => range);
    const isSign = (start: number): boolean =>
      signs.has(start) || marks.some((mark) => mark.start <= start && start < mark.end);
    const report = (missing: readonly string[], place: Range, option?: Option): void => {
      for (const character of missing) {
        const all = occurrences(unit.text, character, place);
        const places = all.filter(({ start }) => !isSign(start));
        // A wide slash that parts nothing is the matter of `lopsided-slash`.
        if (character === "／" && places.every(({ start }) => unit.text.charAt(start - 1) !== "\\")) continue;
        if (places.length > 0 || all.length === 0) missed.push({ character, place, places, option });
      }
    };
    const { typeface } = press;
    const memory = memoryOf(typeface);
    yield* mapped(sectionsInUse(context), (section) => {
      if (!memory.has(unit, section, ({ runs }) => missingIn(runs, typeface).length > 0)) return;
      eachPhrase(takenOf(context, section), ({ runs, range }) => void report(missingIn(runs, typeface), range));
    });
    const title = unit.front.entries.find(({ key }) => key === "title");
    if (title) look({ word: String(title.value) }, title.valueRange);
    for (const { block } of context.plan.activities) {
      for (const { key, value, valueRange, items } of block.options.entries) {
        if (key === "title") look({ word: String(value) }, valueRange);
        if (!wordOptions.has(key) || !Array.isArray(value)) continue;
        const words = value.map(String);
        for (const [i, word] of words.entries())
          look({ word, others: words.filter((_, k) => k !== i) }, items[i] ?? valueRange);
      }
    }
    const told = new Set<Missed>();
    const whole = scripts.flatMap((script) => wholeScript(script, missed, told));
    const single = missed.filter((each) => !told.has(each));
    return [
      ...whole,
      ...single.map(
        (each): Report => ({
          range: each.places[0] ?? each.place,
          message: isLost(each.character)
            ? `Here stands no character (${codePoints(each.character)}): it was lost when this text was copied or saved.`
            : `“${each.character}” (${codePoints(each.character)}) cannot be printed: the typeface does not have it.`,
          fixes: glyphFixes(each, context),
        }),
      ),
    ];
  },
};

/** Findings at a sign that stands for another one, and at a whole mark that does. */
const signCodes: ReadonlySet<string> = new Set([
  "not-an-item",
  "meant-as-pair",
  "printed-bar",
  "printed-counter",
  "lost-correction",
]);
const markCodes: ReadonlySet<string> = new Set(["meant-as-statement", "numbered-statement"]);

const isLost = (character: string): boolean => /^[\ufffd\p{Cc}]$/u.test(character);

/** Options whose lists are printed. */
const wordOptions: ReadonlySet<string> = new Set(["decoys", "distractors", "names"]);

/**
 * Scripts of languages that are taught at schools, besides those of the built-in face, by their names in Unicode: their letters, and
 * with them the marks that they share with others.
 */
const scripts = [
  { name: "Chinese characters", own: ["Han"] },
  { name: "Japanese kana", own: ["Hiragana", "Katakana"] },
  ...[
    "Arabic",
    "Armenian",
    "Bengali",
    "Devanagari",
    "Ethiopic",
    "Georgian",
    "Hangul",
    "Hebrew",
    "Khmer",
    "Tamil",
    "Thai",
  ].map((name) => ({ name, own: [name] })),
].map(({ name, own }) => ({ name, letters: inScripts("Script", own), signs: inScripts("Script_Extensions", own) }));

function inScripts(property: string, names: readonly string[]): RegExp {
  return new RegExp(`[${names.map((name) => `\\p{${property}=${name}}`).join("")}]`, "u");
}

/** So many different letters of one script are no slip of the pen. */
const fewest = 3;

/** One finding for all letters and marks of a script, at the first of their places; `told` gets what it says. */
function wholeScript(
  { name, letters, signs }: (typeof scripts)[number],
  missed: readonly Missed[],
  told: Set<Missed>,
): Report[] {
  if (new Set(missed.map(({ character }) => character).filter((each) => letters.test(each))).size < fewest) return [];
  const own = missed.filter((each) => !told.has(each) && signs.test(each.character));
  for (const each of own) told.add(each);
  const places = [...new Map(own.map(({ place }) => [place.start, place])).values()].sort((a, b) => a.start - b.start);
  const [first, ...others] = places;
  if (!first) return [];
  const where =
    others.length === 0 ? "here" : `here and at ${others.length} more ${others.length === 1 ? "place" : "places"}`;
  return [
    {
      range: first,
      message: `The typeface has no ${name}, so what stands ${where} cannot be printed.`,
      also: others,
      related: others.slice(0, 8).map((range) => ({ range, message: `${name} here too` })),
    },
  ];
}

const kept = new WeakMap<Typeface, PhraseMemory>();

function memoryOf(typeface: Typeface): PhraseMemory {
  const memory = kept.get(typeface) ?? new PhraseMemory();
  kept.set(typeface, memory);
  return memory;
}

function missingIn(runs: readonly Run[], typeface: Typeface): readonly string[] {
  return typeface.missing(plain(runs));
}

function codePoints(text: string): string {
  return [...text].map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`).join(" ");
}
