import type { Press } from "../../contract";
import type { DealtLoop } from "../model";

export interface LoopContext {
  readonly dealt: DealtLoop;
  readonly press: Press;
}
