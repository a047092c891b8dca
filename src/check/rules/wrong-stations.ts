import schema from "../../../schemas/stations.schema.json";
import { planStations } from "../../activities/stations";
import type { Fix, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { nearest, surelyMeant } from "../nearest";
import { explainFault } from "./explain-fault";
import { quoted } from "./quoted-name";
import { plan } from "./stations-example";

export const wrongStations: Rule<CheckContext> = {
  code: "wrong-stations",
  severity: "error",
  title: "A plan of stations with an option or a name that is not known",
  why: "`stations` lists activities by their titles or kinds. An option that is unknown, or that has a value it cannot have, is left out as if it were not there.",
  example: { wrong: plan("stations: [Drink]"), right: plan("stations: [Drinks]") },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap(({ faults, unknown }) => [
      ...faults.flatMap((fault) => explainFault(fault, schema, unit.text)),
      ...unknown.map(({ name, range }) => {
        const titles = unitPlan.activities.map(({ title }) => title);
        const near = nearest(name, titles).slice(0, 3);
        const sure = surelyMeant(name, titles);
        return {
          range,
          message: `No activity is called “${name}”, and none is of that kind.`,
          fixes: near.map(
            (title): Fix => ({
              title: `Change to “${title}”`,
              edits: [{ range, text: quoted(title) }],
              ...(title === sure ? { preferred: true } : {}),
            }),
          ),
        };
      }),
    ]),
};
