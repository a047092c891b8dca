import { SectionMemory } from "../unit/section-memory";
import type { Phrase, Section, Unit } from "../unit/unit";

type Visited = Pick<Phrase, "runs" | "range">;

/** Knows of sections of late whether any of their phrases is worth a closer look. */
export class PhraseMemory {
  private readonly kept = new SectionMemory<boolean>();

  has(unit: Unit, section: Section, isWorthIt: (phrase: Visited) => boolean): boolean {
    return this.kept.get(unit, section, () => {
      let found = false;
      eachPhrase(section, (phrase) => {
        found ||= isWorthIt(phrase);
      });
      return found;
    });
  }
}

/** Visits everything of a section that some piece or paper may print. */
export function eachPhrase(section: Section, visit: (phrase: Visited) => void): void {
  for (const { left, right, examples } of section.pairs) {
    left.answers.forEach(visit);
    right.answers.forEach(visit);
    examples.forEach(visit);
  }
  for (const statement of section.statements) {
    visit(statement);
    if (statement.correction) visit(statement.correction);
  }
  for (const event of section.events) {
    visit(event);
    event.free.forEach(visit);
  }
  for (const { name, heading, members } of section.piles) {
    visit({ range: heading, runs: [{ text: name }] });
    for (const member of members) if (member.shape === "text") visit(member.item);
  }
  for (const { columns, persons, forms } of section.tables) {
    columns.forEach(visit);
    persons.forEach(visit);
    for (const form of forms.flat()) if (form) visit(form);
  }
}
