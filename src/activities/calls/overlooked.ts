import type { Range } from "../../base/range";
import type { Matching, Worded } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import type { Claim } from "../statements";
import { type CallsDeal, calledIn, type DealtCalls } from "./model";

/** What a list calls or keeps for ties, but for twins: those differ from a true statement in a form, and that is what is asked. */
function calledOf(dealt: DealtCalls, { order, reserve }: CallsDeal): Claim[] {
  return calledIn(dealt, [...order, ...reserve]).filter(({ twin }) => !twin);
}

export function callTexts(dealt: DealtCalls, deal: CallsDeal): Worded[] {
  return calledOf(dealt, deal).map(({ key, text }) => ({ key, text, lang: dealt.request.teaches }));
}

export function truthOf(dealt: DealtCalls, deal: CallsDeal, key: MatchKey): string | undefined {
  const claim = calledOf(dealt, deal).find((each) => each.key === key);
  return claim && String(claim.truth);
}

export function callPlaces(dealt: DealtCalls, deal: CallsDeal, keys: readonly MatchKey[]): Range[] {
  return calledOf(dealt, deal)
    .filter(({ key }) => keys.includes(key))
    .map(({ source }) => source);
}

/** Calls of which one is true and another, that is false, is taken for it under this matching. */
export function confusedCalls(dealt: DealtCalls, deal: CallsDeal, { overlooked }: Matching): string[] {
  const claims = calledOf(dealt, deal);
  return claims
    .filter(({ key, truth }) =>
      claims.some((other) => other.truth !== truth && other.key !== key && overlooked?.like(key).has(other.key)),
    )
    .map(({ text }) => `“${text}”`);
}
