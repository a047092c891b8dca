import { hasClaims } from "../../activities/dealt-claims";
import type { Claim } from "../../activities/statements";
import type { CheckContext } from "../context";

/** The written statements of each activity that deals them; twins are made so that they are in nobody's way. */
export function writtenClaims({ activities }: CheckContext): (readonly Claim[])[] {
  return activities.flatMap(({ dealt }) =>
    hasClaims(dealt) ? [[...dealt.claims, ...(dealt.reserve ?? [])].filter(({ twin }) => twin === undefined)] : [],
  );
}
