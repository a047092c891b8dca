import { hasClaims, type ShownPair } from "../../activities/dealt-claims";
import type { Claim } from "../../activities/statements";
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
    if (!hasClaims(dealt)) return [];
    const claims = [...dealt.claims, ...(dealt.reserve ?? [])].filter(({ twin }) => twin === undefined);
    return [{ claims, shown: dealt.shown ?? [], activities: [plan.index] }];
  });
}
