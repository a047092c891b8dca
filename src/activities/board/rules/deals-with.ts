import { dealBoard } from "../deal";
import type { DealtBoard } from "../model";
import type { BoardOptions } from "../options";

/** Whether the same words with other options make a board on which each clue fits one word. */
export function dealsWith(dealt: DealtBoard, change: Partial<BoardOptions>): boolean {
  const known = answers.get(dealt) ?? new Map<string, boolean>();
  answers.set(dealt, known);
  const question = JSON.stringify(change);
  const answer = known.get(question) ?? dealsAnew(dealt, change);
  known.set(question, answer);
  return answer;
}

/** What was asked of a board: its findings ask the same. */
const answers = new WeakMap<DealtBoard, Map<string, boolean>>();

function dealsAnew({ request, options }: DealtBoard, change: Partial<BoardOptions>): boolean {
  const value = { ...options, ...change };
  const { deals, doubles } = dealBoard({ ...request, options: { ...request.options, value } });
  return deals.length > 0 && doubles.length === 0;
}
