/** What is known about the number of solutions. Counts are of visible solutions: exchanging pieces that print alike is none. */
export interface Proof<Solution> {
  /** `one` only when proven; `none` only when all was searched; `unsettled` when the budget ran out with fewer than two found. */
  readonly status: "one" | "several" | "none" | "unsettled";
  /** Solutions found, up to the cap. Exact for `one`, `none`, and `several` that is not capped. */
  readonly count: number;
  /** With `several`: the count stopped at the cap or the budget, so there may be more. */
  readonly capped: boolean;
  /** Search nodes spent: the same on every machine. */
  readonly nodes: number;
  /** What settled it. */
  readonly by: "certificate" | "witness" | "search";
  /** Several, and all of them right: the key tells them, as with events in any order. */
  readonly accepted?: true;
  /** A solution other than the intended one, where one was found. */
  readonly second?: Solution;
}

/** A number of solutions as a proof holds it: as far as a number is exact, else capped there. */
export function heldCount(count: bigint): Pick<Proof<never>, "count" | "capped"> {
  const most = BigInt(Number.MAX_SAFE_INTEGER);
  return count > most ? { count: Number(most), capped: true } : { count: Number(count), capped: false };
}
