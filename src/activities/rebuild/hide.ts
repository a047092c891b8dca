import { Recent } from "../../base/recent";
import { plain, type Run } from "../../base/run";
import { stops } from "../../base/stops";
import { SectionMemory } from "../../unit/section-memory";
import type { Phrase, Section } from "../../unit/unit";
import type { DealRequest } from "../contract";
import type { Sentence } from "./model";
import type { Hidden } from "./options";
import { replaceRuns, sliceRuns } from "./runs";

/*
 * What cards do not show: the capital that a sentence begins with, and punctuation that tells where a card belongs. A name keeps
 * its capital.
 */

/** How texts write words within sentences, and the names that they give. */
interface Written {
  readonly capital: ReadonlySet<string>;
  readonly lower: ReadonlySet<string>;
}

/** How a unit writes words, section by section. */
export interface Spelling {
  readonly names: readonly string[];
  readonly written: readonly Written[];
  /** BCP 47 */
  readonly lang: string;
}

const word = /[\p{L}\p{M}\p{N}]+(?:['’ʼ-][\p{L}\p{M}\p{N}]+)*/gu;

/** By language. */
const kept = new Recent<SectionMemory<Written>>(20);

/** As all sections of the unit write, and those of other units that an activity takes. */
export function spellingOf(
  { unit, sections, teaches: lang }: Pick<DealRequest, "unit" | "sections" | "teaches">,
  names: readonly string[],
): Spelling {
  const memory = kept.get(lang, () => new SectionMemory());
  const foreign = sections.filter((section) => !unit.sections.includes(section));
  const written = [
    ...unit.sections.map((section) => memory.get(unit, section, () => writtenIn(section, lang))),
    ...foreign.map((section) => writtenIn(section, lang)),
  ];
  return { names, written, lang };
}

function writtenIn({ pairs, statements, events }: Section, lang: string): Written {
  const capital = new Set<string>();
  const lower = new Set<string>();
  const look = ({ text }: Phrase): void => {
    const words = wordsOf(text, lang);
    for (const each of words.capital) capital.add(each);
    for (const each of words.lower) lower.add(each);
  };
  for (const { left, examples } of pairs) {
    left.answers.forEach(look);
    examples.forEach(look);
  }
  for (const statement of statements) {
    look(statement);
    if (statement.correction) look(statement.correction);
  }
  for (const event of events) {
    look(event);
    event.free.forEach(look);
  }
  return { capital, lower };
}

/** After a stop, a colon or an opening mark a capital says nothing. */
const beginning = new RegExp(String.raw`(^|[${stops}:]|\p{Pi}|["„¿¡(])[\s\p{P}]*$`, "u");

function wordsOf(text: string, lang: string) {
  const capital: string[] = [];
  const lower: string[] = [];
  for (const match of text.matchAll(word)) {
    const [own] = match;
    if (own === own.toLocaleLowerCase(lang)) lower.push(own);
    else if (!beginning.test(text.slice(0, match.index))) capital.push(own);
  }
  return { capital, lower };
}

/**
 * German writes its nouns with a capital, so that only what is surely none may lose it: pronouns, articles, question words,
 * prepositions, conjunctions, and common adverbs and verb forms.
 */
const germanLower = new Set(
  `ich du er sie es wir ihr man mich dich ihn uns euch mir dir ihm ihnen mein meine dein deine sein seine unser unsere euer eure
  ihre ihren der die das den dem des ein eine einen einem einer kein keine keinen dieser diese dieses dieses jeder jede jedes
  wer wen wem was wann wo wohin woher warum wie welche welcher welches wieviel in im an am auf unter über vor nach mit ohne bei
  beim zu zum zur von vom aus für gegen um durch seit bis und oder aber denn weil wenn dass ob als dann da dort hier heute gestern
  morgen jetzt nun immer nie oft manchmal leider vielleicht bitte danke nicht nichts auch noch schon nur sehr gern so ist sind bin
  bist war hat habe haben hast kann kannst können möchte will soll muss darf wird werden gibt geht kommt kommst`.split(
    /\s+/,
  ),
);

/** Whether a sentence's first word would have its capital elsewhere too. `translation` is the sentence in the other language. */
export function keepsCapital(first: string, { names, written, lang }: Spelling, translation: string): boolean {
  const [letter = "", ...rest] = [...first];
  if (letter === letter.toLocaleLowerCase(lang)) return true;
  if (rest.some((each) => each !== each.toLocaleLowerCase(lang))) return true;
  if (names.includes(first) || written.some(({ capital }) => capital.has(first))) return true;
  const low = letter.toLocaleLowerCase(lang) + rest.join("");
  if (written.some(({ lower }) => lower.has(low))) return false;
  const primary = lang.toLowerCase().split("-")[0];
  if (primary === "en" && /^I(?:$|['’])/.test(first)) return true;
  if (primary === "de") return !germanLower.has(low);
  // A name is the same word in both languages.
  return first.length > 2 && [...translation.matchAll(word)].some(([own]) => own === first);
}

/** Marks at a part's edges that are punctuation: not apostrophes and hyphens, which belong to the word. */
const lead = /^(?:(?!['’ʼ\-‐‑])[\p{P}\s])+/u;
const trail = /(?:(?!['’ʼ\-‐‑])[\p{P}\s])+$/u;
/** Marks that end a sentence, with quotation marks and brackets round them, and those that open one. */
export const stop = new RegExp(String.raw`[\s\p{Pf}\p{Pe}"“]*[${stops}]+[\s\p{Pf}\p{Pe}"“]*$`, "u");
const start = /^[¿¡]+\s*/u;

/** The runs of a sentence's parts as its cards show them. */
export function cardRuns({ parts, orders, pair }: Sentence, hidden: Hidden, spelling: Spelling): (readonly Run[])[] {
  // With several accepted orders each card may stand at an end, so none may tell.
  const several = orders.length > 1;
  return parts.map(({ runs }, i) => {
    let own = runs;
    if (several) own = without(without(own, lead), trail);
    else if (hidden.stops) {
      if (i === parts.length - 1) own = without(own, stop);
      if (i === 0) own = without(own, start);
    }
    return i === 0 && (several || hidden.capitals) ? lowered(own, spelling, pair.right.answers[0].text) : own;
  });
}

/** The runs without what matches; as they are where nothing would be left. */
function without(runs: readonly Run[], marks: RegExp): readonly Run[] {
  const text = plain(runs);
  const match = marks.exec(text);
  if (!match || match[0].length === text.length) return runs;
  return match.index === 0 ? sliceRuns(runs, match[0].length, text.length) : sliceRuns(runs, 0, match.index);
}

function lowered(runs: readonly Run[], spelling: Spelling, translation: string): readonly Run[] {
  const text = plain(runs);
  const [match] = text.matchAll(word);
  if (!match || keepsCapital(match[0], spelling, translation)) return runs;
  const [letter = ""] = [...match[0]];
  return replaceRuns(runs, match.index, match.index + letter.length, letter.toLocaleLowerCase(spelling.lang));
}
