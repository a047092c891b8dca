import { factorial } from "../loops/best";
import type { Order } from "./orders";

/** A sentence cut into parts. */
export interface Sentence {
  /** What stands on each card. */
  readonly parts: readonly string[];
  /** Orders of all parts that are right; the first is the one on the key. */
  readonly accepted: readonly Order[];
}

/** How many rows of the same cards read differently: n! / ∏ c!, with c cards of each text. */
export function countStrings(parts: readonly string[]): bigint {
  let count = factorial(parts.length);
  for (const times of tally(parts).values()) count /= factorial(times);
  return count;
}

/** Accepted orders that read like an earlier one. */
export function addsNothing(sentence: Sentence): { readonly order: number; readonly like: number }[] {
  const known = new Map<string, number>();
  return sentence.accepted.flatMap((order, i) => {
    const reading = rowOf(sentence.parts, order);
    const like = known.get(reading);
    if (like !== undefined) return [{ order: i, like }];
    known.set(reading, i);
    return [];
  });
}

/** How a row of cards reads: equal for rows with the same texts. */
export function rowOf(parts: readonly string[], order: Order): string {
  return JSON.stringify(order.map((part) => parts[part]));
}

/** Sentences that can be laid with another one's cards, all of them or some. */
export function buildable(
  sentences: readonly Sentence[],
): { readonly sentence: number; readonly from: number; readonly leftOver: number }[] {
  const tallies = sentences.map(({ parts }) => tally(parts));
  const having = new Map<string, number[]>();
  tallies.forEach((cards, sentence) => {
    for (const text of cards.keys()) {
      const known = having.get(text);
      if (known) known.push(sentence);
      else having.set(text, [sentence]);
    }
  });
  return sentences.flatMap(({ parts }, sentence) => {
    const wanted = [...(tallies[sentence] ?? [])];
    // Only those that have its rarest card can have all of them.
    const [rarest] = wanted.map(([text]) => having.get(text) ?? []).sort((a, b) => a.length - b.length);
    return (rarest ?? sentences.map((_, i) => i)).flatMap((from) => {
      const enough = wanted.every(([text, times]) => (tallies[from]?.get(text) ?? 0) >= times);
      if (from === sentence || !enough) return [];
      return [{ sentence, from, leftOver: (sentences[from]?.parts.length ?? 0) - parts.length }];
    });
  });
}

/**
 * With the cards of several sentences in one heap: another choice of these sentences, some laid more often and some not at
 * all, that takes every card too. For each sentence how often it is laid, where sentences that read the same are all put
 * down to the first of them. `undefined` where there is no other choice, `"unsettled"` where the budget ran out.
 */
export function otherSentences(sentences: readonly Sentence[], budget = 200_000): number[] | "unsettled" | undefined {
  const tallies = sentences.map(({ parts }) => tally(parts));
  const heap = tally(sentences.flatMap(({ parts }) => parts));
  const wanted = timesMeant(sentences);
  const laid = sentences.map(() => 0);
  let nodes = 0;
  const lay = (sentence: number, times: number) => {
    laid[sentence] = (laid[sentence] ?? 0) + times;
    for (const [text, count] of tallies[sentence] ?? []) heap.set(text, (heap.get(text) ?? 0) - times * count);
  };
  const most = (sentence: number): number => {
    const cards = [...(tallies[sentence] ?? [])];
    if (cards.length === 0 || wanted[sentence] === 0) return 0;
    return Math.min(...cards.map(([text, count]) => Math.floor((heap.get(text) ?? 0) / count)));
  };
  /** Settles how often each sentence from here on is laid. True when another way was found or the budget ran out. */
  const settle = (sentence: number): boolean => {
    if (++nodes > budget) return true;
    if (sentence === sentences.length)
      return [...heap.values()].every((left) => left === 0) && laid.some((times, i) => times !== wanted[i]);
    for (let times = most(sentence); times >= 0; times--) {
      lay(sentence, times);
      if (settle(sentence + 1)) return true;
      lay(sentence, -times);
    }
    return false;
  };
  if (!settle(0)) return undefined;
  return nodes > budget ? "unsettled" : laid;
}

/** How often each sentence is meant to be laid: as often as one that reads the same is there, for the first of those. */
function timesMeant(sentences: readonly Sentence[]): number[] {
  const first = new Map<string, number>();
  const times = sentences.map(() => 0);
  sentences.forEach(({ parts, accepted }, i) => {
    if (parts.length === 0) return;
    const readings = new Set(accepted.map((order) => rowOf(parts, order)));
    const key = readings.size > 0 ? [...readings].sort().join("\n") : `${i}`;
    const known = first.get(key) ?? i;
    first.set(key, known);
    times[known] = (times[known] ?? 0) + 1;
  });
  return times;
}

/** How many of each text. */
export function tally(texts: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
}
