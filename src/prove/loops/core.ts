import { strongComponents } from "../items/components";
import { maximumMatching } from "../items/matching";
import type { Circle } from "./loops";

/** What is left of a loop when everything that is forced is laid: stretches of cards, and which may follow which. */
export interface Core {
  readonly stretches: readonly Circle[];
  /** For each stretch the stretches whose first card may follow its last. None names itself. */
  readonly follows: readonly (readonly number[])[];
}

/** Arcs that lie in some arrangement that matches everywhere, and the blocks that no arrangement mixes. */
export interface PossibleArcs {
  readonly follows: readonly (readonly number[])[];
  /** For each card the block that it asks in. */
  readonly block: Int32Array;
}

/**
 * Leaves out the arcs that no arrangement takes in which every card has another card's answer after it; `undefined` where
 * there is none. An arc can be taken iff it lies in a known perfect matching or within a strong component of what
 * exchanges along it lead to (Berge 1957).
 *
 * @param start for each card the card after it in an arrangement that is known.
 */
export function possibleArcs(
  follows: readonly (readonly number[])[],
  start?: readonly number[],
): PossibleArcs | undefined {
  const matching = maximumMatching(follows, follows.length, start);
  if (matching.size < follows.length) return undefined;
  const holders = follows.map((list) => list.map((next) => matching.ofRight[next] ?? -1));
  const block = strongComponents(holders);
  const kept = follows.map((list, card) => list.filter((next) => block[matching.ofRight[next] ?? -1] === block[card]));
  return { follows: kept, block };
}

/**
 * Lays what every full circle has: leaves out arcs that close early or that no perfect matching takes, joins cards of which
 * one has nothing else after it, and so on until nothing changes.
 *
 * @returns `undefined` where no full circle is possible; a single stretch where it closes to the only one.
 */
export function coreOf(follows: readonly (readonly number[])[], intended?: Circle): Core | undefined {
  let stretches: readonly Circle[] = follows.map((_, card) => [card]);
  let arcs = follows;
  const after = new Map(intended?.map((card, i) => [card, intended[(i + 1) % intended.length] ?? -1]));
  for (;;) {
    if (stretches.length === 1) return arcs[0]?.includes(0) ? { stretches, follows: [[]] } : undefined;
    const others = arcs.map((list, i) => list.filter((next) => next !== i));
    const holder = new Map(stretches.map((cards, i) => [cards[0], i]));
    const start = intended && stretches.map((cards) => holder.get(after.get(cards.at(-1) ?? -1)) ?? -1);
    const possible = possibleArcs(others, start);
    if (!possible) return undefined;
    const joined = joinForced(stretches, possible.follows);
    if (!joined) return undefined;
    if (joined.stretches.length === stretches.length) return joined;
    ({ stretches, follows: arcs } = joined);
  }
}

/** The cards of stretches one behind the other. A loop: flattening a list takes several times as long. */
export function cardsAlong(stretches: readonly Circle[], order: readonly number[]): number[] {
  const cards: number[] = [];
  for (const i of order) for (const card of stretches[i] ?? []) cards.push(card);
  return cards;
}

/** Joins along arcs that are the only ones out of a stretch. Arcs back to where a stretch starts are kept. */
function joinForced(stretches: readonly Circle[], follows: readonly (readonly number[])[]): Core | undefined {
  const only = follows.map((list) => (list.length === 1 ? (list[0] ?? -1) : -1));
  const isForced = new Uint8Array(stretches.length);
  for (const next of only) if (next >= 0) isForced[next] = 1;
  const number = new Int32Array(stretches.length).fill(-1);
  const chains: number[][] = [];
  for (let head = 0; head < stretches.length; head++) {
    if (isForced[head]) continue;
    const chain = [head];
    for (let next = only[head] ?? -1; next >= 0; next = only[next] ?? -1) chain.push(next);
    number[head] = chains.length;
    chains.push(chain);
  }
  const placed = chains.reduce((sum, chain) => sum + chain.length, 0);
  if (placed < stretches.length) return placed === 0 ? wholeCircle(stretches, only) : undefined;
  return {
    stretches: chains.map((chain) => cardsAlong(stretches, chain)),
    follows: chains.map((chain) =>
      (follows[chain.at(-1) ?? -1] ?? []).map((next) => number[next] ?? -1).filter((next) => next >= 0),
    ),
  };
}

/** Every arc is forced: one circle, or several smaller ones. */
function wholeCircle(stretches: readonly Circle[], only: readonly number[]): Core | undefined {
  const order: number[] = [];
  let i = 0;
  do {
    order.push(i);
    i = only[i] ?? 0;
  } while (i !== 0);
  return order.length === stretches.length ? { stretches: [cardsAlong(stretches, order)], follows: [[0]] } : undefined;
}
