import { stretch } from "./circle";
import type { Circle } from "./loops";

/** Pairs of arcs to look at; a second circle near the first one is found early or not at all. */
const most = 100_000;

/**
 * A second full circle by exchanging two neighbouring stretches of a first one, for any relation: with a card p, after which
 * the second stretch may come, r, its last card, after which the first may come, and q, the last of that, after which the
 * rest may come. `undefined` proves nothing, and cards that print alike may make a circle that looks the same.
 */
export function swappedCircle(follows: readonly (readonly number[])[], circle: Circle): Circle | undefined {
  const { length } = circle;
  const place = new Int32Array(length);
  circle.forEach((card, i) => {
    place[card] = i;
  });
  const before: number[][] = follows.map(() => []);
  follows.forEach((list, card) => {
    for (const next of list) before[next]?.push(place[card] ?? 0);
  });
  let looked = 0;
  for (let p = 0; p < length; p++) {
    const first = (p + 1) % length;
    for (const next of follows[circle[p] ?? 0] ?? []) {
      const second = place[next] ?? 0;
      const q = (second - 1 + length) % length;
      // Places are compared as steps after the first stretch's first card.
      const steps = (second - first + length) % length;
      if (steps === 0) continue;
      for (const r of before[circle[first] ?? 0] ?? []) {
        const reach = (r - first + length) % length;
        if (reach < steps || r === p) continue;
        if (++looked > most) return undefined;
        const rest = (r + 1) % length;
        if (follows[circle[q] ?? 0]?.includes(circle[rest] ?? -1))
          return [...stretch(circle, second, rest), ...stretch(circle, first, second), ...stretch(circle, rest, first)];
      }
    }
  }
  return undefined;
}
