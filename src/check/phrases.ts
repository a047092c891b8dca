import type { Phrase, Section } from "../unit/unit";

/** Visits everything of a section that some piece or paper may print. */
export function eachPhrase(section: Section, visit: (phrase: Pick<Phrase, "runs" | "range">) => void): void {
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
