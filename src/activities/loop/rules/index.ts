import type { Rule } from "../../../base/finding";
import { earlyClose, type LoopContext, secondCircle, tooFewCards } from "./circles";
import { allCardsTooSmall, tooFewLoopDecoys } from "./decoys";

export const rules: readonly Rule<LoopContext>[] = [
  tooFewCards,
  secondCircle,
  earlyClose,
  tooFewLoopDecoys,
  allCardsTooSmall,
];
