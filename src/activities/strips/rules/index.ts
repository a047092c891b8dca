import type { Rule } from "../../../base/finding";
import type { StripsContext } from "./context";
import { anyOrder, repeatedEvent, tooFewEvents } from "./events";
import { stripTooSmall } from "./text";

export const rules: readonly Rule<StripsContext>[] = [tooFewEvents, anyOrder, repeatedEvent, stripTooSmall];
