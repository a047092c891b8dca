import type { Rule } from "../../../base/finding";
import type { RebuildContext } from "./context";
import { barsNeeded, noSentences, onePartSentence } from "./cuts";
import { anyOrder, idleOrder, sameCards } from "./orders";
import { cardTooSmall } from "./text";

export const rules: readonly Rule<RebuildContext>[] = [
  noSentences,
  onePartSentence,
  barsNeeded,
  anyOrder,
  idleOrder,
  sameCards,
  cardTooSmall,
];
