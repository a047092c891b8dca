import type { Phrase, Picture, Section } from "./unit";

/** Pictures of a section that some piece may print: of its pairs, statements, events and the plain items of its piles. */
export function picturesOf({ pairs, statements, events, piles }: Section): Picture[] {
  const phrases: Phrase[] = [
    ...pairs.flatMap(({ left, right }) => [...left.answers, ...right.answers]),
    ...pairs.flatMap(({ left }) => left.answers.flatMap(({ parts }) => parts)),
    ...statements,
    ...events.flatMap((event) => [event, ...event.free]),
    ...piles.flatMap(({ members }) => members.flatMap((member) => (member.shape === "text" ? [member.item] : []))),
  ];
  // The same picture is met twice: as an answer's and as its first part's, as an item's and as its pile's.
  const found = new Map<string, Picture>();
  for (const { picture } of phrases) if (picture) found.set(`${picture.range.start} ${picture.path}`, picture);
  return [...found.values()];
}
