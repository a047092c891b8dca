import { setOption } from "../../activities/edits";
import { counted } from "../../activities/report";
import { groupSizes } from "../../activities/rotation";
import { type PlannedStations, planStations } from "../../activities/stations";
import type { Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { plan } from "./stations-example";
import { place } from "./stations-place";

/** Fewer cannot talk to each other. Common practice, no source. */
const pair = 2;

export const smallGroups: Rule<CheckContext> = {
  code: "small-groups",
  severity: "warning",
  title: "A class too small for the groups of a plan of stations",
  why: "A class is shared out evenly over the groups. Where it has fewer than two learners for each, some sit alone at their station, or groups stay empty; a board needs as many as play at it.",
  example: {
    wrong: `---\nclasses: [5]\n---\n\n${plan("desks: 3\nminutes: 5")}`,
    right: `---\nclasses: [6]\n---\n\n${plan("desks: 3\nminutes: 5")}`,
  },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, block } = planned;
      const smallest = Math.min(...unitPlan.facts.classes);
      const groups = rotation?.at[0]?.length ?? 0;
      const least = leastLearners(planned);
      if (groups === 0 || Math.floor(smallest / groups) >= least) return [];
      const fitting = groupsFor(smallest, least);
      const advice =
        fitting > 0 ? ` With ${counted(fitting, "group")} each has at least ${least}.` : ` A group needs ${least}.`;
      return [
        {
          range: place(planned, "groups", "desks", "stations"),
          message: `In the class of ${smallest}, ${told(groupSizes(smallest, groups), least)}.${advice}`,
          fixes:
            fitting > 0
              ? [
                  {
                    title: `Take ${counted(fitting, "group")}`,
                    edits: [setOption(block, unit.text, "groups", String(fitting))],
                    preferred: true,
                  },
                ]
              : [],
        },
      ];
    }),
};

/** The most groups in which so many learners are at least `least` each; 0 where they are too few for one. */
export function groupsFor(learners: number, least: number): number {
  return Math.floor(learners / least);
}

/** Learners that every group of a plan needs: as many as the sets of all its activities. */
export function leastLearners({ activities }: PlannedStations): number {
  const needed = activities.flatMap(({ kind, request }) =>
    request && kind?.leastAtSet ? [kind.leastAtSet(request)] : [],
  );
  return Math.max(pair, ...needed);
}

function told(sizes: readonly number[], least: number): string {
  const [empty, alone] = [0, 1].map((size) => sizes.filter((each) => each === size).length);
  const short = sizes.filter((each) => each > 1 && each < least).length;
  const parts = [
    ...(empty ? [`${empty} of ${counted(sizes.length, "group")} ${empty === 1 ? "stays" : "stay"} empty`] : []),
    ...(alone ? [`${counted(alone, "learner sits", "learners sit")} alone`] : []),
    ...(short ? [`${counted(short, "group is", "groups are")} too small for a board for ${least}`] : []),
  ];
  const last = parts.pop() ?? "";
  return parts.length > 0 ? `${parts.join(", ")} and ${last}` : last;
}
