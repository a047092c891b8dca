import type { Fix, Report, Rule } from "../../base/finding";
import type { Range } from "../../base/range";
import { plain, type Run } from "../../base/run";
import type { Typeface } from "../../text/typeface";
import type { Phrase, Section } from "../../unit/unit";
import { type CheckContext, sectionsInUse } from "../context";

export const missingGlyph: Rule<CheckContext> = {
  code: "missing-glyph",
  severity: "error",
  title: "A character that cannot be printed",
  why: "The typeface has no drawing for this character, so that it would print as a box or not at all. The built-in face covers Latin with all diacritics, Greek and Cyrillic.",
  example: {
    wrong: "## Weather\n\n- o sol = the sun ☀\n\n```activity\nmake: tiles\n```",
    right: "## Weather\n\n- o sol = the sun\n\n```activity\nmake: tiles\n```",
  },
  check: (context) => {
    const { unit, press } = context;
    const reports: Report[] = [];
    const look = (text: string, place: Range): void => report(press.typeface.missing(text), place);
    const report = (missing: readonly string[], place: Range): void => {
      for (const character of missing) {
        const places = occurrences(unit.text, character, place);
        reports.push({
          range: places[0] ?? place,
          message: `“${character}” (${codePoints(character)}) cannot be printed: the typeface does not have it.`,
          fixes: places.length === 0 ? [] : replacements(character, places, context),
        });
      }
    };
    for (const { runs, range } of sectionsInUse(context).flatMap(phrasesOf))
      report(missingIn(runs, press.typeface), range);
    const title = unit.front.entries.find(({ key }) => key === "title");
    if (title) look(String(title.value), title.valueRange);
    for (const { block } of context.plan.activities) {
      for (const { key, value, valueRange, items } of block.options.entries) {
        if (key === "title") look(String(value), valueRange);
        if (key === "decoys" && Array.isArray(value))
          value.forEach((word, i) => void look(String(word), items[i] ?? valueRange));
      }
    }
    return reports;
  },
};

const known = new WeakMap<Typeface, WeakMap<readonly Run[], readonly string[]>>();

/** Most phrases are the very ones of the last reading. */
function missingIn(runs: readonly Run[], typeface: Typeface): readonly string[] {
  const kept = known.get(typeface) ?? new WeakMap<readonly Run[], readonly string[]>();
  known.set(typeface, kept);
  const missing = kept.get(runs) ?? typeface.missing(plain(runs));
  kept.set(runs, missing);
  return missing;
}

/** Everything of a section that some piece or paper may print, with its place. */
function phrasesOf(section: Section): readonly Phrase[] {
  const { pairs, statements, events, piles, tables } = section;
  return [
    ...pairs.flatMap(({ left, right, examples }) => [...left.answers, ...right.answers, ...examples]),
    ...statements.flatMap((statement) => [statement, ...(statement.correction ? [statement.correction] : [])]),
    ...events.flatMap((event) => [event, ...event.free]),
    ...piles.flatMap(({ name, heading, members }) => [
      { range: heading, runs: [{ text: name }], text: name },
      ...members.flatMap((member) => (member.shape === "text" ? [member.item] : [])),
    ]),
    ...tables.flatMap(({ columns, persons, forms }) => [
      ...columns,
      ...persons,
      ...forms.flat().filter((form) => form !== undefined),
    ]),
  ];
}

function codePoints(text: string): string {
  return [...text].map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`).join(" ");
}

function occurrences(text: string, character: string, { start, end }: Range): Range[] {
  const found: Range[] = [];
  for (let at = text.indexOf(character, start); at >= 0 && at + character.length <= end; ) {
    found.push({ start: at, end: at + character.length });
    at = text.indexOf(character, at + character.length);
  }
  return found;
}

/** A character of the same meaning that can be printed (compatibility form of Unicode), and taking it out. */
function replacements(character: string, places: readonly Range[], { press, unit }: CheckContext): Fix[] {
  const plain = character.normalize("NFKC");
  const fixes: Fix[] = [];
  if (plain !== character && press.typeface.missing(plain).length === 0) {
    const edits = places.map((range) => ({ range, text: plain }));
    fixes.push({ title: `Write “${plain}” instead`, edits, preferred: true });
  }
  const edits = places.map(({ start, end }) => {
    const spaced = unit.text.charAt(start - 1) === " ";
    return { range: { start: spaced ? start - 1 : start, end }, text: "" };
  });
  return [...fixes, { title: `Take “${character}” out`, edits }];
}
