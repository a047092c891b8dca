import type { RuleContext } from "../../contract";
import type { DealtStrips } from "../model";

export type StripsContext = RuleContext<DealtStrips>;
