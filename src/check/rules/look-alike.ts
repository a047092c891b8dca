import { optionPlace } from "../../activities/report";
import type { Report, Rule } from "../../base/finding";
import { mapped, type Steps } from "../../base/steps";
import type { LookAlikes } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import type { Section } from "../../unit/unit";
import { type CheckContext, dealsStatements, sectionsInUse } from "../context";
import { meantFix } from "./look-alike-fixes";
import { answerAlike, type Judged, judging } from "./look-alike-judge";
import { list, nameOf, pair, placesOf, sentence } from "./look-alike-phrases";
import { reportsOf } from "./look-alike-report";
import { type Words, wordsIn } from "./look-alike-words";

export const lookAlike: Rule<CheckContext> = {
  code: "look-alike",
  severity: "hint",
  title: "Words that are easily taken for one another",
  why: "Two words differ only in capitals, an accent, a letter written as two (“ß” and “ss”), the article, punctuation or one letter. To the prover they are two words; a learner who overlooks the difference may lay one for the other. Where the other words keep them apart all the same, this is a quiet hint. Where nothing else does, the finding names the pieces that could change places: deal anew, take one of the two out, or choose another word; where the difference is what you practise, say so behind the item. So it is with strips that tell the story in another order when they are exchanged, cards that make another sentence, and a false statement that is taken for a true one. What is called and differs only in capitals or commas sounds the same: nobody can tell it apart, and that is a warning. Where two couples or more that differ in the same way are at least half of a section's items, the section teaches that contrast and nothing is said, but where nobody can hear it; nor is anything said about forms in a table, or statements that differ in such a form.",
  example: {
    wrong:
      "## Family\n\n- avó = the grandmother\n- avô = the grandfather\n- a tia = the aunt\n- o primo = the cousin\n\n```activity\nmake: tiles\n```",
    right:
      "## Family\n\n- avó = the grandmother\n- sogro = the father-in-law\n- a tia = the aunt\n- o primo = the cousin\n\n```activity\nmake: tiles\n```",
  },
  check: looking,
};

function* looking(context: CheckContext): Steps<Report[], unknown> {
  const words = yield* wordsIn(context);
  const judged: Judged[] = [];
  for (const activity of context.activities) judged.push(yield* judging(activity, { context, words }));
  const told = new Set(
    judged.flatMap(({ causes }) => causes.flatMap(({ groups }) => groups.flatMap(({ keys }) => keys))),
  );
  const settled = judged.every(({ open }) => !open);
  const shown = new Set(settled ? judged.flatMap(({ safe }) => safe.flatMap(({ keys }) => keys)) : []);
  const besides = new Map(judged.flatMap((each) => [...each.besides]));
  const facts = { words, told, shown, besides };
  yield "looking what is left";
  const quiet = yield* mapped(sectionsInUse(context), (section) => ofSection(context, section, facts));
  const decoys = yield* mapped(judged, (each) => ofDecoys(context, each, facts));
  return [...reportsOf(judged, context, words), ...quiet.flat(), ...decoys.flat()];
}

interface Facts {
  readonly words: Words;
  /** Texts of which something was said that is not quiet. */
  readonly told: ReadonlySet<MatchKey>;
  /** Texts that are proven to do no harm. */
  readonly shown: ReadonlySet<MatchKey>;
  /** What may go wrong with them all the same. */
  readonly besides: ReadonlyMap<MatchKey, string>;
}

/** One hint for all other look-alikes of a section. */
function ofSection(context: CheckContext, section: Section, facts: Facts): Report[] {
  const { bySection, taught } = facts.words;
  const { relation } = context.plan;
  const found = bySection.get(section);
  const whole = context.activities.some(({ plan }) => plan.sections.includes(section) && !plan.kind?.showsParts);
  // Sentences that are cut up and differ in nothing else have the same cards, and that is told.
  const isCards = ({ differences }: LookAlikes): boolean =>
    !whole && differences.every((difference) => difference === "case" || difference === "punctuation");
  const words = (found?.groups ?? []).filter((group) => !answerAlike(relation, group.keys) && !isCards(group));
  const statements = dealsStatements(context, section) ? (found?.statements ?? []) : [];
  const groups = [...words, ...statements].filter(({ keys }) => keys.some((key) => !taught.has(key)));
  return whisper(context, groups, facts, (group) => placesOf(group, facts.words));
}

/** One hint for the decoys of an activity that are named and look like one of its words. */
function ofDecoys(context: CheckContext, { activity: { dealt }, met }: Judged, facts: Facts): Report[] {
  const groups = new Map(met.map((group) => [nameOf(group), group]));
  const { block, options } = dealt.request;
  if (options.place("decoys") === undefined) return [];
  const named = [...groups.values()].filter(({ keys }) => keys.some((key) => !facts.words.places().has(key)));
  return whisper(context, named, facts, (group) => [...placesOf(group, facts.words), optionPlace(block, "decoys")]);
}

/** One hint for those of some groups that nothing was said of. */
function whisper(
  { unit }: CheckContext,
  all: readonly LookAlikes[],
  { told, shown, besides }: Facts,
  placesFor: (group: LookAlikes) => ReturnType<typeof placesOf>,
): Report[] {
  const groups = all.filter(({ keys }) => !keys.every((key) => told.has(key)));
  const [first, ...rest] = groups;
  if (!first) return [];
  const more = rest.length === 0 ? "" : ` So are ${rest.map((group) => `${pair(group)} (${list(group)})`).join("; ")}.`;
  const [still] = groups.flatMap(({ keys }) => keys.flatMap((key) => besides.get(key) ?? []));
  const kept =
    still === undefined
      ? " Other words keep them apart: for someone who overlooks it the solution is still the only one."
      : ` For someone who overlooks it the solution is still the only one, but ${still}.`;
  const proven = groups.every(({ keys }) => keys.every((key) => shown.has(key))) ? kept : "";
  const [place, ...others] = groups.flatMap((group) => [...placesFor(group)].reverse());
  const meant = place && meantFix(unit, place);
  return place
    ? [
        {
          range: place,
          fixes: meant ? [meant] : [],
          message: `${rest.length === 0 ? sentence(first) : `${pair(first)} are easily taken for one another (${list(first)}).`}${more}${proven}`,
          related: others.map((range) => ({ range, message: "Easily taken for another" })),
        },
      ]
    : [];
}
