import { setOption } from "../../activities/edits";
import type { Fix, Report, Rule } from "../../base/finding";
import { fitsPicture } from "../../base/picture";
import type { Range } from "../../base/range";
import { plain, type Run } from "../../base/run";
import type { Typeface } from "../../text/typeface";
import { picturesOf } from "../../unit/pictures";
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

export const missingPicture: Rule<CheckContext> = {
  code: "missing-picture",
  severity: "error",
  title: "A picture that is not there or cannot be printed",
  why: "Pictures are PNG or JPEG files beside the unit, named by a path relative to it. Nothing is fetched from elsewhere.",
  example: {
    wrong: "## Table\n\n- ![a spoon](no-such-file.png) = a colher\n\n```activity\nmake: tiles\n```",
    right: "## Table\n\n- a spoon = a colher\n\n```activity\nmake: tiles\n```",
  },
  check: (context) =>
    sectionsInUse(context).flatMap((section) =>
      picturesOf(section).flatMap((picture): Report[] => {
        const { path, alt, range } = picture;
        const bytes = context.press.pictures.get(path);
        if (bytes && fitsPicture(bytes)) return [];
        const block = section.pairs.find(
          (pair) => pair.block.start <= range.start && range.end <= pair.block.end,
        )?.block;
        const fixes: Fix[] = [
          ...(alt === "" ? [] : [{ title: `Use the word “${alt}” instead`, edits: [{ range, text: alt }] }]),
          ...(block ? [{ title: "Take the item out", edits: [{ range: block, text: "" }] }] : []),
        ];
        const elsewhere = /^(?:[a-z][a-z0-9+.-]*:|[/\\])/i.test(path);
        const message = bytes
          ? `“${path}” is neither a PNG nor a JPEG picture that can be printed.`
          : elsewhere
            ? `“${path}” is not taken: pictures are files beside the unit, and nothing is fetched from elsewhere.`
            : `There is no picture “${path}” beside this unit.`;
        return [{ range, message, fixes }];
      }),
    ),
};

export const narrowMargin: Rule<CheckContext> = {
  code: "narrow-margin",
  severity: "warning",
  title: "A margin that printers cannot print up to",
  why: "Laser printers leave 4 to 5 mm at each edge of the paper blank, some inkjets more at the bottom (makers' manuals). Below 7 mm lines may be lost, below 5 mm they will be. The limits are our own.",
  example: {
    wrong: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nmargin: 3\n```",
    right: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nmargin: 10\n```",
  },
  check: ({ unit, plan }) => {
    const reports: Report[] = [];
    const entries = [
      ...unit.front.entries.map((entry) => ({ entry, block: undefined })),
      ...plan.activities.flatMap(({ block }) => block.options.entries.map((entry) => ({ entry, block }))),
    ];
    for (const { entry, block } of entries) {
      if (entry.key !== "margin" || typeof entry.value !== "number" || entry.value < 0 || entry.value >= 7) continue;
      const edit = block ? setOption(block, unit.text, "margin", "10") : { range: entry.valueRange, text: "10" };
      reports.push({
        range: entry.valueRange,
        severity: entry.value < 5 ? "error" : "warning",
        message: `${entry.value} mm ${entry.value < 5 ? "is" : "may be"} less than printers can print up to; lines at the edge would be lost.`,
        fixes: [{ title: "Change to 10 mm", edits: [edit], preferred: true }],
      });
    }
    return reports;
  },
};
