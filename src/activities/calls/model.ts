import type { Deal, Dealt } from "../contract";
import type { Claim } from "../statements";
import type { CallsOptions } from "./options";

/** The list for one class hour; its version is the hour, from 1. */
export interface CallsDeal extends Deal {
  /** Indices of claims in the order in which they are called. */
  readonly order: readonly number[];
  /** Indices of reserved claims in the order in which they are called. */
  readonly reserve: readonly number[];
}

export interface DealtCalls extends Dealt<CallsDeal> {
  readonly options: CallsOptions;
  /** In the order of the unit. */
  readonly claims: readonly Claim[];
  readonly reserve: readonly Claim[];
  /** Twins that were asked for and could not be made. */
  readonly missingTwins: number;
}
