import type { Report, Rule } from "../../base/finding";
import type { Section } from "../../unit/unit";
import { type CheckContext, sectionsInUse } from "../context";

export const underlinedNote: Rule<CheckContext> = {
  code: "underlined-note",
  severity: "warning",
  title: "A note that a line of hyphens makes a heading",
  why: "Hyphens right below a line make a heading of it, and a section begins there: what stands below no longer belongs to the section above. A blank line between them leaves the line a note.",
  example: {
    wrong:
      "## Food\n\n- pão = bread\n- mel = honey\n- sal = salt\n- chá = tea\n\n```activity\nmake: tiles\n```\n\nFor next week\n---\n\n- ovo = egg",
    right:
      "## Food\n\n- pão = bread\n- mel = honey\n- sal = salt\n- chá = tea\n\n```activity\nmake: tiles\n```\n\nFor next week\n\n---\n\n- ovo = egg",
  },
  check: (context) => {
    const { unit } = context;
    const { lines, text } = unit;
    const used = sectionsInUse(context);
    const underlined = unit.sections.map(({ heading }) => {
      const below = lines.line(lines.lineAt(heading.end) + 1);
      const line = text.slice(below.start, below.end);
      return !text.slice(0, heading.start).endsWith(" ") && /^ {0,3}-+[ \t]*$/.test(line) ? below : undefined;
    });
    // Who writes all headings so means them.
    if (unit.sections.length < 2 || underlined.every((each) => each !== undefined)) return [];
    return unit.sections.flatMap((section, i): Report[] => {
      const below = underlined[i];
      const above = unit.sections[i - 1];
      if (!below || !above) return [];
      // Where the one above has items and only this one is used, that one was meant.
      const meant = used.includes(section) ? hasItems(above) : hasItems(section);
      if (!meant || used.includes(section) === used.includes(above)) return [];
      const { newline } = unit.lines;
      return [
        {
          range: below,
          message: `This line makes a heading of “${section.name}”, so that what stands below is another section than “${above.name}”.`,
          fixes: [
            {
              title: "Put a blank line before it",
              edits: [{ range: { start: below.start, end: below.start }, text: newline }],
              preferred: true,
            },
          ],
        },
      ];
    });
  },
};

function hasItems({ pairs, statements, events, tables }: Section): boolean {
  return pairs.length + statements.length + events.length + tables.length > 0;
}
