import type { Fix } from "../../../base/finding";
import type { DealRequest } from "../../contract";
import { setOption } from "../../edits";
import { changed, dropAnswer, dropPair, laterOf, type PairChange } from "../../shared-answers";
import { clashesAhead, dealLoop, fewestPairs } from "../deal";
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
  const after = clashesAfter(changed(dealt.request, change), dealt);
  return after !== undefined && after < clashCount(dealt);
}

/** How many clashes another request would have in all deals; undefined where it has none to deal. */
function clashesAfter(request: DealRequest, { deals, options }: DealtLoop): number | undefined {
  const ahead = clashesAhead(request);
  // Each version has a deal for each level, with the same circle.
  if (ahead !== undefined) return (ahead * deals.length) / options.versions;
  const after = dealLoop(request);
  return after.deals.length > 0 ? clashCount(after) : undefined;
}

const sound = new WeakMap<DealtLoop, { readonly take: number | undefined }>();

/** The most pairs that can be chosen so that no card fits where it should not; looked for once for all findings. */
function largestSound(dealt: DealtLoop): number | undefined {
  const known = sound.get(dealt);
  if (known) return known.take;
  const { request, options, pairs } = dealt;
  const most = Math.min(options.take ?? pairs.length, pairs.length) - 1;
  let take: number | undefined;
  for (let fewer = most; fewer >= fewestPairs && take === undefined; fewer--) {
    const value = { ...options, take: fewer };
    if (clashesAfter({ ...request, options: { ...request.options, value } }, dealt) === 0) take = fewer;
  }
  sound.set(dealt, { take });
  return take;
}
