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
  why: "A class is shared out evenly over the groups. Where it has fewer than two learners for each, some sit alone at their station, or groups stay empty; a board needs as many as play at it. The teacher can call at one station: where more than one has a caller, each group needs one learner more than play, who calls.",
  example: {
    wrong: `---\nclasses: [5]\n---\n\n${plan("desks: 3\nminutes: 5")}`,
    right: `---\nclasses: [6]\n---\n\n${plan("desks: 3\nminutes: 5")}`,
  },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, block } = planned;
      const smallest = Math.min(...unitPlan.facts.classes);
      const groups = rotation?.at[0]?.length ?? 0;
      const needs = needsOf(planned);
      const least = needs.players + needs.caller;
      if (groups === 0 || Math.floor(smallest / groups) >= least) return [];
      const fitting = groupsFor(smallest, least);
      const advice =
        fitting > 0 ? ` With ${counted(fitting, "group")} each has at least ${least}.` : ` A group needs ${least}.`;
      return [
        {
          range: place(planned, "groups", "desks", "stations"),
          message: `In the class of ${smallest}, ${told(groupSizes(smallest, groups), needs)}.${advice}`,
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

/** What every group of a plan needs: as many as play at the sets of all its activities, and somebody who calls. */
interface Needs {
  readonly players: number;
  readonly caller: 0 | 1;
}

function needsOf({ activities, options }: PlannedStations): Needs {
  const atSet = activities.flatMap(({ kind, request }) =>
    request && kind?.leastAtSet ? [kind.leastAtSet(request)] : [],
  );
  // Copies of one activity, or its desks, hear one caller.
  const called = new Set(activities.filter(({ kind }) => kind?.called)).size;
  return { players: Math.max(pair, ...atSet), caller: called > 1 && options?.desks === undefined ? 1 : 0 };
}

/** Learners that every group of a plan needs. */
export function leastLearners(planned: PlannedStations): number {
  const { players, caller } = needsOf(planned);
  return players + caller;
}

function told(sizes: readonly number[], { players, caller }: Needs): string {
  const [empty, alone] = [0, 1].map((size) => sizes.filter((each) => each === size).length);
  const short = sizes.filter((each) => each > 1 && each < players).length;
  const callerless = sizes.filter((each) => each > 1 && each >= players && each < players + caller).length;
  const parts = [
    ...(empty ? [`${empty} of ${counted(sizes.length, "group")} ${empty === 1 ? "stays" : "stay"} empty`] : []),
    ...(alone ? [`${counted(alone, "learner sits", "learners sit")} alone`] : []),
    ...(short ? [`${counted(short, "group is", "groups are")} too small for a board for ${players}`] : []),
    ...(callerless
      ? [`${counted(callerless, "group has", "groups have")} nobody left over to call, and you can call at one station`]
      : []),
  ];
  const last = parts.pop() ?? "";
  return parts.length > 0 ? `${parts.join(", ")} and ${last}` : last;
}
