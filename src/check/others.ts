import { changed, dropAnswers, type Standing } from "../activities/shared-answers";
import { isMeant, isNoWorse } from "../activities/trial";
import { withoutItem } from "../activities/without-item";
import type { Finding, Fix } from "../base/finding";
import type { Range } from "../base/range";
import { type Steps, sifted } from "../base/steps";
import { type Item, isPair, type Unit } from "../unit/unit";
import type { CheckContext, CheckedActivity } from "./context";
import { itemAt } from "./item-at";

/*
 * An activity knows nothing of the others: what mends one may take an item out that another one needs.
 */

/** Items that are tried on other activities in one check: so many are more than anybody takes out one by one. Ours. */
export const mostTaken = 30;

/**
 * In steps: the finding of an activity without those of its fixes after which another activity about the same items could not be
 * dealt any more, had no proven solution where it has one, or more that fits two ways or is warned of. Each try takes one of those
 * that are left; what is over is offered untried.
 */
export function* sparingOthers(
  finding: Finding,
  own: CheckedActivity,
  context: CheckContext,
  tries: { left: number },
): Steps<Finding, unknown> {
  const others = context.activities.filter(
    ({ plan, dealt }) =>
      plan !== own.plan && dealt.deals.length > 0 && plan.sections.some((each) => own.plan.sections.includes(each)),
  );
  if (others.length === 0 || finding.fixes.length === 0) return finding;
  const fixes = yield* sifted(finding.fixes, (fix) => areSpared(fix, others, context.unit, tries));
  return { ...finding, fixes };
}

function* areSpared(
  { edits }: Fix,
  others: readonly CheckedActivity[],
  unit: Unit,
  tries: { left: number },
): Steps<boolean, unknown> {
  const out = edits.flatMap(({ range, text }) => (text === "" ? [range] : []));
  const items = out.flatMap((range) => itemOf(unit, range) ?? []);
  const answers = dropAnswers(out.flatMap((range) => answersIn(unit, range)));
  if (items.length === 0 && !answers) return true;
  for (const { plan, dealt } of others) {
    const { kind } = plan;
    if (!kind || tries.left <= 0) continue;
    tries.left--;
    yield "trying a fix on another activity";
    const less = items.reduce(withoutItem, dealt.request);
    const request = answers ? changed(less, answers.change) : less;
    if (kind.trial) {
      // What is not soon proven as it is, or has a fault of its own, is asked no more than to be dealt.
      const holds = dealt.deals.every(isMeant) && (yield* kind.trial.holding(dealt.request, dealt));
      if (!(holds ? yield* kind.trial.holding(request, dealt) : kind.trial.deals(request))) return false;
      continue;
    }
    const after = kind.dealing ? yield* kind.dealing(request) : kind.deal(request);
    if (after.deals.length === 0 || !isNoWorse(kind, dealt, after)) return false;
  }
  return true;
}

/** The answers of a pair that an edit takes out behind its first ones. */
function answersIn(unit: Unit, { start, end }: Range): Standing[] {
  const pair = itemAt(unit, { start, end });
  if (!pair || !isPair(pair)) return [];
  return (["left", "right"] as const).flatMap((side) =>
    pair[side].answers.flatMap((answer, index) =>
      index > 0 && start <= answer.range.start && answer.range.end <= end ? [{ pair, side, index, answer }] : [],
    ),
  );
}

/** The item that an edit takes out as a whole. */
function itemOf(unit: Unit, range: Range): Item | undefined {
  const item = itemAt(unit, range);
  return item?.block.start === range.start && item.block.end === range.end ? item : undefined;
}
