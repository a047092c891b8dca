import { factorial } from "../../../src/prove/loops/best";
import { classesOf, visitsOf } from "../../../src/prove/loops/classes";
import { possibleArcs } from "../../../src/prove/loops/core";
import type { LoopPuzzle } from "../../../src/prove/loops/loops";

/** 18! is the last factorial below 2^53: up to here sums of doubles are exact. */
const largestBlock = 18;

/**
 * In how many ways every card can have a card after it that answers it, all cards told apart, whether that makes one circle
 * or several: ∏ n_v! where the relation is by classes, else a permanent, over subsets, block by block. `undefined` where a
 * block has more than 18 cards.
 */
export function countArrangements(puzzle: LoopPuzzle): bigint | undefined {
  const follows = puzzle.follows.map((list) => [...new Set(list)]);
  const classes = classesOf(follows);
  if (classes) {
    const visits = visitsOf(classes);
    return visits ? [...visits].reduce((product, n) => product * factorial(n), 1n) : 0n;
  }
  const possible = possibleArcs(follows);
  if (!possible) return 0n;
  const blocks = new Map<number, (readonly number[])[]>();
  possible.follows.forEach((list, card) => {
    const block = possible.block[card] ?? -1;
    const lists = blocks.get(block);
    if (lists) lists.push(list);
    else blocks.set(block, [list]);
  });
  let product = 1n;
  for (const lists of blocks.values()) {
    if (lists.length > largestBlock) return undefined;
    product *= BigInt(permanent(lists));
  }
  return product;
}

/** For each set of answers that the first cards can have taken, in how many ways. */
function permanent(lists: readonly (readonly number[])[]): number {
  const bits = new Map<number, number>();
  for (const next of lists.flat()) if (!bits.has(next)) bits.set(next, 1 << bits.size);
  let ways = new Map([[0, 1]]);
  for (const list of lists) {
    const grown = new Map<number, number>();
    for (const [taken, count] of ways)
      for (const next of list) {
        const bit = bits.get(next) ?? 0;
        if ((taken & bit) === 0) grown.set(taken | bit, (grown.get(taken | bit) ?? 0) + count);
      }
    ways = grown;
  }
  return ways.get((1 << bits.size) - 1) ?? 0;
}
