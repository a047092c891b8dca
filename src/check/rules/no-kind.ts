import { kinds } from "../../activities/kinds";
import type { Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { lineAt } from "./new-line";

export const noKind: Rule<CheckContext> = {
  code: "no-kind",
  severity: "error",
  title: "An activity that does not say what it makes",
  why: "Each `activity` block needs a line `make:` with the kind of activity.",
  example: { wrong: "```activity\ngrid: 3 x 3\n```", right: "```activity\nmake: tiles\ngrid: 3 x 3\n```" },
  check: ({ unit, plan }) =>
    plan.activities
      // Of options that cannot be read it is said already what is wrong.
      .filter(({ block }) => !block.options.broken && !block.options.entries.some(({ key }) => key === "make"))
      .map(({ block }) => {
        const nearly = block.options.entries.find(({ key }) => /^(?:makes?|mak|mkae|amke|maek|kind)$/i.test(key));
        if (nearly)
          return {
            range: nearly.keyRange,
            message: `This activity does not say what to make: “${nearly.key}” is no option, “make” is.`,
            fixes: [{ title: "Change to “make”", edits: [{ range: nearly.keyRange, text: "make" }], preferred: true }],
          };
        const fence = unit.text.slice(block.fence.start, block.body.start).trimEnd();
        return {
          range: { start: block.fence.start, end: block.fence.start + Math.max(3, fence.length) },
          message: "This activity does not say what to make. Add a line “make: …”.",
          fixes: kinds.map(({ name }) => ({
            title: `Make ${name}`,
            edits: [lineAt(unit.text, block.body.start, `make: ${name}`)],
          })),
        };
      }),
};
