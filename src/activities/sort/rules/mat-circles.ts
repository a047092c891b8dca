import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { optionPlace } from "../../report";
import type { SortContext } from "./context";
import { activity } from "./example";

export const matCircles: Rule<SortContext> = {
  code: "mat-circles",
  severity: "warning",
  title: "Circles for more than three piles",
  why: "Four circles cannot be drawn so that each group of them has a place of its own. The mat has fields instead.",
  example: {
    wrong: `## Letters\n\n### a\n- ato\n\n### b\n- boi\n\n### c\n- cor\n\n### d\n- dia${activity("mats: circles\n")}`,
    right: `## Letters\n\n### a\n- ato\n\n### b\n- boi\n\n### c\n- cor\n\n### d\n- dia${activity("mats: fields\n")}`,
  },
  check: ({ dealt: { options, piles, deals, request } }) =>
    deals.length > 0 && options.mats === "circles" && piles.length > 3
      ? [
          {
            range: optionPlace(request.block, "mats"),
            message: `Circles are for two or three piles, here are ${piles.length}: the mat has fields.`,
            fixes: [
              {
                title: "Print fields",
                edits: [setOption(request.block, request.unit.text, "mats", "fields")],
                preferred: true,
              },
            ],
          },
        ]
      : [],
};
