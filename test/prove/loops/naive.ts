import type { LoopPuzzle } from "../../../src/prove/loops/loops";

/** Every full circle of a few cards as it looks, read from where it comes first in order. */
export function fullCircles({ follows, look }: LoopPuzzle): Set<string> {
  const looks = new Set<string>();
  const size = follows.length;
  const path = [0];
  const walk = () => {
    const last = path.at(-1) ?? 0;
    for (const next of follows[last] ?? []) {
      if (path.length === size) {
        if (next === 0) looks.add(firstReading(path.map((card) => look?.[card] ?? card)));
      } else if (!path.includes(next)) {
        path.push(next);
        walk();
        path.pop();
      }
    }
  };
  if (size > 0) walk();
  return looks;
}

function firstReading(word: readonly number[]): string {
  const readings = word.map((_, start) => [...word.slice(start), ...word.slice(0, start)].join());
  return readings.sort()[0] ?? "";
}

/** The fewest cards that make a circle, but not all; undefined where none do. Every path is walked. */
export function fewestEarly({ follows }: LoopPuzzle): number | undefined {
  let fewest = follows.length;
  const walk = (path: readonly number[]): void => {
    for (const next of path.length < fewest ? (follows[path.at(-1) ?? 0] ?? []) : []) {
      if (next === path[0]) fewest = path.length;
      else if (next > (path[0] ?? 0) && !path.includes(next)) walk([...path, next]);
    }
  };
  for (const card of follows.keys()) walk([card]);
  return fewest < follows.length ? fewest : undefined;
}

/** In how many ways every card has another one's answer after it, tried one by one. */
export function arrangements({ follows }: LoopPuzzle): number {
  const taken = new Set<number>();
  const choose = (card: number): number => {
    if (card === follows.length) return 1;
    let ways = 0;
    for (const next of follows[card] ?? []) {
      if (taken.has(next)) continue;
      taken.add(next);
      ways += choose(card + 1);
      taken.delete(next);
    }
    return ways;
  };
  return choose(0);
}
