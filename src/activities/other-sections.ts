import type { Section } from "../unit/unit";
import type { DealRequest } from "./contract";

/** Sections of the unit that an activity could take instead: `from` leads to the first one of a name only. */
export function otherSections({ unit, sections }: DealRequest, serves: (section: Section) => boolean): Section[] {
  return unit.sections.filter(
    (each) => !sections.includes(each) && serves(each) && unit.sections.find(({ name }) => name === each.name) === each,
  );
}
