import type { LoopPuzzle } from "../../../src/prove/loops/loops";
import type { Covers, Option } from "./cover";

/** Circles of so many cards: places in turn, at each a card, so that none lies before one that may not follow it. */
export function circles(covers: Covers, { follows }: LoopPuzzle, length: number, most?: number): number[][] {
  const cards = follows.map((_, card) => card);
  const places = cards.slice(0, length);
  const all = length === follows.length;
  const options = places.flatMap((place) =>
    cards.flatMap((card): Option<[number, number]>[] => {
      const joint = (before: number, next: number) => `${before} before place ${next}`;
      const after = joint(card, (place + 1) % length);
      const unfit = cards.filter((other) => !follows[other]?.includes(card)).map((other) => joint(other, place));
      // A card alone lies before itself.
      if (unfit.includes(after)) return [];
      // A circle of all cards starts with the first one; of a circle of some it matters only whether there is one.
      const data: [number, number] = [place, card];
      if (all)
        return (place === 0) === (card === 0)
          ? [{ data, primary: [`place ${place}`, card], secondary: [after, ...unfit] }]
          : [];
      return [{ data, primary: [`place ${place}`], secondary: [`card ${card}`, after, ...unfit] }];
    }),
  );
  const needed = [...places.map((place) => `place ${place}`), ...(all ? cards : [])];
  return covers(options, needed, most).map((cover) => [...cover].sort(([a], [b]) => a - b).map(([, card]) => card));
}

/** How a circle reads, from where it comes first in order. */
export function readingOf(look: readonly number[] | undefined, circle: readonly number[]): string {
  const word = circle.map((card) => look?.[card] ?? card);
  const [first = ""] = word.map((_, i) => [...word.slice(i), ...word.slice(0, i)].join()).sort();
  return first;
}
