import activitySchema from "../../../schemas/activity.schema.json";
import frontSchema from "../../../schemas/front-matter.schema.json";
import type { OptionSchema } from "../../activities/options";
import type { PlannedActivity } from "../../activities/plan";
import type { Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { explainFault } from "./explain-fault";
import { nearlyKeys } from "./front-keys";
import { isUnit } from "./reading/problem-rule";

export const wrongOption: Rule<CheckContext> = {
  code: "wrong-option",
  severity: "error",
  title: "An option that is unknown, or a value that it cannot have",
  why: "The option is left out as if it were not there, so the sheets are not what was asked for. Completion inside the block lists what is possible.",
  example: { wrong: "```activity\nmake: tiles\ngird: 3 x 3\n```", right: "```activity\nmake: tiles\ngrid: 3 x 3\n```" },
  check: ({ unit, plan }) => [
    ...(isUnit(unit) ? plan.faults : []).flatMap((fault) => explainFault(fault, frontSchema, unit.text)),
    ...(isUnit(unit) ? nearlyKeys(unit.front) : []),
    ...plan.activities.flatMap((activity) =>
      activity.faults.flatMap((fault) => explainFault(fault, schemaOf(activity), unit.text, activity)),
    ),
  ],
};

function schemaOf({ kind }: PlannedActivity): OptionSchema {
  return {
    properties: {
      ...activitySchema.properties,
      ...(kind?.schema.properties ?? {}),
      make: activitySchema.properties.make,
    },
  };
}
