/** What is known about the number of solutions. Counts are of visible solutions: exchanging pieces that print alike is none. */
export interface Proof<Solution> {
  /** `one` only when proven; `unsettled` when the budget ran out with fewer than two found. */
  readonly status: "one" | "several" | "none" | "unsettled";
  /** Solutions found, up to the cap. */
  readonly count: number;
  /** The count stopped at the cap: there may be more. */
  readonly capped: boolean;
  /** Search nodes spent: the same on every machine. */
  readonly nodes: number;
  /** What settled it. */
  readonly by: "certificate" | "witness" | "search";
  /** A solution other than the intended one, where one was found. */
  readonly second?: Solution;
}
