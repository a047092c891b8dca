import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { counted, optionPlace } from "../../report";
import type { CallsContext } from "./context";
import { six } from "./example";

export const shortReserve: Rule<CallsContext> = {
  code: "short-reserve",
  severity: "warning",
  title: "Fewer statements in reserve than asked for",
  why: "What is kept for a tie must not have been called before, so it comes from statements that the list does not use. Write more of them, or take fewer for the list.",
  example: {
    wrong: `${six}\`\`\`activity\nmake: calls\ntake: 6\nreserve: 2\n\`\`\``,
    right: `${six}- [x] Ela fuma.\n- [ ] Ela canta.\n  - Ela dança.\n\n\`\`\`activity\nmake: calls\ntake: 6\nreserve: 2\n\`\`\``,
  },
  check: ({ dealt }) => {
    const { reserve, options, request, deals } = dealt;
    if (deals.length === 0 || reserve.length >= options.reserve) return [];
    const { block, unit } = request;
    return [
      {
        range: optionPlace(block, "reserve"),
        message: `${leftOver(reserve.length)} left for a tie; \`reserve\` asks for ${options.reserve}.`,
        fixes: [
          {
            title: reserve.length > 0 ? `Keep ${reserve.length}` : "Keep none",
            edits: [setOption(block, unit.text, "reserve", String(reserve.length))],
          },
        ],
      },
    ];
  },
};

function leftOver(count: number): string {
  return count === 0 ? "No statement is" : `Only ${counted(count, "statement is", "statements are")}`;
}
