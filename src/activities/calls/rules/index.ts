import type { Rule } from "../../../base/finding";
import type { CallsContext } from "./context";
import { shortReserve } from "./short-reserve";
import { tooFewCallsTwins } from "./too-few-calls-twins";
import { tooFewStatements } from "./too-few-statements";
import { unbalancedCalls } from "./unbalanced-calls";

export const rules: readonly Rule<CallsContext>[] = [tooFewStatements, unbalancedCalls, tooFewCallsTwins, shortReserve];
