import type { Deal } from "../../activities/contract";
import { setOption } from "../../activities/edits";
import type { PlannedActivity } from "../../activities/plan";
import { counted } from "../../activities/report";
import { type PlannedStations, planStations } from "../../activities/stations";
import type { Fix, Report, Rule } from "../../base/finding";
import { mapped } from "../../base/steps";
import type { CheckContext } from "../context";
import { plan } from "./stations-example";
import { place } from "./stations-place";

export const fewSets: Rule<CheckContext> = {
  code: "few-sets",
  severity: "warning",
  title: "More places of a plan of stations than sets",
  why: "Each desk, and each station that has an activity once more, needs a set of its own on the table. Without `copies`, as many sets are printed as the largest class has groups of the activity's `group`, which may be fewer.",
  example: {
    wrong: `---\nclasses: [8]\n---\n\n${plan("desks: 6\ngroups: 4\nminutes: 5")}`,
    right: `---\nclasses: [12]\n---\n\n${plan("desks: 6\ngroups: 6\nminutes: 5")}`,
  },
  *check(context) {
    const reports: Report[] = [];
    for (const planned of planStations(context.unit, context.plan)) {
      const all = yield* mapped(new Set(planned.activities), (activity) => findingsAt(planned, activity, context));
      reports.push(...all.flat());
    }
    return reports;
  },
};

function findingsAt(planned: PlannedStations, activity: PlannedActivity, context: CheckContext): Report[] {
  const sets = setsPrinted(activity, context);
  const places = planned.activities.filter((each) => each === activity).length;
  if (sets === undefined || sets >= places) return [];
  const { text } = context.unit;
  const desks = planned.options?.desks !== undefined;
  const fixes: Fix[] = [
    {
      title: `Print ${places} sets of “${activity.title}”`,
      edits: [setOption(activity.block, text, "copies", String(places))],
      preferred: true,
    },
    ...(desks && sets > 1
      ? [{ title: `Lay out ${sets} desks`, edits: [setOption(planned.block, text, "desks", String(sets))] }]
      : []),
  ];
  const message = `${counted(places, desks ? "desk has" : "station has", desks ? "desks have" : "stations have")} “${activity.title}”, but only ${counted(sets, "set is", "sets are")} printed.`;
  return [{ range: place(planned, desks ? "desks" : "stations"), message, fixes }];
}

/** Undefined where nothing of an activity is laid out in sets, where it is not dealt, and where its master is copied. */
export function setsPrinted(activity: PlannedActivity, { activities, press }: CheckContext): number | undefined {
  const dealt = activities.find(({ plan: own }) => own === activity)?.dealt;
  const { kind } = activity;
  if (!dealt || !kind || dealt.deals.length === 0) return undefined;
  const copies = dealt.deals.map((deal: Deal) => (kind.pieces(dealt, deal, press).length > 0 ? deal.copies : 0));
  if (copies.includes("by copier")) return undefined;
  const sets = copies.reduce<number>((sum, each) => sum + Number(each), 0);
  return sets > 0 ? sets : undefined;
}
