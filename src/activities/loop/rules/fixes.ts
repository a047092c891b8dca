import type { Fix } from "../../../base/finding";
import { setOption } from "../../edits";
import { changed, dropAnswer, dropPair, laterOf, type PairChange } from "../../shared-answers";
import { dealLoop, fewestPairs } from "../deal";
import type { DealtLoop } from "../model";
import { type Clash, clashCause, clashCount } from "./clashes";

/** Fixes that leave fewer cards that fit where they should not, each tried by dealing again. */
export function fixesFor(dealt: DealtLoop, clash: Clash): Fix[] {
  const { block, unit, relation } = dealt.request;
  const { asks, answers } = clash;
  const { alternative } = clashCause(clash, relation);
  const tried = [
    alternative && dropAnswer(alternative),
    ...[...new Set([laterOf(asks, answers), asks, answers])].map(dropPair),
  ];
  const fixes = tried.flatMap((each) => (each && helps(dealt, each.change) ? [each.fix] : []));
  const fewer = largestSound(dealt);
  if (fewer === undefined) return fixes;
  const title = `Take ${fewer} of the ${dealt.pairs.length} pairs, none of which clash`;
  return [...fixes, { title, edits: [setOption(block, unit.text, "take", String(fewer))] }];
}

/** Whether a change of the pairs leaves fewer clashes. */
function helps(dealt: DealtLoop, change: PairChange): boolean {
  const after = dealLoop(changed(dealt.request, change));
  return after.deals.length > 0 && clashCount(after) < clashCount(dealt);
}

/** The most pairs that can be chosen so that no card fits where it should not. */
function largestSound(dealt: DealtLoop): number | undefined {
  const { request, options, pairs } = dealt;
  const most = Math.min(options.take ?? pairs.length, pairs.length) - 1;
  for (let take = most; take >= fewestPairs; take--) {
    const value = { ...options, take };
    const after = dealLoop({ ...request, options: { ...request.options, value } });
    if (after.deals.length > 0 && clashCount(after) === 0) return take;
  }
  return undefined;
}
