import type { Rule } from "../../../base/finding";
import type { StripsContext } from "./context";
import { repeatedInDeal } from "./deals";
import { anyOrder, tooFewEvents } from "./events";
import { stripTooSmall } from "./text";

export const rules: readonly Rule<StripsContext>[] = [tooFewEvents, anyOrder, repeatedInDeal, stripTooSmall];
