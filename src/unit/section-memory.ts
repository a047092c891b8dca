import { Recent } from "../base/recent";
import type { Section, Unit } from "./unit";

const texts = new WeakMap<Section, string>();

/** Equal for sections that say the same: their text, and the link references of the unit. */
function textOf({ text, references }: Unit, section: Section): string {
  const known = texts.get(section);
  if (known !== undefined) return known;
  const own = `${references}\u0000${text.slice(section.range.start, section.range.end)}`;
  texts.set(section, own);
  return own;
}

const origins = new WeakMap<Section, Section>();

/** A section at another place has the same text: it need not be cut out again. */
export function saysTheSame(moved: Section, section: Section): void {
  const known = texts.get(section);
  if (known !== undefined) texts.set(moved, known);
  origins.set(moved, originOf(section));
}

/** The section as it was read, however often it was moved since: what its items say is the same, in the same order. */
export function originOf(section: Section): Section {
  return origins.get(section) ?? section;
}

/**
 * What was found in sections of late. From one keystroke to the next only one section of a unit changes; what hangs on the words
 * of a section alone, and not on its place, is found once.
 */
export class SectionMemory<Value> {
  private readonly kept = new Recent<Value>(500);

  /** What is kept of a section, if anything is. */
  find(unit: Unit, section: Section): Value | undefined {
    return this.kept.find(textOf(unit, section));
  }

  /** The section is one of the unit's own: the places of one from another unit are not those of its text. */
  get(unit: Unit, section: Section, make: () => Value): Value {
    return this.kept.get(textOf(unit, section), make);
  }
}
