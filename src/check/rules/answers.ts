import type { Fix, Related, Report, Rule, Severity } from "../../base/finding";
import { answerKey, type MatchKey } from "../../match/relation";
import type { Answer, Pair, Unit } from "../../unit/unit";
import { type CheckContext, type CheckedActivity, sectionsInUse } from "../context";

interface Standing {
  readonly pair: Pair;
  readonly side: "left" | "right";
  readonly index: number;
  readonly answer: Answer;
}

export const duplicateAnswer: Rule<CheckContext> = {
  code: "duplicate-answer",
  severity: "warning",
  title: "One answer for two items",
  why: "Two items share an answer, so a learner may put either of them beside it. Where the other edges of the tiles keep the two apart, the solution is still the only one, and this is only worth knowing. Where they do not, it is an error: the tiles can be laid in another way. Give one of them an answer of its own, or take one out.",
  example: {
    wrong: "## People\n\n- el jefe = the boss\n- el dueño = the boss\n\n```activity\nmake: tiles\n```",
    right: "## People\n\n- el jefe = the boss\n- el dueño = the owner\n\n```activity\nmake: tiles\n```",
  },
  // One finding for each item that repeats an answer of an earlier one, however many answers the two share.
  check: (context) => {
    const shared = new Map<Pair, { readonly first: Standing; readonly second: Standing; others: number }>();
    for (const [first, ...repeats] of groups(context)) {
      for (const second of first ? repeats : []) {
        const known = shared.get(second.pair);
        if (known) known.others++;
        else if (first) shared.set(second.pair, { first, second, others: 0 });
      }
    }
    return [...shared.values()].map(({ first, second, others }) => report(context, first, second, others));
  },
};

/** Answers that stand on the same side of several pairs of the sections in use. */
function groups(context: CheckContext): Standing[][] {
  const found = new Map<string, Standing[]>();
  for (const section of sectionsInUse(context)) {
    for (const pair of section.pairs) {
      for (const side of ["left", "right"] as const) {
        pair[side].answers.forEach((answer, index) => {
          const key = `${side}\u0000${answerKey(answer)}`;
          const group = found.get(key) ?? [];
          if (!group.some((standing) => standing.pair === pair)) group.push({ pair, side, index, answer });
          found.set(key, group);
        });
      }
    }
  }
  return [...found.values()].filter((group) => group.length > 1);
}

function samePair(a: Pair, b: Pair): boolean {
  const keys = (pair: Pair): MatchKey[] => [answerKey(pair.left.answers[0]), answerKey(pair.right.answers[0])];
  return keys(a).join("\u0001") === keys(b).join("\u0001");
}

function report(context: CheckContext, first: Standing, second: Standing, others: number): Report {
  const whole = samePair(first.pair, second.pair);
  const more =
    others === 0
      ? ""
      : others === 1
        ? " One further answer is shared too."
        : ` ${others} further answers are shared too.`;
  const other = (standing: Standing): string =>
    standing.pair[standing.side === "left" ? "right" : "left"].answers[0].text;
  const effect = effectOn(context, [first.pair, second.pair]);
  const fixes: Fix[] = [];
  if (!whole && second.index > 0) fixes.push(dropAnswer(second, true));
  if (!whole && second.index === 0 && first.index > 0) fixes.push(dropAnswer(first, true));
  fixes.push({
    title: `Take out “${second.pair.left.answers[0].text} = ${second.pair.right.answers[0].text}”`,
    edits: [{ range: second.pair.block, text: "" }],
    ...(whole ? { preferred: true } : {}),
  });
  return {
    range: whole ? second.pair.range : second.answer.range,
    severity: effect.severity,
    message: whole
      ? `This pair stands here twice.${effect.sentence}`
      : `“${second.answer.text}” answers both “${other(first)}” and “${other(second)}”.${more}${effect.sentence}`,
    related: [
      { range: whole ? first.pair.range : first.answer.range, message: "Here it stands first" },
      ...effect.related,
    ],
    fixes,
  };
}

/** Deletes an answer with the separator before it, or after it where it is the first. */
function dropAnswer({ pair, side, index, answer }: Standing, preferred: boolean): Fix {
  const { answers } = pair[side];
  const before = answers[index - 1];
  const after = answers[index + 1];
  const range = before
    ? { start: before.range.end, end: answer.range.end }
    : { start: answer.range.start, end: after?.range.start ?? answer.range.end };
  return { title: `Take the answer “${answer.text}” out here`, edits: [{ range, text: "" }], preferred };
}

interface Effect {
  readonly severity: Severity;
  readonly sentence: string;
  readonly related: readonly Related[];
}

/** What two pairs that share an answer do to the activities that show both: an error only where a proof says so. */
export function effectOn({ unit, activities }: CheckContext, pairs: readonly Pair[]): Effect {
  const showing = activities.filter(
    ({ dealt }) => dealt.deals.length > 0 && pairs.every((pair) => dealt.used.includes(pair)),
  );
  const hit = showing.find(({ dealt }) => dealt.deals.some(({ proof }) => proof.status === "several"));
  if (hit) {
    return {
      severity: "error",
      sentence: ` So the pieces of “${hit.plan.title}” go together in more than one way.`,
      related: [
        { range: makeRange(hit, unit), message: "This activity has a second solution; the preview shows both" },
      ],
    };
  }
  const settled =
    showing.length > 0 && showing.every(({ dealt }) => dealt.deals.every(({ proof }) => proof.status === "one"));
  return settled
    ? {
        severity: "information",
        sentence: " Other edges keep them apart: the solution is still the only one.",
        related: [],
      }
    : { severity: "warning", sentence: "", related: [] };
}

export function makeRange({ plan }: CheckedActivity, unit: Unit): { start: number; end: number } {
  const make = plan.block.options.entries.find(({ key }) => key === "make");
  if (make) return { start: make.keyRange.start, end: make.valueRange.end };
  return { start: plan.block.fence.start, end: Math.min(plan.block.fence.start + 3, unit.text.length) };
}
