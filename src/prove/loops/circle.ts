import type { Circle, LoopPuzzle } from "./loops";

/** Whether every card lies in the circle once, each after one that it may follow. */
export function isCircle(puzzle: LoopPuzzle, circle: Circle): boolean {
  const { follows } = puzzle;
  if (circle.length !== follows.length || circle.length === 0 || new Set(circle).size !== circle.length) return false;
  return circle.every((card, i) => follows[card]?.includes(circle[(i + 1) % circle.length] ?? -1));
}

/** Whether two circles look the same, wherever they start. */
export function sameCircle(look: readonly number[], a: Circle, b: Circle): boolean {
  return circleKey(look, a) === circleKey(look, b);
}

/** Equal for circles that look the same. */
export function circleKey(look: readonly number[], circle: Circle): string {
  const word = circle.map((card) => look[card] ?? -1);
  const start = leastRotation(word);
  return [...word.slice(start), ...word.slice(0, start)].join();
}

/** Where the rotation starts that is first in order: two candidates race, the loser jumps behind what both matched. */
function leastRotation(word: readonly number[]): number {
  const { length } = word;
  let a = 0;
  let b = 1;
  let matched = 0;
  while (a < length && b < length && matched < length) {
    const difference = (word[(a + matched) % length] ?? 0) - (word[(b + matched) % length] ?? 0);
    if (difference === 0) {
      matched++;
      continue;
    }
    if (difference > 0) a += matched + 1;
    else b += matched + 1;
    if (a === b) b++;
    matched = 0;
  }
  return Math.min(a, b);
}

/** From a card's place on to just before another's, once round at most. */
export function stretch(circle: Circle, from: number, to: number): number[] {
  const { length } = circle;
  const cards: number[] = [];
  for (let i = from; i !== to || cards.length === 0; i = (i + 1) % length) cards.push(circle[i] ?? -1);
  return cards;
}
