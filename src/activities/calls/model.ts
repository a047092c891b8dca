import type { Deal, Dealt } from "../contract";
import type { Level } from "../options";
import type { Claim } from "../statements";
import type { CallsOptions } from "./options";

/** The list of one level for one class hour; its version is the hour, from 1. */
export interface CallsDeal extends Deal {
  readonly level: Level;
  /** Indices of claims, those in reserve counted behind the others, in the order in which they are called. */
  readonly order: readonly number[];
  /** The same for ties. */
  readonly reserve: readonly number[];
}

export interface DealtCalls extends Dealt<CallsDeal> {
  readonly options: CallsOptions;
  /** Those that some list calls, in the order of the unit. */
  readonly claims: readonly Claim[];
  /** Those that are kept for ties: no list calls them. */
  readonly reserve: readonly Claim[];
  /** What each list calls, in the order of the deals. */
  readonly hands: readonly (readonly Claim[])[];
  readonly aloud: true;
  /** Heard in one list, a true statement and its twin give each other away. */
  readonly replace: true;
  /** Twins that were asked for and could not be made. */
  readonly missingTwins: number;
}

/** The claims of a list, or those that it keeps for ties, in the order in which they are called. */
export function calledIn({ claims, reserve }: DealtCalls, numbers: readonly number[]): Claim[] {
  const all = [...claims, ...reserve];
  return numbers.flatMap((number) => all[number] ?? []);
}
