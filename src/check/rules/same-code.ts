import { setOption } from "../../activities/edits";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext, CheckedActivity } from "../context";
import { makeRange } from "./make-range";

export const sameCode: Rule<CheckContext> = {
  code: "same-code",
  severity: "error",
  title: "Two deals with one code",
  why: "The code on a piece says which bag it belongs to. Two deals with the same words in the same arrangement have the same code, so a stray piece could belong to either. Another seed gives another arrangement and another code.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\nseed: 2\n```\n\n```activity\nmake: tiles\nseed: 2\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\nseed: 2\n```\n\n```activity\nmake: tiles\n```",
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
