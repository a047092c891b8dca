import { dealBoard } from "../deal";
import type { DealtBoard } from "../model";
import type { BoardOptions } from "../options";

/** Whether the same words with other options make a board on which each clue fits one word. */
export function dealsWith({ request, options }: DealtBoard, change: Partial<BoardOptions>): boolean {
  const value = { ...options, ...change };
  const { deals, doubles } = dealBoard({ ...request, options: { ...request.options, value } });
  return deals.length > 0 && doubles.length === 0;
}
