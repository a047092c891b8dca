import type { Steps } from "../../base/steps";
import type { Difficulty, TileProof } from "../../prove/tiles";
import type { Frame } from "./frame";

/*
 * Which of a seed's arrangements a deal takes, and how much work that may be: counted in search nodes, so that it is the same
 * on every machine. The limits are ours: of arrangements that could be settled none was seen to need 4,000 nodes, and where
 * one used up 20,000 the further ones of its seed did so too.
 */

/** Nodes for one arrangement, and the nodes after which no further one is tried. */
export interface Patience {
  readonly each: number;
  readonly all: number;
}

/** Arrangements tried at the most. */
export const mostAttempts = 40;

/** For each of an activity's deals: many versions share what a few may spend. */
export function patienceFor(deals: number): Patience {
  const nodes = Math.min(20_000, Math.max(4000, Math.floor(80_000 / deals)));
  return { each: nodes, all: nodes };
}

/**
 * For a look whether other options would do. It is no more than any deal has, and the first arrangement that is not settled
 * within it ends it: what is proven here is what the same options are dealt and proven with.
 */
export const glance: Patience = { each: 4000, all: 4000 };

/** What arranging and looking for an easy second solution costs, as nodes: every two tiles are looked at. */
export function attemptCost({ rows, columns }: Frame): number {
  return Math.ceil((rows * columns) ** 2 / 32);
}

/** Arrangements among which a level looks for the least or the greatest difficulty; and where that leaves hard easier than gentle. */
export const compared = 8;
export const comparedAgain = 24;

/**
 * In steps that say which arrangement is looked at, and how far: the first arrangement that is proven to have one solution; the very first where patience ends before. With `wanted`, of
 * the proven ones among the first `among` the first with the least or the greatest difficulty.
 */
export function* takeAttempt<Arrangement extends Tried>(
  arrange: (attempt: number, budget: number) => Steps<Arrangement, number>,
  { each, all }: Patience,
  cost: number,
  wanted?: "least" | "greatest",
  among = compared,
): Steps<Arrangement> {
  const watched = function* (attempt: number): Steps<Arrangement> {
    const steps = arrange(attempt, each);
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield `arrangement ${attempt + 1}, ${step.value} steps`;
    return step.value;
  };
  let first: Arrangement | undefined;
  let best: Arrangement | undefined;
  let spent = 0;
  for (let attempt = 0; attempt < mostAttempts && (spent < all || !first); attempt++) {
    if (best && attempt >= among) break;
    const next = yield* watched(attempt);
    first ??= next;
    spent += cost + next.proof.nodes + (next.difficulty?.nodes ?? 0);
    if (next.proof.status !== "one") continue;
    if (!wanted) return next;
    const gain = detourOf(next) - (best ? detourOf(best) : 0);
    if (!best || (wanted === "greatest" ? gain > 0 : gain < 0)) best = next;
  }
  return best ?? first ?? (yield* watched(0));
}

interface Tried {
  readonly proof: Pick<TileProof, "status" | "nodes">;
  readonly difficulty?: Pick<Difficulty, "detour" | "nodes">;
}

function detourOf({ difficulty }: Tried): number {
  return difficulty?.detour ?? 0;
}
