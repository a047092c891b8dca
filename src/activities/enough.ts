import type { Fix } from "../base/finding";
import type { Steps } from "../base/steps";
import type { Deal, Dealt, RuleContext } from "./contract";
import { setOption } from "./edits";
import { leaving, withOptions } from "./foreseen";

/* What is offered where too little is dealt: what would be told then was hidden as long as there was nothing. */

/** Numbers that are tried. */
const mostTries = 8;

/**
 * The least number that `take` may have so that nothing is told then, as far as is tried; else the one after which the fewest things
 * are, and its title says which. The fewest of all may be taken unasked where the kind says so.
 */
export function* takingEnough(
  { dealt: { request }, foresee }: RuleContext<Dealt<Deal>>,
  { fewest, most, preferred }: { readonly fewest: number; readonly most: number; readonly preferred?: true },
): Steps<Fix[], unknown> {
  const { block, unit } = request;
  let best: { readonly take: number; readonly left: readonly string[] } | undefined;
  for (let take = fewest; take <= Math.min(most, fewest + mostTries - 1) && best?.left.length !== 0; take++) {
    yield "trying a fix";
    const left = foresee && (yield* foresee(withOptions({ take })));
    if (left && (!best || left.length < best.left.length)) best = { take, left };
  }
  if (!best) return [];
  const { take, left } = best;
  const fix = { title: `Take ${take}${leaving(left)}`, edits: [setOption(block, unit.text, "take", String(take))] };
  return [preferred ? { ...fix, preferred: take === fewest && left.length === 0 } : fix];
}
