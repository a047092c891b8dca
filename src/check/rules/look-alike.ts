import type { Deal, DealRequest, Dealt, Overlooked } from "../../activities/contract";
import { setOption } from "../../activities/edits";
import { optionPlace } from "../../activities/report";
import { pairsOf } from "../../activities/supply";
import type { Fix, Report, Rule } from "../../base/finding";
import type { Range } from "../../base/range";
import { Recent } from "../../base/recent";
import { type Difference, type LookAlikes, lookAlikes, overlooking, type Worded } from "../../match/look-alikes";
import { answerKey, type MatchKey, type Relation } from "../../match/relation";
import type { Section, Side } from "../../unit/unit";
import { type CheckContext, type CheckedActivity, sectionsInUse } from "../context";

const names: Readonly<Record<Difference, string>> = {
  case: "capitals",
  accent: "an accent",
  article: "the article",
  punctuation: "punctuation or spaces",
  letter: "one letter",
};

export const lookAlike: Rule<CheckContext> = {
  code: "look-alike",
  severity: "hint",
  title: "Words that are easily taken for one another",
  why: "Two words differ only in capitals, an accent, the article, punctuation or one letter. To the prover they are two words; a learner who overlooks the difference may lay one for the other. Where the other words keep them apart all the same, this is a quiet hint. Where nothing else does, the finding names the pieces that could change places: deal anew, or choose another word. Where at least half of a section's words differ in the same way, the section teaches that contrast and nothing is said; nor is anything said about forms in a table.",
  example: {
    wrong:
      "## Family\n\n- avó = the grandmother\n- avô = the grandfather\n- a tia = the aunt\n- o primo = the cousin\n\n```activity\nmake: tiles\n```",
    right:
      "## Family\n\n- avó = the grandmother\n- sogro = the father-in-law\n- a tia = the aunt\n- o primo = the cousin\n\n```activity\nmake: tiles\n```",
  },
  check: (context) => {
    const words = wordsIn(context);
    const judged = context.activities.map((activity) => judge(activity, words));
    const told = new Set(judged.flatMap(({ reports }) => reports.flatMap(({ group }) => group.keys)));
    const settled = judged.every(({ open }) => !open);
    const shown = new Set(settled ? judged.flatMap(({ safe }) => safe.flatMap(({ keys }) => keys)) : []);
    const loud = new Map(judged.flatMap(({ reports }) => reports.map(({ group, report }) => [nameOf(group), report])));
    const quiet = sectionsInUse(context).flatMap((section) => whisper(context, section, words, told, shown));
    return [...loud.values(), ...quiet];
  },
};

/** The words of a unit's pairs, as look-alikes see them. */
interface Words {
  /** Where each stands first; looked up only where there is something to tell. */
  places(): ReadonlyMap<MatchKey, Range>;
  /** Words that some section sets against one another on purpose, or that stand in a table of forms. */
  readonly taught: ReadonlySet<MatchKey>;
  readonly bySection: ReadonlyMap<Section, readonly LookAlikes[]>;
}

/** What look-alikes ask of one section: it hangs on its text alone. */
interface SectionWords {
  readonly groups: readonly LookAlikes[];
  readonly contrasted: readonly MatchKey[];
  /** Words of its forms tables. */
  readonly forms: readonly MatchKey[];
}

const kept = new Recent<SectionWords>(500);

function wordsIn({ activities, unit, plan: { facts } }: CheckContext): Words {
  const adopted = activities.flatMap((activity) =>
    activity.plan.sections.filter((each) => !unit.sections.includes(each)),
  );
  const sections = [...unit.sections, ...new Set(adopted)];
  const places = once(() => placesIn(sections));
  const taught = new Set<MatchKey>();
  const bySection = new Map<Section, readonly LookAlikes[]>();
  sections.forEach((section, i) => {
    // The places of a section from another unit are not those of its own text.
    const text = i < unit.sections.length ? unit.text.slice(section.range.start, section.range.end) : undefined;
    const words = (): SectionWords => sectionWords(section, facts);
    const known = text === undefined ? words() : kept.get([facts.teaches, facts.explains, text].join("\u0000"), words);
    bySection.set(section, known.groups);
    for (const key of known.contrasted) taught.add(key);
    for (const key of known.forms) if (!places().has(key)) taught.add(key);
  });
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
  for (const { left, right } of sections.flatMap(({ pairs }) => pairs)) {
    for (const answer of [...left.answers, ...right.answers]) {
      const key = answerKey(answer);
      if (!places.has(key)) places.set(key, answer.range);
    }
  }
  return places;
}

function sectionWords(section: Section, { teaches, explains }: CheckContext["plan"]["facts"]): SectionWords {
  const worded = ({ answers }: Side, lang: string): Worded[] =>
    answers.map((answer) => ({ key: answerKey(answer), text: answer.text, lang }));
  const groups = lookAlikes(
    section.pairs.flatMap(({ left, right }) => [...worded(left, teaches), ...worded(right, explains)]),
  );
  const tables = pairsOf(section).slice(section.pairs.length);
  const forms = tables.flatMap(({ left, right }) => [left, right].map(({ answers }) => answerKey(answers[0])));
  return { groups, contrasted: contrasted(section, groups), forms };
}

/** Words of a section that teaches a contrast: two groups or more of one difference hold at least half of its pairs. */
function contrasted({ pairs }: Section, groups: readonly LookAlikes[]): MatchKey[] {
  return (Object.keys(names) as Difference[]).flatMap((difference) => {
    const such = groups.filter(({ differences }) => differences.includes(difference));
    if (such.length < 2) return [];
    const keys = new Set(such.flatMap((group) => group.keys));
    const held = pairs.filter(({ left, right }) =>
      [...left.answers, ...right.answers].some((answer) => keys.has(answerKey(answer))),
    );
    return held.length * 2 >= pairs.length ? [...keys] : [];
  });
}

interface Judged {
  /** Groups that nothing else keeps apart. */
  readonly reports: readonly { readonly group: LookAlikes; readonly report: Report }[];
  /** Groups that stand on the pieces of a deal and do no harm there, proven. */
  readonly safe: readonly LookAlikes[];
  /** A deal is not settled, with the differences or without them: then nothing is claimed. */
  readonly open: boolean;
}

/** Asks the prover what becomes of an activity's deals when the differences are overlooked. */
function judge({ plan: { kind, title }, dealt }: CheckedActivity, words: Words): Judged {
  const hook = kind?.overlooked;
  const reports: { group: LookAlikes; report: Report }[] = [];
  const safe: LookAlikes[] = [];
  let open = false;
  if (!kind || !hook) return { reports, safe, open };
  const { relation } = dealt.request;
  for (const deal of dealt.deals) {
    if (deal.proof.status !== "one") {
      open = true;
      continue;
    }
    const groups = harmful(hook.texts(dealt, deal), relation, words);
    if (groups.length === 0) continue;
    const confused = (some: readonly LookAlikes[]): readonly string[] | undefined =>
      hook.confused(dealt, deal, overlooking(relation, some));
    const together = confused(groups);
    if (!together) {
      open = true;
      continue;
    }
    const alone = together.length === 0 ? [] : groups.filter((group) => confused([group])?.length);
    const culprits = together.length > 0 && alone.length === 0 ? groups : alone;
    if (together.length === 0) safe.push(...groups);
    for (const group of culprits) {
      const pieces = (alone.length === 0 ? undefined : confused([group])) ?? together;
      const message = `${sentence(group)} Whoever overlooks it ${hook.harm}, in “${title}”: nothing else keeps ${counted(pieces, hook.piece)} apart${alone.length === 0 ? ` (with ${culprits.length - 1} more such ${culprits.length === 2 ? "group" : "groups"} of words)` : ""}.`;
      const place = optionPlace(dealt.request.block);
      const stands = placesOf(group, words);
      reports.push({
        group,
        report: {
          range: stands.at(-1) ?? place,
          severity: "information",
          message,
          related: [
            ...stands.slice(0, -1).map((range) => ({ range, message: "Easily taken for this" })),
            { range: place, message: "The activity" },
          ],
          fixes: anotherSeed(dealt.request, words, hook, (request) => kind.deal(request)),
        },
      });
    }
  }
  return { reports, safe, open };
}

/** Look-alikes among texts that nobody teaches as a contrast and that are not answered alike anyway. */
function harmful(texts: readonly Worded[], relation: Relation, { taught }: Words): readonly LookAlikes[] {
  const answers = (key: MatchKey): string => JSON.stringify([...relation.partners(key)].sort());
  return lookAlikes(texts).filter(
    ({ keys }) => keys.some((key) => !taught.has(key)) && new Set(keys.map(answers)).size > 1,
  );
}

/** A seed with which the solution stays the only one for those who overlook the difference, among the next three. */
function anotherSeed(
  request: DealRequest,
  words: Words,
  hook: Overlooked<Deal, Dealt<Deal>>,
  dealAnew: (request: DealRequest) => Dealt<Deal>,
): Fix[] {
  const { options, block, unit, relation } = request;
  for (let seed = options.value.seed + 1; seed <= options.value.seed + 3; seed++) {
    const dealt = dealAnew({ ...request, options: { ...options, value: { ...options.value, seed } } });
    const holds = dealt.deals.every((deal) => {
      const groups = harmful(hook.texts(dealt, deal), relation, words);
      return deal.proof.status === "one" && hook.confused(dealt, deal, overlooking(relation, groups))?.length === 0;
    });
    if (!holds || dealt.deals.length === 0) continue;
    const edits = [setOption(block, unit.text, "seed", String(seed))];
    return [{ title: `Use seed ${seed}: then other words keep them apart`, edits }];
  }
  return [];
}

/** One hint for all other look-alikes of a section. */
function whisper(
  { plan: { relation } }: CheckContext,
  section: Section,
  words: Words,
  told: ReadonlySet<MatchKey>,
  shown: ReadonlySet<MatchKey>,
): Report[] {
  const answers = (key: MatchKey): string => JSON.stringify([...relation.partners(key)].sort());
  const groups = (words.bySection.get(section) ?? []).filter(
    ({ keys }) =>
      !keys.every((key) => told.has(key)) &&
      keys.some((key) => !words.taught.has(key)) &&
      new Set(keys.map(answers)).size > 1,
  );
  const [first, ...rest] = groups;
  if (!first) return [];
  const more = rest.length === 0 ? "" : ` So are ${rest.map((group) => `${pair(group)} (${list(group)})`).join("; ")}.`;
  const proven = groups.every(({ keys }) => keys.every((key) => shown.has(key)))
    ? " Other words keep them apart: for someone who overlooks it the solution is still the only one."
    : "";
  const [place, ...others] = groups.flatMap((group) => [...placesOf(group, words)].reverse());
  return place
    ? [
        {
          range: place,
          message: `${rest.length === 0 ? sentence(first) : `${pair(first)} are easily taken for one another (${list(first)}).`}${more}${proven}`,
          related: others.map((range) => ({ range, message: "Easily taken for another" })),
        },
      ]
    : [];
}

function nameOf({ keys }: LookAlikes): string {
  return JSON.stringify(keys);
}

function placesOf({ keys }: LookAlikes, { places }: Words): Range[] {
  return keys.flatMap((key) => places().get(key) ?? []).sort((a, b) => a.start - b.start);
}

function sentence(group: LookAlikes): string {
  return `${pair(group)} differ only in ${list(group)}.`;
}

function pair({ keys }: LookAlikes): string {
  return joined(keys.map((key) => `“${key}”`));
}

function list({ differences }: LookAlikes): string {
  return joined(differences.map((difference) => names[difference]));
}

function counted(pieces: readonly string[], piece: string): string {
  return pieces[0]?.startsWith("“") ? joined(pieces) : `${piece}s ${joined(pieces)}`;
}

function joined(texts: readonly string[]): string {
  const last = texts.at(-1) ?? "";
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(", ")} and ${last}`;
}
