import type { Steps } from "../base/steps";
import type { ActivityKind, Deal, DealRequest, Dealt } from "./contract";

/* What becomes of a changed request, asked before a fix is offered. */

/** Whether it can be dealt. */
export function stillDeals({ trial, deal }: ActivityKind, request: DealRequest): boolean {
  return trial ? trial.deals(request) : deal(request).deals.length > 0;
}

/** Whether it can be dealt, and is no worse than now. */
export function staysAsGood(kind: ActivityKind, now: Dealt<Deal>, request: DealRequest): boolean {
  if (kind.trial) return stillDeals(kind, request);
  const after = kind.deal(request);
  return after.deals.length > 0 && isNoWorse(kind, now, after);
}

/** Whether no more items fit two ways than now, and levels differ where they do now. */
export function isNoWorse({ faults }: ActivityKind, now: Dealt<Deal>, after: Dealt<Deal>): boolean {
  if (after.sameLevels !== undefined && now.sameLevels === undefined) return false;
  if (after.upsetLevels !== undefined && now.upsetLevels === undefined) return false;
  return !faults || faults(after) <= faults(now);
}

/** In steps: whether it can be dealt and each deal is soon proven to be as it is meant; with what is dealt now, also that it is no worse. */
export function* holding(kind: ActivityKind, request: DealRequest, now?: Dealt<Deal>): Steps<boolean, unknown> {
  if (kind.trial) return yield* kind.trial.holding(request, now);
  const after = kind.dealing ? yield* kind.dealing(request) : kind.deal(request);
  return after.deals.length > 0 && after.deals.every(isMeant) && (!now || isNoWorse(kind, now, after));
}

/** Whether a deal is proven to have no solution but those that are meant. */
export function isMeant({ proof }: Pick<Deal, "proof">): boolean {
  return proof.status === "one" || proof.accepted === true;
}
