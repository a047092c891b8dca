import { upTo } from "../../base/seed";
import { acceptsOrder, countOrders, type OrderPuzzle, proveOrder, storyOf } from "../../prove/orders/orders";
import { heldCount, type Proof } from "../../prove/proof";
import type { StoryOrder, StripEvent } from "./model";

/** The story as the prover sees it: events of one rank are free among themselves, equal texts are exchangeable. */
function puzzleOf(events: readonly StripEvent[]): OrderPuzzle {
  const steps = new Map<number, number[]>();
  for (const [i, { rank }] of events.entries()) {
    const known = steps.get(rank);
    if (known) known.push(i);
    else steps.set(rank, [i]);
  }
  return storyOf(
    [...steps.values()],
    events.map(({ key }) => key),
  );
}

/** Whether events in this order tell the story. */
export function tellsStory(events: readonly StripEvent[], order: StoryOrder): boolean {
  return acceptsOrder(puzzleOf(events), order);
}

/** How many orders that differ to the eye tell the story, as far as a number holds it exactly; and a second one. */
export function proveStory(events: readonly StripEvent[]): Proof<StoryOrder> {
  const puzzle = puzzleOf(events);
  const proof = proveOrder(puzzle, upTo(events.length));
  if (proof.status !== "several") return proof;
  const count = countOrders(puzzle);
  return { ...proof, ...(count === undefined ? {} : heldCount(count)), accepted: true };
}
