import { setOption } from "../../activities/edits";
import { counted } from "../../activities/report";
import { planStations } from "../../activities/stations";
import type { Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { plan } from "./stations-example";
import { place } from "./stations-place";

export const longStations: Rule<CheckContext> = {
  code: "long-stations",
  severity: "warning",
  title: "A plan of stations that does not fit the lesson",
  why: "Setup, every round of work, the moves between them and the end must fit the period: setup + R·work + (R − 1)·move + close, R being the larger of groups and stations.",
  example: { wrong: plan("desks: 6\nminutes: 8\nperiod: 50"), right: plan("desks: 6\nminutes: 6\nperiod: 50") },
  check: ({ unit, plan: unitPlan }) =>
    planStations(unit, unitPlan).flatMap((planned) => {
      const { rotation, options, block } = planned;
      if (!rotation || !options || rotation.fits) return [];
      const { longest, total } = rotation;
      return [
        {
          range: place(planned, "minutes", "period"),
          message: `This takes ${round(total)} minutes, ${round(total - options.period)} more than the period has. ${longest >= 1 ? `With ${counted(longest, "minute")} of work it would fit.` : "Not even a minute of work at each station would fit: take fewer stations or groups."}`,
          fixes:
            longest >= 1
              ? [
                  {
                    title: `Work ${counted(longest, "minute")}`,
                    edits: [setOption(block, unit.text, "minutes", String(longest))],
                    preferred: true,
                  },
                ]
              : [],
        },
      ];
    }),
};

function round(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
