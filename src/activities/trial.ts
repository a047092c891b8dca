import type { Steps } from "../base/steps";
import type { ActivityKind, Deal, DealRequest, Dealt } from "./contract";

/* What becomes of a changed request, asked before a fix is offered. */

/** Whether it can be dealt. */
export function stillDeals({ trial, deal }: ActivityKind, request: DealRequest): boolean {
  return trial ? trial.deals(request) : deal(request).deals.length > 0;
}

/** Whether it can be dealt, with no more items that fit two ways than it has now. */
export function staysAsGood(kind: ActivityKind, now: Dealt<Deal>, request: DealRequest): boolean {
  if (!kind.faults) return stillDeals(kind, request);
  const after = kind.deal(request);
  return after.deals.length > 0 && kind.faults(after) <= kind.faults(now);
}

/** In steps: whether it can be dealt and each deal is soon proven to be as it is meant. */
export function* holding({ trial, deal, dealing }: ActivityKind, request: DealRequest): Steps<boolean, unknown> {
  if (trial) return yield* trial.holding(request);
  const { deals } = dealing ? yield* dealing(request) : deal(request);
  return deals.length > 0 && deals.every(isMeant);
}

/** Whether a deal is proven to have no solution but those that are meant. */
export function isMeant({ proof }: Pick<Deal, "proof">): boolean {
  return proof.status === "one" || proof.accepted === true;
}
