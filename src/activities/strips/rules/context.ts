import type { Press } from "../../contract";
import type { DealtStrips } from "../model";

export interface StripsContext {
  readonly dealt: DealtStrips;
  readonly press: Press;
}
