import { addsNothing, type Sentence as Puzzle } from "../../prove/orders/orders";
import { heldCount, type Proof } from "../../prove/proof";
import { partKey } from "../../unit/items";
import type { PartOrder, Rebuilt, Sentence, SentenceCard } from "./model";

/** A sentence of a level as the prover sees it. */
export function asPuzzle({ orders }: Sentence, cards: readonly SentenceCard[]): Puzzle {
  return { parts: cards.map(({ text }) => text), accepted: orders };
}

/** A sentence by its words alone, whatever its level shows: without case and marks at their edges. */
export function asWords({ parts, orders }: Sentence): Puzzle {
  return { parts: parts.map(({ text }) => partKey(text) || text), accepted: orders };
}

/** Accepted orders that differ to the eye, the written one first. */
export function visibleOrders(sentence: Sentence, cards: readonly SentenceCard[]): PartOrder[] {
  const alike = new Set(addsNothing(asPuzzle(sentence, cards)).map(({ order }) => order));
  return sentence.orders.filter((_, i) => !alike.has(i));
}

/** What the cards of a sentence say in an order; equal cards are the same. */
export function readOrder(cards: readonly SentenceCard[], order: PartOrder): string {
  return JSON.stringify(order.map((part) => cards[part]?.text));
}

/** In how many ways all sentences together can be laid rightly: the accepted orders of each, multiplied. */
export function proveRebuild(
  sentences: readonly Sentence[],
  cards: readonly (readonly SentenceCard[])[],
): Proof<Rebuilt> {
  const visible = sentences.map((sentence, i) => visibleOrders(sentence, cards[i] ?? []));
  const count = visible.reduce((product, { length }) => product * BigInt(length), 1n);
  const free = visible.findIndex(({ length }) => length > 1);
  const second = visible.map((orders, i): PartOrder => (i === free ? orders[1] : orders[0]) ?? []);
  return {
    status: count === 1n ? "one" : "several",
    ...heldCount(count),
    nodes: 0,
    by: "certificate",
    ...(free < 0 ? {} : { accepted: true as const, second }),
  };
}
