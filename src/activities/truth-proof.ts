import type { Range } from "../base/range";
import { plain, type Run } from "../base/run";
import { fold } from "../match/fold";
import type { Proof } from "../prove/proof";

/** A text that is true or false, and what is right instead. */
export interface Told {
  /** Equal for texts that are the same to a learner. */
  readonly key: string;
  readonly truth: boolean;
  readonly correction?: { readonly runs: readonly Run[]; readonly text?: string; readonly source?: Range };
}

/** What is so by one of them, as a key: itself where it is true, else its correction. */
export function asserted({ key, truth, correction }: Told): string | undefined {
  return truth ? key : correction && fold(correction.text ?? plain(correction.runs));
}

/**
 * One answer for each text, unless what one of them says is so, itself or in its correction, another says is false. A correction
 * that says what its own statement says corrects nothing: it is a slip of the key, and says nothing of other texts.
 */
export function proveTruth(told: readonly Told[]): Proof<never> {
  const so = new Set(
    told.flatMap((each) => {
      const right = asserted(each);
      return right === undefined || (!each.truth && right === each.key) ? [] : [right];
    }),
  );
  const clash = told.some(({ key, truth }) => !truth && so.has(key));
  return { status: clash ? "none" : "one", count: clash ? 0 : 1, capped: false, nodes: 0, by: "certificate" };
}
