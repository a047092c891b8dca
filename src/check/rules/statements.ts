import { hasClaims } from "../../activities/claim-rules";
import { assertions, type Claim } from "../../activities/statements";
import type { Report, Rule } from "../../base/finding";
import { fold } from "../../match/fold";
import type { Section, Unit } from "../../unit/unit";
import type { CheckContext } from "../context";
import { giveawaysOf } from "./giveaways";

/** Fewer statements than this say nothing about balance. */
const enough = 4;

/** A task list in a file that says nothing of a unit is a task list. */
function isUnit({ front, activities }: Unit): boolean {
  return front.entries.length > 0 || activities.length > 0;
}

/** Sections whose statements are dealt: what comes of them is judged there, twins included. */
function dealtSections({ plan }: Pick<CheckContext, "plan">): ReadonlySet<Section> {
  const dealing = (plan?.activities ?? []).filter(({ kind }) => kind?.name === "calls" || kind?.name === "sort");
  return new Set(dealing.flatMap(({ sections }) => sections));
}

export const unbalancedStatements: Rule<CheckContext> = {
  code: "unbalanced-statements",
  severity: "warning",
  title: "Far more true statements than false ones, or the other way round",
  why: "Learners who guess lean towards “true” (Cronbach 1942, J. Educ. Psych. 33). With 30 to 70 % true statements guessing gains little; about as many true as false is best (Penn State item-writing guide; the limits are our own). Sections with fewer than four statements are not judged, nor those that an activity deals: there it counts what is dealt.",
  example: {
    wrong:
      "---\nteaches: pt\n---\n\n## The morning\n\n- [x] Ela chega cedo.\n- [x] Ela bebe chá.\n- [x] Ela sai às dez.\n- [x] Ela volta tarde.",
    right:
      "---\nteaches: pt\n---\n\n## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n  - Ela bebe chá.\n- [x] Ela sai às dez.\n- [ ] Ela volta cedo.\n  - Ela volta tarde.",
  },
  check: (context) => {
    const { unit } = context;
    const dealt = dealtSections(context);
    return (isUnit(unit) ? unit.sections : []).flatMap((section) => {
      const { statements } = section;
      const right = statements.filter(({ truth }) => truth).length;
      const share = right / statements.length;
      if (dealt.has(section) || statements.length < enough || (share >= 0.3 && share <= 0.7)) return [];
      const many = share > 0.7;
      const odd = statements.filter(({ truth }) => truth !== many);
      return [
        {
          range: section.heading,
          message: `${right} of ${statements.length} statements are true (${Math.round(share * 100)} %). ${many ? "Make some of them false" : "Make some of them true"}: between 30 and 70 % true, guessing gains little.`,
          related: odd
            .slice(0, 5)
            .map(({ range, truth }) => ({ range, message: `${truth ? "True" : "False"}, one of few` })),
        },
      ];
    });
  },
};

/** The written statements of each activity that deals them; twins are made so that they are in nobody's way. */
function writtenClaims({ activities }: CheckContext): (readonly Claim[])[] {
  return activities.flatMap(({ dealt }) =>
    hasClaims(dealt) ? [[...dealt.claims, ...(dealt.reserve ?? [])].filter(({ twin }) => twin === undefined)] : [],
  );
}

/** One report for each place, however many activities use it. */
function once(reports: readonly Report[]): Report[] {
  return [...new Map(reports.map((report) => [report.range.start, report])).values()];
}

const frame = (statements: string): string => `## The morning\n\n${statements}\n\n\`\`\`activity\nmake: calls\n\`\`\``;
const others = "- [x] Ela dorme.\n- [ ] Ela ri.\n  - Ela chora.\n- [x] Ela sai às dez.\n- [ ] Ela lê.\n  - Ela canta.";

export const contradictingStatements: Rule<CheckContext> = {
  code: "contradicting-statements",
  severity: "error",
  title: "A statement that is both true and false",
  why: "The same text is marked true in one place and false in another, or a false statement says what another one's correction says. Whatever a learner answers, one of the two keys is against it. Change one of them, or take it out.",
  example: {
    wrong: frame(`- [x] Ela bebe chá.\n- [ ] Ela bebe chá.\n${others}`),
    right: frame(`- [x] Ela bebe chá.\n- [ ] Ela bebe café.\n${others}`),
  },
  check: (context) =>
    once(
      writtenClaims(context).flatMap((claims) =>
        claims.flatMap((claim): Report[] => {
          const against = claims.find(
            ({ item }) => !claim.truth && item !== claim.item && assertions(item).includes(claim.key),
          );
          if (!against) return [];
          const marked = against.key === claim.key;
          return [
            {
              range: claim.source,
              message: `“${claim.text}” is marked false here, but ${marked ? "another statement with this text is marked true" : "a correction says that it is so"}.`,
              related: [
                {
                  range: marked ? against.source : (against.correction?.source ?? against.source),
                  message: marked ? "Marked true" : "The correction",
                },
              ],
              fixes: [{ title: "Take this one out", edits: [{ range: claim.item.block, text: "" }] }],
            },
          ];
        }),
      ),
    ),
};

export const sameCorrection: Rule<CheckContext> = {
  code: "same-correction",
  severity: "warning",
  title: "A correction that says the same as its statement",
  why: "The bullet under a false statement says what is right instead; here it says the same, so the key corrects nothing. Either the statement is true, or the correction was not changed.",
  example: {
    wrong: frame(`- [ ] Ela bebe chá.\n  - Ela bebe chá.\n- [x] Ela come.\n${others}`),
    right: frame(`- [ ] Ela bebe chá.\n  - Ela bebe café.\n- [x] Ela come.\n${others}`),
  },
  check: (context) =>
    once(
      writtenClaims(context)
        .flat()
        .flatMap((claim): Report[] => {
          const { correction, item } = claim;
          if (!correction || fold(correction.text) !== claim.key) return [];
          return [
            {
              range: correction.source,
              message: `The correction says the same as the statement: “${correction.text}”.`,
              fixes: [{ title: "Mark the statement true", edits: [{ range: item.mark, text: "[x]" }] }],
            },
          ];
        }),
    ),
};

export const repeatedStatement: Rule<CheckContext> = {
  code: "repeated-statement",
  severity: "warning",
  title: "A statement that stands twice",
  why: "Learners meet it a second time and know the answer. Take one of the two out, or change it.",
  example: {
    wrong: frame(`- [x] Ela bebe chá.\n- [x] Ela bebe chá.\n${others}`),
    right: frame(`- [x] Ela bebe chá.\n- [x] Ela come pão.\n${others}`),
  },
  check: (context) =>
    once(
      writtenClaims(context).flatMap((claims) =>
        claims.flatMap((claim, i): Report[] => {
          const first = claims.slice(0, i).find(({ key, truth }) => key === claim.key && truth === claim.truth);
          if (!first) return [];
          return [
            {
              range: claim.source,
              message: `“${claim.text}” stands here a second time.`,
              related: [{ range: first.source, message: "Here it stands first" }],
              fixes: [{ title: "Take this one out", edits: [{ range: claim.item.block, text: "" }], preferred: true }],
            },
          ];
        }),
      ),
    ),
};

export const giveawayWord: Rule<CheckContext> = {
  code: "giveaway-word",
  severity: "hint",
  title: "Words that give the answer away",
  why: "“All”, “only”, “never”, “always” stand mostly in false statements, “usually” and “generally” in true ones, and learners know it: use such words in both kinds or in none (Penn State item-writing guide; Illinois CITL; the lists for other languages are our own). Nothing is said of a word that stands in one statement only.",
  example: {
    wrong: `---\nteaches: en\n---\n\n${frame("- [ ] She always drinks tea.\n- [ ] She never sleeps.\n- [ ] They all sing.\n- [x] She reads.\n- [x] She eats.\n- [x] She left.")}`,
    right: `---\nteaches: en\n---\n\n${frame("- [ ] She always drinks tea.\n- [x] She never sleeps.\n- [ ] They all sing.\n- [x] She reads.\n- [ ] She eats.\n- [x] She left.")}`,
  },
  check: (context) =>
    once(
      context.activities.flatMap(({ dealt }) =>
        hasClaims(dealt)
          ? giveawaysOf(
              dealt.claims.filter(({ twin }) => twin === undefined),
              dealt.request.teaches,
            ).map(
              ({ words, truth, claims }): Report => ({
                range: claims[0]?.source ?? { start: 0, end: 0 },
                message: `${words.map((word) => `“${word}”`).join(", ")}: such words stand only in ${truth ? "true" : "false"} statements here (${claims.length}), so they give the answer away.`,
                related: claims.slice(1, 6).map(({ source }) => ({ range: source, message: "And here" })),
              }),
            )
          : [],
      ),
    ),
};
