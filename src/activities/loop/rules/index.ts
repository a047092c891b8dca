import type { Rule } from "../../../base/finding";
import { earlyClose, type LoopContext, secondCircle, tooFewCards } from "./circles";
import { tooFewLoopDecoys } from "./decoys";
import { cardsTooSmall } from "./text";

export const rules: readonly Rule<LoopContext>[] = [
  tooFewCards,
  secondCircle,
  earlyClose,
  tooFewLoopDecoys,
  cardsTooSmall,
];
