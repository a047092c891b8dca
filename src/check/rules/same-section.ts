import type { Report, Rule } from "../../base/finding";
import type { Section } from "../../unit/unit";
import type { CheckContext } from "../context";

export const sameSection: Rule<CheckContext> = {
  code: "same-section",
  severity: "warning",
  title: "Two sections of one name",
  why: "`from` finds a section by its heading. Of two with the same text it takes the first.",
  example: {
    wrong: "## Food\n\n- pão = bread\n\n## Food\n\n- mel = honey",
    right: "## Food\n\n- pão = bread\n\n## More food\n\n- mel = honey",
  },
  check: ({ unit, plan }) =>
    unit.sections.flatMap((section, i): Report[] => {
      const first = unit.sections.slice(0, i).find(({ name }) => name === section.name);
      const shaped = [section, first].every((each) => each && hasItems(each));
      const named = plan.activities.some(({ sections }) => first !== undefined && sections.includes(first));
      if (!first || section.name === "" || !(shaped || named)) return [];
      let number = 2;
      while (unit.sections.some(({ name }) => name === `${section.name} ${number}`)) number++;
      const { end } = section.heading;
      return [
        {
          range: section.heading,
          message: `Another section is called “${section.name}” too; an activity that names it gets the first.`,
          related: [{ range: first.heading, message: "The first" }],
          fixes: [
            {
              title: `Call it “${section.name} ${number}”`,
              edits: [{ range: { start: end, end }, text: ` ${number}` }],
            },
          ],
        },
      ];
    }),
};

function hasItems({ pairs, statements, events, tables }: Section): boolean {
  return pairs.length + statements.length + events.length + tables.length > 0;
}
