import type { Standing } from "../../activities/shared-answers";
import { keysIn } from "../../activities/supply";
import { isMeant } from "../../activities/trial";
import type { Related, Report, Rule, Severity } from "../../base/finding";
import { answerKey, type MatchKey } from "../../match/relation";
import type { Answer, Pair } from "../../unit/unit";
import { type CheckContext, type CheckedActivity, sectionsInUse } from "../context";
import { duplicateFixes } from "./duplicate-fixes";
import { makeRange } from "./make-range";

/** Fixes are tried before they are offered: of so many findings at a time, the first of the unit. Ours. */
const mostMended = 16;

export const duplicateAnswer: Rule<CheckContext> = {
  code: "duplicate-answer",
  severity: "warning",
  title: "One answer for two items",
  why: "Two items share an answer, so a learner may put either of them beside it. Where the other edges of the tiles keep the two apart, the solution is still the only one, and this is only worth knowing. Where they do not, it is an error: the tiles can be laid in another way. Give one of them an answer of its own, or take one out.",
  example: {
    wrong: "## People\n\n- el jefe = the boss\n- el dueño = the boss\n\n```activity\nmake: tiles\n```",
    right: "## People\n\n- el jefe = the boss\n- el dueño = the owner\n\n```activity\nmake: tiles\n```",
  },
  // One finding for the items that share answers, however many items and answers they are.
  check: (context) => {
    const causes = new Map<string, Standing[][]>();
    for (const group of groups(context)) {
      const key = group.map(({ pair }) => pair.range.start).join(" ");
      const known = causes.get(key);
      if (known) known.push(group);
      else causes.set(key, [group]);
    }
    const told = [...causes.values()].filter(([group]) => group && !toldElsewhere(context, group));
    const all = told.flatMap(([group]) => (group ? [group.map(({ pair }) => pair)] : []));
    return told.flatMap((shared, i) => report(context, shared, all, i < mostMended));
  },
};

/** Those of a group that are for one activity with another of it: sections of different activities never meet. */
function together({ plan }: CheckContext, group: readonly Standing[]): Standing[] {
  const meeting = new Set<Standing>();
  for (const { sections } of plan.activities) {
    const here = group.filter(({ pair }) => sections.some(({ pairs }) => pairs.includes(pair)));
    if (here.length > 1) for (const standing of here) meeting.add(standing);
  }
  return group.filter((standing) => meeting.has(standing));
}

/** Whether all activities that show two of these pairs are of kinds with findings of their own about that. */
function toldElsewhere({ activities }: CheckContext, group: readonly Standing[]): boolean {
  // What is not dealt may still show all that it is about.
  const showing = activities.filter(({ dealt, plan: { sections } }) => {
    const has = (pair: Pair): boolean =>
      dealt.deals.length > 0 ? dealt.used.includes(pair) : sections.some(({ pairs }) => pairs.includes(pair));
    return group.filter(({ pair }) => has(pair)).length > 1;
  });
  const glosses = group.every(({ side }) => side === "right");
  return (
    showing.length > 0 &&
    showing.every(({ plan: { kind } }) => kind?.tellsShared === true || (glosses && kind?.sharesGlosses === true))
  );
}

/** Answers that stand on the same side of several pairs of the sections in use. */
function groups(context: CheckContext): Standing[][] {
  const found = { left: new Map<MatchKey, Pair>(), right: new Map<MatchKey, Pair>() };
  const several = { left: new Map<MatchKey, Standing[]>(), right: new Map<MatchKey, Standing[]>() };
  const all: Standing[][] = [];
  eachAnswer(context, (key, pair, side) => {
    const first = found[side].get(key);
    if (!first) found[side].set(key, pair);
    else if (first !== pair && !several[side].has(key)) {
      const group: Standing[] = [];
      several[side].set(key, group);
      all.push(group);
    }
  });
  // Hardly any answer is shared: where they stand is written down only for those that are.
  if (all.length === 0) return [];
  eachAnswer(context, (key, pair, side, answer, index) => {
    const group = several[side].get(key);
    if (group && !group.some((standing) => standing.pair === pair)) group.push({ pair, side, index, answer });
  });
  return all.map((group) => together(context, group)).filter((group) => group.length > 1);
}

function eachAnswer(
  context: CheckContext,
  visit: (key: MatchKey, pair: Pair, side: Standing["side"], answer: Answer, index: number) => void,
): void {
  for (const section of sectionsInUse(context)) {
    // Written pairs come before those of forms tables.
    const keys = keysIn(section);
    for (const [i, pair] of section.pairs.entries()) {
      for (const side of sides) {
        const { answers } = pair[side];
        for (let index = 0; index < answers.length; index++)
          visit(keys[i]?.[side][index] as MatchKey, pair, side, answers[index] as Answer, index);
      }
    }
  }
}

const sides = ["left", "right"] as const;

function samePair(a: Pair, b: Pair): boolean {
  const keys = (pair: Pair): MatchKey[] => [answerKey(pair.left.answers[0]), answerKey(pair.right.answers[0])];
  return keys(a).join("\u0001") === keys(b).join("\u0001");
}

/** Of items that share answers, with the groups of all answers that they share; `all` are the items of every such finding. */
function report(
  context: CheckContext,
  shared: readonly (readonly Standing[])[],
  all: readonly (readonly Pair[])[],
  mendable: boolean,
): Report[] {
  const [group = []] = shared;
  const [first, second, ...rest] = group;
  if (!first || !second) return [];
  const others = shared.length - 1;
  const whole = samePair(first.pair, second.pair);
  const more =
    others === 0 || whole ? "" : ` They share ${others === 1 ? "one more answer" : `${others} more answers`}.`;
  const other = (standing: Standing): string =>
    standing.pair[standing.side === "left" ? "right" : "left"].answers[0].text;
  const names = `“${other(first)}”${rest.length > 0 ? "," : " and"} “${other(second)}”`;
  const further =
    rest.length === 0
      ? ""
      : rest.length === 1
        ? ` and “${other(rest[0] ?? second)}”`
        : ` and ${rest.length} more items`;
  const effect = effectOn(
    context,
    group.map(({ pair }) => pair),
  );
  const stands = rest.map((standing) => ({ range: standing.answer.range, message: "And here" }));
  return [
    {
      range: whole ? second.pair.range : second.answer.range,
      severity: effect.severity,
      ...(effect.hits.length > 0 ? { activities: effect.hits.map(({ plan }) => plan.index) } : {}),
      message: whole
        ? `This pair stands here ${rest.length === 0 ? "twice" : `${group.length} times`}.${effect.sentence}`
        : `“${second.answer.text}” answers ${rest.length === 0 ? "both " : ""}${names}${further}.${more}${effect.sentence}`,
      related: [
        {
          range: whole ? first.pair.range : first.answer.range,
          message: "Here it stands first",
        },
        ...stands,
        ...effect.related,
      ],
      fixes: mendable ? () => duplicateFixes(context, shared, { whole, hits: effect.hits, all }) : [],
    },
  ];
}

interface Effect {
  readonly severity: Severity;
  readonly sentence: string;
  readonly related: readonly Related[];
  /** Those whose proof says so. */
  readonly hits: readonly CheckedActivity[];
}

/** What pairs that share an answer do to the activities that show two of them: an error only where a proof says so. */
function effectOn({ unit, activities }: CheckContext, pairs: readonly Pair[]): Effect {
  // What a kind has a finding of its own about is told by that.
  const showing = activities.filter(
    ({ dealt, plan: { kind } }) =>
      dealt.deals.length > 0 && !kind?.tellsShared && pairs.filter((pair) => dealt.used.includes(pair)).length > 1,
  );
  const hits = showing.filter(({ dealt }) =>
    dealt.deals.some(({ proof }) => proof.status === "several" && !proof.accepted),
  );
  const [hit] = hits;
  if (hit) {
    return {
      severity: "error",
      hits,
      sentence: ` So the pieces of “${hit.plan.title}” go together in more than one way.${hit.plan.kind?.elseLoose?.(hit.dealt) ?? ""}`,
      related: [
        { range: makeRange(hit, unit), message: "This activity has a second solution; the preview shows both" },
      ],
    };
  }
  if (showing.length === 0 && activities.some(({ dealt }) => dealt.deals.length > 0))
    return { severity: "information", sentence: " No set of pieces has both of them.", related: [], hits };
  const settled = showing.length > 0 && showing.every(({ dealt }) => dealt.deals.every(isMeant));
  return settled
    ? {
        severity: "information",
        // Only tiles have edges that could do it.
        sentence: ` ${showing.some(({ plan: { kind } }) => kind?.edgeToEdge) ? "Other edges keep them apart: the" : "The"} solution is still the only one.`,
        related: [],
        hits,
      }
    : { severity: "warning", sentence: "", related: [], hits };
}
