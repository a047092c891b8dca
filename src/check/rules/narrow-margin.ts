import { setOption } from "../../activities/edits";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";

export const narrowMargin: Rule<CheckContext> = {
  code: "narrow-margin",
  severity: "warning",
  title: "A margin that printers cannot print up to",
  why: "Laser printers leave 4 to 5 mm at each edge of the paper blank, some inkjets more at the bottom (makers' manuals). Below 7 mm lines may be lost, below 5 mm they will be. The limits are our own.",
  example: {
    wrong: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nmargin: 3\n```",
    right: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nmargin: 10\n```",
  },
  check: ({ unit, plan }) => {
    const reports: Report[] = [];
    const entries = [
      ...unit.front.entries.map((entry) => ({ entry, block: undefined })),
      ...plan.activities.flatMap(({ block }) => block.options.entries.map((entry) => ({ entry, block }))),
    ];
    for (const { entry, block } of entries) {
      if (entry.key !== "margin" || typeof entry.value !== "number" || entry.value < 0 || entry.value >= 7) continue;
      const edit = block ? setOption(block, unit.text, "margin", "10") : { range: entry.valueRange, text: "10" };
      reports.push({
        range: entry.valueRange,
        severity: entry.value < 5 ? "error" : "warning",
        message: `${entry.value} mm ${entry.value < 5 ? "is" : "may be"} less than printers can print up to; lines at the edge would be lost.`,
        fixes: [{ title: "Change to 10 mm", edits: [edit], preferred: true }],
      });
    }
    return reports;
  },
};
