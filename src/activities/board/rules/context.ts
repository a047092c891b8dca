import type { RuleContext } from "../../contract";
import type { DealtBoard } from "../model";

export type BoardContext = RuleContext<DealtBoard>;
