import { pairsOf } from "../../activities/supply";
import type { Range } from "../../base/range";
import { Recent } from "../../base/recent";
import type { Steps } from "../../base/steps";
import { fold } from "../../match/fold";
import { type LookAlikes, lookingAlike, type Worded } from "../../match/look-alikes";
import { answerKey, type MatchKey } from "../../match/relation";
import { SectionMemory } from "../../unit/section-memory";
import type { Section, Side, Statement, StoryEvent } from "../../unit/unit";
import type { CheckContext } from "../context";
import { contrasted } from "./look-alike-contrast";

/** The words and sentences of a unit, as look-alikes see them. */
export interface Words {
  /** Where each stands first; looked up only where there is something to tell. */
  places(): ReadonlyMap<MatchKey, Range>;
  /** Those that some section sets against one another on purpose, or that stand in a table of forms. */
  readonly taught: ReadonlySet<MatchKey>;
  /** Groups of words; of statements only those of which some are true and some false. */
  readonly bySection: ReadonlyMap<Section, Pick<SectionWords, "groups" | "statements">>;
}

/** What look-alikes ask of one section: it hangs on its text alone. */
interface SectionWords {
  readonly groups: readonly LookAlikes[];
  readonly statements: readonly LookAlikes[];
  readonly contrasted: readonly MatchKey[];
  /** Words of its forms tables. */
  readonly forms: readonly MatchKey[];
}

/** By the two languages. */
const kept = new Recent<SectionMemory<SectionWords>>(20);

/** In steps: looks through all sections of a unit, and those that its activities take from others. */
export function* wordsIn({ activities, unit, plan: { facts } }: CheckContext): Steps<Words, undefined> {
  const adopted = activities.flatMap((activity) =>
    activity.plan.sections.filter((each) => !unit.sections.includes(each)),
  );
  const sections = [...unit.sections, ...new Set(adopted)];
  const places = once(() => placesIn(sections));
  const forms = once(() => formsIn(sections));
  const taught = new Set<MatchKey>();
  const bySection = new Map<Section, SectionWords>();
  const memory = kept.get(`${facts.teaches} ${facts.explains}`, () => new SectionMemory());
  for (const [i, section] of sections.entries()) {
    const own = i < unit.sections.length;
    const known = (own && memory.find(unit, section)) || (yield* sectionWords(section, facts));
    if (own) memory.get(unit, section, () => known);
    bySection.set(section, known);
    for (const key of known.contrasted) taught.add(key);
    for (const key of known.forms) if (!places().has(key)) taught.add(key);
    for (const { keys } of known.statements)
      if (isAboutForms(section.statements, keys, forms)) for (const key of keys) taught.add(key);
  }
  return { places, taught, bySection };
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function placesIn(sections: readonly Section[]): ReadonlyMap<MatchKey, Range> {
  const places = new Map<MatchKey, Range>();
  const add = (key: MatchKey, range: Range): void => {
    if (!places.has(key)) places.set(key, range);
  };
  for (const { pairs, statements } of sections) {
    for (const { left, right } of pairs)
      for (const answer of [...left.answers, ...right.answers]) add(answerKey(answer), answer.range);
    for (const statement of statements) add(answerKey(statement), statement.range);
  }
  return places;
}

function* sectionWords(
  section: Section,
  { teaches, explains }: CheckContext["plan"]["facts"],
): Steps<SectionWords, undefined> {
  const { pairs, statements, events } = section;
  const worded = ({ answers }: Side, lang: string): Worded[] =>
    answers.map((answer) => ({ key: answerKey(answer), text: answer.text, lang }));
  const told = (each: Statement | StoryEvent | StoryEvent["free"][number]): Worded => ({
    key: answerKey(each),
    text: each.text,
    lang: teaches,
  });
  const words = pairs.map(({ left, right }) => [...worded(left, teaches), ...worded(right, explains)]);
  const said = statements.map((statement) => [told(statement)]);
  const story = events.flatMap((event) => [event, ...event.free]).map((event) => [told(event)]);
  const groups = yield* lookingAlike(words.flat());
  const claims = yield* lookingAlike(said.flat());
  const tables = pairsOf(section).slice(pairs.length);
  const truths = (keys: readonly MatchKey[]): Set<boolean> =>
    new Set(statements.flatMap((each) => (keys.includes(answerKey(each)) ? [each.truth] : [])));
  return {
    groups,
    statements: claims.filter(({ keys }) => truths(keys).size > 1),
    contrasted: [
      ...contrasted(words, groups),
      ...contrasted(said, claims),
      ...contrasted(story, yield* lookingAlike(story.flat())),
    ],
    forms: tables.flatMap(({ left, right }) => [left, right].map(({ answers }) => answerKey(answers[0]))),
  };
}

/** Words of forms tables, as they stand within a sentence. */
function formsIn(sections: readonly Section[]): ReadonlySet<string> {
  const cells = sections.flatMap(({ tables }) => tables.flatMap(({ forms }) => forms.flat()));
  return new Set(cells.flatMap((cell) => (cell ? [bare(cell.text)] : [])));
}

/** Whether all of some statements differ in nothing but words that are tied to a table or stand in one. */
function isAboutForms(
  statements: readonly Statement[],
  keys: readonly MatchKey[],
  forms: () => ReadonlySet<string>,
): boolean {
  const own = statements.filter((each) => keys.includes(answerKey(each)));
  const rows = own.map(({ text }) => fold(text).split(/\s+/u).map(bare));
  const tied = new Set(own.flatMap(({ ties }) => ties.map(({ text }) => bare(text))));
  const longest = Math.max(...rows.map(({ length }) => length));
  if (rows.some(({ length }) => length !== longest)) return false;
  const differing = Array.from({ length: longest }, (_, i) => rows.map((row) => row[i] ?? "")).filter(
    (words) => new Set(words).size > 1,
  );
  const isForm = (words: readonly string[]): boolean =>
    words.some((word) => tied.has(word)) || words.every((word) => forms().has(word));
  return differing.length > 0 && differing.every(isForm);
}

function bare(word: string): string {
  return fold(word)
    .toLowerCase()
    .replace(/^\p{P}+|\p{P}+$/gu, "");
}
