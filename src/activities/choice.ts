import { Random } from "../base/seed";
import type { Pair } from "../unit/unit";
import { spread, type Uses } from "./supply";

/** Choices drawn for one without pairs that clash. */
const attempts = 20;

/** How pairs are chosen: which of them clash, how often earlier deals used each, and the seed's stream. */
export interface Choice {
  readonly clash: (p: Pair, q: Pair) => boolean;
  readonly uses?: Uses<Pair>;
  readonly stream: string;
}

/**
 * Chooses `wanted` pairs by the seed, spread over their sections, passing over pairs that clash with one already taken as long
 * as others are left; pairs that fewer deals used before come first. Returns them in the order of the unit, and all of them
 * where no more are wanted than there are.
 */
export function choosePairs(groups: readonly (readonly Pair[])[], wanted: number, choice: Choice): readonly Pair[] {
  const all = groups.flat();
  if (wanted >= all.length) return all;
  const inTurn = (attempt: number): Pair[] => spread(groups, new Random(`${choice.stream}/${attempt}`), choice.uses);
  let best: ReadonlySet<Pair> = new Set();
  for (let attempt = 0; attempt < attempts && best.size < wanted; attempt++) {
    const taken = new Set<Pair>();
    for (const pair of inTurn(attempt)) {
      if (taken.size < wanted && ![...taken].some((other) => choice.clash(pair, other))) taken.add(pair);
    }
    if (taken.size > best.size) best = taken;
  }
  const filled = new Set(best);
  for (const pair of inTurn(0)) if (filled.size < wanted) filled.add(pair);
  return all.filter((pair) => filled.has(pair));
}
