import type { Deal, Dealt } from "../../activities/contract";
import { hasClaims, type ShownPair } from "../../activities/dealt-claims";
import type { Claim } from "../../activities/statements";
import { asserted } from "../../activities/truth-proof";
import { fold } from "../../match/fold";
import type { CheckContext } from "../context";

/** The written statements of one activity. */
export interface WrittenClaims {
  readonly claims: readonly Claim[];
  /** Pairs that are shown as right or wrong beside them. */
  readonly shown: readonly ShownPair[];
  /** The activity's own index, alone. */
  readonly activities: readonly number[];
}

/** The written statements of each activity that deals them; twins are made so that they are in nobody's way. */
export function writtenClaims({ activities }: CheckContext): WrittenClaims[] {
  return activities.flatMap(({ plan, dealt }) => {
    const written = writtenIn(dealt);
    return written ? [{ ...written, activities: [plan.index] }] : [];
  });
}

/** Those of what was dealt; undefined where that has no statements. */
function writtenIn(dealt: Dealt<Deal>): Pick<WrittenClaims, "claims" | "shown"> | undefined {
  if (!hasClaims(dealt)) return undefined;
  const claims = [...dealt.claims, ...(dealt.reserve ?? [])].filter(({ twin }) => twin === undefined);
  return { claims, shown: dealt.shown ?? [] };
}

/** False ones of which another one says, itself or in its correction, that they are so. */
export function contradicted({ claims, shown }: Pick<WrittenClaims, "claims" | "shown">): {
  readonly claim: Claim | ShownPair;
  readonly against: Claim | ShownPair;
}[] {
  const all = [...claims, ...shown];
  return all.flatMap((claim) => {
    // A false statement whose correction says the same as itself is the matter of `same-correction`.
    const against = all.find(
      (other) =>
        !claim.truth &&
        other.item !== claim.item &&
        (other.truth || other.key !== claim.key) &&
        asserted(other) === claim.key,
    );
    return against ? [{ claim, against }] : [];
  });
}

/** Statements that say the same as an earlier one. */
export function repeated(claims: readonly Claim[]): { readonly claim: Claim; readonly first: Claim }[] {
  return claims.flatMap((claim, i) => {
    const first = claims.slice(0, i).find(({ key, truth }) => key === claim.key && truth === claim.truth);
    return first ? [{ claim, first }] : [];
  });
}

/** Statements whose correction says the same as they do. */
export function uncorrected(claims: readonly Claim[]): Claim[] {
  return claims.filter(({ correction, key }) => correction !== undefined && fold(correction.text) === key);
}

/** How much is wrong with the statements of what was dealt, by the code of the finding. */
export function claimTroubles(dealt: Dealt<Deal>): ReadonlyMap<string, number> {
  const written = writtenIn(dealt);
  if (!written) return new Map();
  return new Map([
    ["contradicting-statements", contradicted(written).length],
    ["repeated-statement", repeated(written.claims).length],
    ["same-correction", uncorrected(written.claims).length],
  ]);
}
