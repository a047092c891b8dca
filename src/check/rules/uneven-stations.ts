import schema from "../../../schemas/stations.schema.json";
import { setOption } from "../../activities/edits";
import { type PlannedStations, planStations } from "../../activities/stations";
import type { Fix, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { setsPrinted } from "./few-sets";
import { groupsFor, leastLearners } from "./small-groups";
import { plan } from "./stations-example";
import { place } from "./stations-place";

export const unevenStations: Rule<CheckContext> = {
  code: "uneven-stations",
  severity: "information",
  title: "Stations without a group, or groups without a station",
  why: "With more groups than stations some groups wait in each round; with fewer some stations stand idle. The plan says which. Each station can be set up more than once (`copies`) where enough sets are printed. A balanced order needs an even number of stations and no more groups than stations and copies of them; else the groups turn on to the next.",
  example: { wrong: plan("desks: 4\ngroups: 5\nminutes: 5"), right: plan("desks: 4\ngroups: 4\nminutes: 5") },
  check: (context) => {
    const { unit, plan: unitPlan } = context;
    return planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, options, block, activities } = planned;
      if (!rotation || !options) return [];
      const unmet = options.order === "balanced" && rotation.order === "turn";
      const { idle, waiting } = rotation;
      // A copy fewer would make groups wait: as few stations stand idle as can be.
      const least = options.copies > 1 && waiting === 0 && idle < activities.length / options.copies;
      if ((idle === 0 || least) && waiting === 0 && !unmet) return [];
      const rounds = rotation.varies ? "in some round" : "in each round";
      const said = [
        ...(waiting > 0 ? [`${waiting} of ${options.groups ?? 0} groups wait ${rounds}`] : []),
        ...(idle > 0 && !least ? [`${idle} of ${activities.length} stations stand idle ${rounds}`] : []),
        ...(unmet ? ["no balanced order exists for these numbers, so the groups turn on to the next station"] : []),
      ];
      const first = said[0] ?? "";
      const message = `${first.charAt(0).toUpperCase()}${first.slice(1)}${said.length > 1 ? `; ${said.slice(1).join("; ")}` : ""}.`;
      // As many groups as stations help nobody where a class is too small for them.
      const enough = unitPlan.facts.classes.every(
        (learners) => groupsFor(learners, leastLearners(planned)) >= activities.length,
      );
      const copies = copiesFor(planned, context);
      const fixes: Fix[] =
        idle + waiting > 0
          ? [
              ...(copies === undefined
                ? []
                : [
                    {
                      title: `Set up each station ${copies === 2 ? "twice" : `${copies} times`}`,
                      edits: [setOption(block, unit.text, "copies", String(copies))],
                    },
                  ]),
              ...(enough
                ? [
                    {
                      title: `Take ${activities.length} groups`,
                      edits: [setOption(block, unit.text, "groups", String(activities.length))],
                    },
                  ]
                : []),
            ]
          : [{ title: "Let the groups turn on to the next", edits: [setOption(block, unit.text, "order", "turn")] }];
      return [{ range: place(planned, ...(unmet ? ["order"] : []), "groups", "desks"), message, fixes }];
    });
  },
};

/**
 * How many times each station would have to be set up for no group to wait; undefined where none waits, at desks, and where that
 * is more than can be or than there are sets.
 */
function copiesFor({ rotation, options, activities }: PlannedStations, context: CheckContext): number | undefined {
  if (!rotation || !options || rotation.waiting === 0 || options.desks !== undefined) return undefined;
  const stations = activities.slice(0, activities.length / options.copies);
  const copies = Math.ceil((options.groups ?? 0) / stations.length);
  const enough = stations.every(
    (activity) =>
      (setsPrinted(activity, context) ?? Infinity) >= copies * stations.filter((each) => each === activity).length,
  );
  return enough && copies <= schema.properties.copies.maximum ? copies : undefined;
}
