import type { Foresight } from "../activities/contract";
import { reporting } from "../base/finding";
import type { Steps } from "../base/steps";
import type { CheckContext, CheckedActivity } from "./context";
import { contradictingStatements } from "./rules/contradicting-statements";
import { lookAlike } from "./rules/look-alike";
import { repeatedStatement } from "./rules/repeated-statement";
import { sameCorrection } from "./rules/same-correction";
import { sameLevels } from "./rules/same-levels";
import { isLoud, troublesOf } from "./rules/spare";

/** General rules about what an activity deals. */
const general = [contradictingStatements, lookAlike, repeatedStatement, sameCorrection];

/** What the rules of an activity may ask about a change of it. */
export function foresightOf(activity: CheckedActivity, context: CheckContext): Foresight {
  const { plan, dealt } = activity;
  const { kind } = plan;
  return function* (change) {
    if (!kind) return undefined;
    const changed = change(dealt.request);
    const after = kind.dealing ? yield* kind.dealing(changed) : kind.deal(changed);
    if (after.deals.length === 0) return undefined;
    yield "looking what else is wrong then";
    const before = yield* loudIn(activity, context);
    const then = yield* loudIn({ plan, dealt: after }, context);
    const titles = new Map([...general, ...kind.rules].map(({ code, title }) => [code, title]));
    const more = [...then].filter(([code, count]) => count > (before.get(code) ?? 0));
    return more.map(([code]) => titles.get(code) ?? sameLevels.title);
  };
}

/** How much is told of an activity, errors and warnings, by code. */
function* loudIn(activity: CheckedActivity, context: CheckContext): Steps<ReadonlyMap<string, number>, unknown> {
  const { plan, dealt } = activity;
  const troubles = yield* troublesOf(plan.kind, dealt, context.press);
  const alike = yield* reporting(lookAlike, { ...context, activities: [activity] });
  return new Map([...troubles, [lookAlike.code, alike.filter((each) => isLoud(lookAlike, each)).length]]);
}
