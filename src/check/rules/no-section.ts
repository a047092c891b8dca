import type { Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { lineAt } from "./new-line";
import { otherHeading } from "./other-heading";
import { quoted } from "./quoted-name";

export const noSection: Rule<CheckContext> = {
  code: "no-section",
  severity: "error",
  title: "An activity above the first section",
  why: "Without `from`, an activity is about the section that it stands in. Above the first level-two heading there is none.",
  example: {
    wrong: "```activity\nmake: tiles\n```\n\n## Food",
    right: "```activity\nmake: tiles\nfrom: Food\n```\n\n## Food",
  },
  check: ({ unit, plan }) =>
    plan.activities
      .filter(({ sections, unknown, kind, lost }) => kind && !lost && sections.length === 0 && unknown.length === 0)
      .map(({ block }) => ({
        range: { start: block.fence.start, end: unit.lines.line(unit.lines.lineAt(block.fence.start)).end },
        message:
          unit.sections.length > 0
            ? "This activity stands in no section. Say with “from” whose words it uses."
            : "This activity stands in no section: a section begins with a level-two heading, as “## Name”.",
        fixes:
          unit.sections.length === 0
            ? otherHeading(unit, block.fence.start)
            : unit.sections.slice(0, 5).map(({ name }) => ({
                title: `Use “${name}”`,
                edits: [lineAt(unit.text, block.body.end, `from: ${quoted(name)}`)],
              })),
      })),
};
