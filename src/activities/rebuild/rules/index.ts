import type { Rule } from "../../../base/finding";
import type { RebuildContext } from "./context";
import { barsNeeded, onePartSentence } from "./cuts";
import { anyOrder, idleOrder, sameCards } from "./orders";
import { noSentencesHere } from "./tables";
import { cardTooSmall } from "./text";

export const rules: readonly Rule<RebuildContext>[] = [
  noSentencesHere,
  onePartSentence,
  barsNeeded,
  anyOrder,
  idleOrder,
  sameCards,
  cardTooSmall,
];
