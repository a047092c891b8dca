import type { KindName } from "../activities/contract";
import { kinds } from "../activities/kinds";
import type { Verdict } from "../activities/verdict";

/** All that the prover can say of a deal, kind by kind. */
export const verdicts: readonly (Verdict & { readonly make: KindName })[] = kinds.flatMap(({ name, verdicts: own }) =>
  own.map((verdict) => ({ make: name, ...verdict })),
);
