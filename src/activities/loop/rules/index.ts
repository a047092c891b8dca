import type { Rule } from "../../../base/finding";
import type { LoopContext } from "./context";
import { earlyClose } from "./early-close";
import { loopFewDecoys } from "./loop-few-decoys";
import { loopTooFew } from "./loop-too-few";
import { loopTooSmall } from "./loop-too-small";
import { secondCircle } from "./second-circle";
import { sharedCircles } from "./shared-circles";

export const rules: readonly Rule<LoopContext>[] = [
  loopTooFew,
  secondCircle,
  earlyClose,
  loopFewDecoys,
  sharedCircles,
  loopTooSmall,
];
