import type { Rule } from "../../../base/finding";
import type { TilesContext } from "./context";
import { answeringDecoy, tooFewDecoys } from "./decoys";
import { tooFewPairs, unusedPairs } from "./pairs";
import { ambiguousEdge, noSolution, severalSolutions, unsettledProof } from "./proof";
import { textTooSmall } from "./text";

export const rules: readonly Rule<TilesContext>[] = [
  tooFewPairs,
  unusedPairs,
  ambiguousEdge,
  severalSolutions,
  noSolution,
  unsettledProof,
  tooFewDecoys,
  answeringDecoy,
  textTooSmall,
];
