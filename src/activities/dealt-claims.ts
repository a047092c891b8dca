import type { Rule } from "../base/finding";
import type { Range } from "../base/range";
import type { Pair } from "../unit/unit";
import type { Deal, Dealt, Press } from "./contract";
import type { Level } from "./options";
import type { Claim, Twins } from "./statements";
import type { Told } from "./truth-proof";

/** A pair that is shown as right or wrong beside statements: what its words say together. */
export interface ShownPair extends Told {
  readonly text: string;
  readonly source: Range;
  readonly item: Pair;
}

/** What was dealt, with its statements: none where it deals something else. */
export interface DealtClaims extends Dealt<Deal> {
  readonly options: {
    readonly twins: Twins;
    readonly take?: number;
    readonly seed: number;
    readonly reserve?: number;
    readonly levels?: readonly Level[];
  };
  /** Those of all deals. */
  readonly claims: readonly Claim[];
  /** Those of each deal. */
  readonly hands: readonly (readonly Claim[])[];
  /** Pairs beside them, those of all deals. */
  readonly shown?: readonly ShownPair[];
  /** Those of each deal, as `hands` are. */
  readonly shownIn?: readonly (readonly ShownPair[])[];
  /** Further ones, kept for a tie. */
  readonly reserve?: readonly Claim[];
  /** They are said aloud: who listens hears neither capitals nor commas. */
  readonly aloud?: true;
  /** Twins stand in place of their true statements. */
  readonly replace?: boolean;
  /** Twins that were asked for and could not be made. */
  readonly missingTwins: number;
}

export interface ClaimContext {
  readonly dealt: DealtClaims;
  readonly press: Press;
}

export function hasClaims(dealt: Dealt<Deal>): dealt is DealtClaims {
  return "claims" in dealt && "hands" in dealt && "missingTwins" in dealt;
}

/** What a kind adds to a rule about statements that kinds have in common: its own code and example. */
export type Facts = Pick<Rule<never>, "code" | "example">;
