import type { PlannedActivity, UnknownSection } from "../../activities/plan";
import type { Fix, Report } from "../../base/finding";
import type { Section, Unit } from "../../unit/unit";
import { quoted } from "./quoted-name";

/**
 * `from: Frutas` where “Frutas” is a deeper heading in a section. Either all of that section is meant, or its headings were to begin
 * sections: nothing is done unasked.
 */
export function headingBelow(
  { name, range }: UnknownSection,
  unit: Unit,
  activities: readonly PlannedActivity[],
): Report | undefined {
  const section = unit.sections.find(({ piles }) => piles.some((pile) => pile.name === name));
  if (!section) return undefined;
  const whole: Fix = { title: `Change to “${section.name}”`, edits: [{ range, text: quoted(section.name) }] };
  // What another activity takes from the section would go to others.
  const isTaken = activities.some(({ sections }) => sections.includes(section));
  const raised = isTaken ? undefined : raisedHeadings(section, unit.text);
  const raise: Fix[] = raised ? [{ title: `Make sections of the headings in “${section.name}”`, edits: raised }] : [];
  return {
    range,
    message: `“${name}” is no section but a heading in “${section.name}”: a section begins with two number signs.`,
    fixes: [...raise, whole],
    related: section.piles
      .filter((pile) => pile.name === name)
      .map(({ heading }) => ({ range: heading, message: "This heading begins a pile." })),
  };
}

/** All headings of the third rank in a section with a number sign less; undefined where it has others too. */
function raisedHeadings({ range, piles }: Section, text: string): Fix["edits"] | undefined {
  const edits = piles.map(({ heading }) => {
    const start = text.lastIndexOf("\n", heading.start - 1) + 1;
    const lead = /^( {0,3})###[ \t]+$/.exec(text.slice(start, heading.start))?.[1];
    const at = start + (lead ?? "").length;
    return lead === undefined || start < range.start ? undefined : { range: { start: at, end: at + 1 }, text: "" };
  });
  const found = edits.flatMap((edit) => edit ?? []);
  return found.length === edits.length ? found : undefined;
}
