import { removeOption } from "../../activities/edits";
import { optionPlace } from "../../activities/report";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";

export const overruledOption: Rule<CheckContext> = {
  code: "overruled-option",
  severity: "warning",
  title: "An option that another one overrules",
  why: "Two options say the same thing, and one of them goes first: levels say themselves what gentle and hard pieces show, and different boards are as many as there are sets. What the other option says is not done. Take one of them out.",
  example: {
    wrong:
      "## Ordering\n\n- Preciso de uma bomba. = I need a pump.\n\n```activity\nmake: rebuild\nlevels: [gentle, hard]\ncapitals: hide\n```",
    right:
      "## Ordering\n\n- Preciso de uma bomba. = I need a pump.\n\n```activity\nmake: rebuild\nlevels: [gentle, hard]\n```",
  },
  check: ({ plan, unit }) =>
    plan.activities.flatMap(({ block, kind }): Report[] => {
      const { entries } = block.options;
      return (kind?.overruled ?? []).flatMap(({ key, by, value, why }): Report[] => {
        const other = entries.find((entry) => entry.key === by);
        const rules = other && (value === undefined || other.value === value);
        const own = entries.find((entry) => entry.key === key);
        if (!rules || !own) return [];
        // Of two with this name the second would come into force.
        const again = unit.problems.some(
          ({ code, range }) =>
            code === "option-twice" &&
            block.body.start <= range.start &&
            range.end <= block.body.end &&
            unit.text.slice(range.start, range.end) === key,
        );
        const without = again ? undefined : removeOption(block, unit.text, key);
        return [
          {
            range: optionPlace(block, key),
            message: `“${key}” changes nothing beside “${by}”: ${why}.`,
            related: [{ range: optionPlace(block, by), message: "This goes first" }],
            fixes: without ? [{ title: `Take “${key}” out`, edits: [without], preferred: true }] : [],
          },
        ];
      });
    }),
};
