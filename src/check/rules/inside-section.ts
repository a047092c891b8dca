import type { PlannedActivity, UnknownSection } from "../../activities/plan";
import type { Fix, Report } from "../../base/finding";
import { lineStart } from "../../base/range";
import type { Section, Unit } from "../../unit/unit";
import { quoted } from "./quoted-name";

/** `from: other.unit.md#os` where that unit has `### os` in a section. */
export function insideOther({ range, inside }: UnknownSection): Report | undefined {
  return (
    inside && {
      range,
      message: `“${inside.heading}” is a heading within a section of that unit, “${inside.section}”: a section has two number signs.`,
      fixes: [
        { title: `Take the whole section “${inside.section}”`, edits: [{ range, text: quoted(inside.section) }] },
      ],
    }
  );
}

/** `from: os` where `### os` stands in a section. Which of the two was meant the writer knows. */
export function insideOf(
  { name, range }: UnknownSection,
  { sections, text }: Unit,
  activities: readonly PlannedActivity[],
): Report | undefined {
  const section = sections.find(({ piles }) => piles.some((pile) => pile.name === name));
  const pile = section?.piles.find((each) => each.name === name);
  if (!section || !pile) return undefined;
  const whole: Fix = {
    title: `Take the whole section “${section.name}”`,
    edits: [{ range, text: quoted(section.name) }],
  };
  // From an activity that has all of the section its headings' items would be taken.
  const isTaken = activities.some((activity) => activity.sections.includes(section));
  const edits = isTaken ? undefined : raised(section, text);
  const title = section.piles.length > 1 ? "Make sections of it and of the headings beside it" : "Make a section of it";
  return {
    range,
    message: `“${name}” is a heading within the section “${section.name}”: a section has two number signs.`,
    related: [{ range: pile.heading, message: "This heading" }],
    fixes: [whole, ...(edits ? [{ title, edits }] : [])],
  };
}

/**
 * All headings in a section with two number signs: with one of them alone, what stands below the next would go with it. Undefined where
 * they are not equally deep.
 */
function raised({ piles }: Section, text: string): Fix["edits"] | undefined {
  const signs = piles.map(({ heading }) => {
    const start = lineStart(text, heading.start);
    const [, indent = "", written = ""] = /^( {0,3})(#{3,6})[ \t]+$/.exec(text.slice(start, heading.start)) ?? [];
    const at = start + indent.length;
    return { range: { start: at, end: at + written.length }, text: "##" };
  });
  const depth = ({ range }: (typeof signs)[number]): number => range.end - range.start;
  const first = signs[0] ? depth(signs[0]) : 0;
  return first > 0 && signs.every((each) => depth(each) === first) ? signs : undefined;
}
