import { Random, upTo } from "../../base/seed";
import { answerKey, type Relation } from "../../match/relation";
import type { Pair } from "../../unit/unit";

/** Choices drawn for one without pairs that clash. */
const attempts = 20;

/** Whether the prompt of one pair is answered by the other's answer: their cards could follow each other. */
export function clash(p: Pair, q: Pair, relation: Relation): boolean {
  const fits = (a: Pair, b: Pair): boolean =>
    relation.fits(answerKey(a.left.answers[0]), answerKey(b.right.answers[0]));
  return fits(p, q) || fits(q, p);
}

/**
 * Chooses `wanted` pairs by the seed, spread over their sections, passing over pairs that clash with one already taken as long
 * as others are left; pairs that fewer versions used before come first. Returns them in the order of the unit.
 */
export function choosePairs(
  groups: readonly (readonly Pair[])[],
  wanted: number,
  relation: Relation,
  stream: string,
  uses: ReadonlyMap<Pair, number>,
): readonly Pair[] {
  const all = groups.flat();
  if (wanted >= all.length) return all;
  let best: ReadonlySet<Pair> = new Set();
  for (let attempt = 0; attempt < attempts && best.size < wanted; attempt++) {
    const order = spread(groups, new Random(`${stream}/${attempt}`), uses);
    const taken = new Set<Pair>();
    for (const pair of order) {
      if (taken.size < wanted && ![...taken].some((other) => clash(pair, other, relation))) taken.add(pair);
    }
    if (taken.size > best.size) best = taken;
  }
  const filled = new Set(best);
  for (const pair of spread(groups, new Random(`${stream}/0`), uses)) if (filled.size < wanted) filled.add(pair);
  return all.filter((pair) => filled.has(pair));
}

/** All pairs, one of each section in turn. */
function spread(groups: readonly (readonly Pair[])[], random: Random, uses: ReadonlyMap<Pair, number>): Pair[] {
  const used = (pair: Pair): number => uses.get(pair) ?? 0;
  const queues = random.shuffle(groups.map((group) => random.shuffle(group).sort((a, b) => used(a) - used(b))));
  const longest = Math.max(0, ...queues.map((queue) => queue.length));
  return upTo(longest).flatMap((round) => queues.flatMap((queue) => queue[round] ?? []));
}
