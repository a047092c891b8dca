import { setOption } from "../../activities/edits";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext, CheckedActivity } from "../context";
import { makeRange } from "./answers";

export const sameCode: Rule<CheckContext> = {
  code: "same-code",
  severity: "error",
  title: "Two deals with one code",
  why: "The code on a piece says which bag it belongs to. Two deals with the same words in the same arrangement have the same code, so a stray piece could belong to either. Another seed gives another arrangement and another code.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\n```\n\n```activity\nmake: tiles\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\n```\n\n```activity\nmake: tiles\nseed: 2\n```",
  },
  check: ({ unit, activities, printed }) => {
    const reports: Report[] = [];
    const known = new Map<string, string>();
    const isOfOthers = (code: string, own: CheckedActivity): boolean =>
      activities.some((other) => other !== own && other.dealt.deals.some((deal) => deal.code === code));
    for (const { code, unit: name, activity, own } of printed) if (!own) known.set(code, `“${activity}” of “${name}”`);
    for (const checked of activities) {
      const { plan, dealt } = checked;
      const taken = dealt.deals.find(({ code }) => known.has(code));
      if (taken) {
        const seed = freshSeed(checked, (code) => known.has(code) || isOfOthers(code, checked));
        reports.push({
          range: makeRange(checked, unit),
          message: `The code ${taken.code} already stands on the pieces of ${known.get(taken.code)}. A stray piece could belong to either.`,
          fixes:
            seed === undefined
              ? []
              : [
                  {
                    title: `Use seed ${seed}`,
                    edits: [setOption(plan.block, unit.text, "seed", String(seed))],
                    preferred: true,
                  },
                ],
        });
      }
      for (const { code } of dealt.deals) known.set(code, `“${plan.title}”`);
    }
    return reports;
  },
};

/** Seeds that are tried for one that gives codes of its own: where there is little to arrange, the next may give the same. */
const seedsTried = 8;

function freshSeed(
  { plan: { kind, request } }: CheckedActivity,
  isTaken: (code: string) => boolean,
): number | undefined {
  if (!kind || !request) return undefined;
  const { options } = request;
  for (let more = 1; more <= seedsTried; more++) {
    const seed = options.value.seed + more;
    const { deals } = kind.deal({ ...request, options: { ...options, value: { ...options.value, seed } } });
    if (deals.length > 0 && deals.every(({ code }) => !isTaken(code))) return seed;
  }
  return undefined;
}

export const movedDeal: Rule<CheckContext> = {
  code: "moved-deal",
  severity: "information",
  title: "An edit that moved the pieces",
  why: "Mending a word keeps every piece in its place. Where the mended word fits a further edge, that arrangement would have a second solution, and the next one of the seed is taken; with `levels` also where another one is now the easiest or the hardest: pieces of the old print do not mix with the new.",
  example: {
    wrong: "The unit was exported, and an edit gave two words one answer: the arrangement had to change.",
    right: "The words differ again.",
  },
  check: ({ unit, activities, printed }) =>
    activities.flatMap((checked) => {
      const { plan, dealt } = checked;
      const { seed, levels } = plan.request?.options.value ?? {};
      const moved = dealt.deals.some((deal) =>
        printed.some(
          (old) =>
            old.own &&
            old.activity === plan.title &&
            old.level === deal.level &&
            old.version === deal.version &&
            old.seed === seed &&
            old.attempt !== deal.attempt,
        ),
      );
      return moved
        ? [
            {
              range: makeRange(checked, unit),
              message: `Since the last export the words changed so that the arrangement of “${plan.title}” had to move to keep one solution${levels ? ", or its level" : ""}.`,
            },
          ]
        : [];
    }),
};
