import type { Press } from "../../contract";
import type { DealtBoard } from "../model";

export interface BoardContext {
  readonly dealt: DealtBoard;
  readonly press: Press;
}
