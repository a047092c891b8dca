import type { Press } from "../../contract";
import type { DealtCalls } from "../model";

export interface CallsContext {
  readonly dealt: DealtCalls;
  readonly press: Press;
}
