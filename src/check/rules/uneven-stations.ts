import { setOption } from "../../activities/edits";
import { planStations } from "../../activities/stations";
import type { Fix, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { groupsFor, leastLearners } from "./small-groups";
import { plan } from "./stations-example";
import { place } from "./stations-place";

export const unevenStations: Rule<CheckContext> = {
  code: "uneven-stations",
  severity: "information",
  title: "Stations without a group, or groups without a station",
  why: "With more groups than stations some groups wait in each round; with fewer some stations stand idle. The plan says which. A balanced order needs an even number of stations and no more groups than stations; else the groups turn on to the next.",
  example: { wrong: plan("desks: 4\ngroups: 5\nminutes: 5"), right: plan("desks: 4\ngroups: 4\nminutes: 5") },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, options, block, activities } = planned;
      if (!rotation || !options) return [];
      const unmet = options.order === "balanced" && rotation.order === "turn";
      if (rotation.idle === 0 && rotation.waiting === 0 && !unmet) return [];
      const said = [
        ...(rotation.waiting > 0 ? [`${rotation.waiting} of ${options.groups ?? 0} groups wait in each round`] : []),
        ...(rotation.idle > 0 ? [`${rotation.idle} of ${activities.length} stations stand idle in each round`] : []),
        ...(unmet ? ["no balanced order exists for these numbers, so the groups turn on to the next station"] : []),
      ];
      const first = said[0] ?? "";
      const message = `${first.charAt(0).toUpperCase()}${first.slice(1)}${said.length > 1 ? `; ${said.slice(1).join("; ")}` : ""}.`;
      // As many groups as stations help nobody where a class is too small for them.
      const enough = unitPlan.facts.classes.every(
        (learners) => groupsFor(learners, leastLearners(planned)) >= activities.length,
      );
      const fixes: Fix[] =
        rotation.idle + rotation.waiting > 0
          ? enough
            ? [
                {
                  title: `Take ${activities.length} groups`,
                  edits: [setOption(block, unit.text, "groups", String(activities.length))],
                },
              ]
            : []
          : [{ title: "Let the groups turn on to the next", edits: [setOption(block, unit.text, "order", "turn")] }];
      return [{ range: place(planned, ...(unmet ? ["order"] : []), "groups", "desks"), message, fixes }];
    }),
};
