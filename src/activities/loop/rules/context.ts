import type { RuleContext } from "../../contract";
import type { DealtLoop } from "../model";

export type LoopContext = RuleContext<DealtLoop>;
