import type { Picture, Section } from "./unit";

/** Pictures of a section's pairs and of the plain items of its piles. */
export function picturesOf({ pairs, piles }: Section): Picture[] {
  const answers = [
    ...pairs.flatMap(({ left, right }) => [...left.answers, ...right.answers]),
    ...piles.flatMap(({ members }) => members.flatMap((member) => (member.shape === "text" ? [member.item] : []))),
  ];
  return answers.flatMap(({ picture }) => picture ?? []);
}
