import type { Proof } from "../proof";

export { countCircles } from "./best";
export { isCircle, sameCircle } from "./circle";
export { LoopSearch, proveLoop } from "./prove-loop";

/** Cards that are laid in a circle: each has a prompt, which the next one answers. */
export interface LoopPuzzle {
  /**
   * For each card the cards that may come next, because their answer answers its prompt. A card that answers itself names
   * itself. Cards with one prompt may share one list, which is then read once.
   */
  readonly follows: readonly (readonly number[])[];
  /**
   * What each card looks like: equal numbers print alike. Cards that do have equal lists and stand in the same lists.
   * Absent: no two print alike.
   */
  readonly look?: readonly number[];
}

/** Card indices in the order in which they lie. Where it starts means nothing. */
export type Circle = readonly number[];

export interface LoopProofOptions {
  /** The circle that the teacher means; a second one is one that does not look like it. */
  readonly intended?: Circle;
  /** Stop after this many circles (default 2; less would settle nothing and counts as 2). `Infinity` counts all. */
  readonly cap?: number;
  /** Search nodes, that is choices tried, to spend (default 200,000). */
  readonly budget?: number;
}

/** Two verdicts, of which neither follows from the other. */
export interface LoopProof {
  /** How many circles there are that take every card. */
  readonly full: Proof<Circle>;
  /**
   * Cards that close a circle while others are left over; absent only where that can never happen. No circle has fewer cards where
   * answers are classes, or lists not long; else none that a single wrong card closes has.
   */
  readonly smaller?: Circle;
  /**
   * Where no full circle is possible because some cards ask for more answers than there are: these cards, and the fewer
   * cards that answer any of them. Where none is possible for another reason, every arrangement that matches everywhere is
   * made of smaller circles.
   */
  readonly shortage?: { readonly asking: readonly number[]; readonly answering: readonly number[] };
}
