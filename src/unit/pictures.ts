import type { Answer, Phrase, Picture, Section } from "./unit";

const kept = new WeakMap<Section, readonly Picture[]>();

/** Pictures of a section that some piece may print: of its pairs, statements, events and the plain items of its piles. */
export function picturesOf(section: Section): readonly Picture[] {
  const known = kept.get(section) ?? picturesIn(section);
  kept.set(section, known);
  return known;
}

function picturesIn({ pairs, statements, events, piles }: Section): Picture[] {
  // The same picture is met twice: as an answer's and as its first part's, as an item's and as its pile's.
  const found = new Map<string, Picture>();
  const look = ({ picture }: Phrase): void => {
    if (picture) found.set(`${picture.range.start} ${picture.path}`, picture);
  };
  const lookIn = (answers: readonly Answer[], parts: boolean): void => {
    for (const answer of answers) {
      look(answer);
      if (parts) answer.parts.forEach(look);
    }
  };
  for (const { left, right } of pairs) {
    lookIn(left.answers, true);
    lookIn(right.answers, false);
  }
  statements.forEach(look);
  for (const event of events) {
    look(event);
    event.free.forEach(look);
  }
  for (const { members } of piles) {
    for (const member of members) if (member.shape === "text") look(member.item);
  }
  return [...found.values()];
}
