import type { Rule } from "../../../base/finding";
import { ambiguousEdge } from "./ambiguous-edge";
import { answeringDecoy } from "./answering-decoy";
import type { TilesContext } from "./context";
import { noSolution } from "./no-solution";
import { severalSolutions } from "./several-solutions";
import { textTooSmall } from "./text-too-small";
import { tooFewDecoys } from "./too-few-decoys";
import { tooFewPairs } from "./too-few-pairs";
import { unsettledProof } from "./unsettled-proof";
import { unusedPairs } from "./unused-pairs";

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
