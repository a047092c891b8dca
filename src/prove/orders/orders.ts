export { countOrders, OrderCount } from "./count-orders";
export { longestAscending } from "./credit";
export { dealtOrder } from "./dealt-order";
export { acceptsOrder, proveOrder } from "./prove-order";
export { addsNothing, buildable, countStrings, otherSentences, rowOf, type Sentence, tally } from "./sentences";
export { storyOf } from "./story";

/** Strips to be put in order. */
export interface OrderPuzzle {
  /** What stands on each strip: equal texts print alike, so that exchanging them makes no other order. */
  readonly texts: readonly string[];
  /** Pairs of strips of which the first comes somewhere before the second. */
  readonly before: readonly (readonly [number, number])[];
  /**
   * Where all that comes before follows from steps, each of which comes before the next one: their strips, each once; no step is
   * empty.
   */
  readonly steps?: readonly (readonly number[])[];
}

/** Strip indices, first to last. */
export type Order = readonly number[];
