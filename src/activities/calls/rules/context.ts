import type { RuleContext } from "../../contract";
import type { DealtCalls } from "../model";

export type CallsContext = RuleContext<DealtCalls>;
