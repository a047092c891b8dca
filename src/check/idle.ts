import type { PlannedActivity } from "../activities/plan";
import type { Finding } from "../base/finding";
import type { Range } from "../base/range";
import type { Silence } from "../unit/unit";
import type { CheckContext } from "./context";
import { movedDeal } from "./rules/moved-deal";
import { ruleFailed } from "./rules/rule-failed";
import { sameCode } from "./rules/same-code";

/** A silence that silences nothing. */
export interface IdleSilence extends Silence {
  /** Where a finding of its code is told that is about the same place too. */
  readonly told?: Range;
}

const holds = ({ start, end }: Range, offset: number): boolean => start <= offset && offset < end;

/** Findings that only earlier prints can give, which are not looked at everywhere. */
const ofPrints: readonly string[] = [sameCode.code, movedDeal.code];

/**
 * The silences of which it is sure that they silence nothing: those that were not used, but for those whose finding may only
 * be missing because something else is wrong at the moment. `hiding` are the codes of what keeps items from being read.
 */
export function idleSilences(
  context: CheckContext,
  unused: readonly Silence[],
  findings: readonly Finding[],
  { known, hiding }: { readonly known: readonly string[]; readonly hiding: ReadonlySet<string> },
): readonly IdleSilence[] {
  const failed = findings.some(({ code }) => code === ruleFailed.code);
  const undealt = undealtIn(context);
  const sure = ({ code, range, scope }: Silence): boolean =>
    !known.includes(code) ||
    (!failed &&
      (context.printed.length > 0 || !ofPrints.includes(code)) &&
      !undealt.some((activity) => mayUse(activity, context, range)) &&
      !findings.some((finding) => hiding.has(finding.code) && holds(scope, finding.range.start)));
  return unused.filter(sure).map((silence) => {
    const told = findings.find(
      ({ code, related }) => code === silence.code && related.some(({ range }) => holds(silence.scope, range.start)),
    );
    return told ? { ...silence, told: told.range } : silence;
  });
}

/** Activities of which there is no deal yet, so that nothing could be found about one. */
function undealtIn({ plan, activities }: CheckContext): readonly PlannedActivity[] {
  const dealt = new Set(activities.filter((each) => each.dealt.deals.length > 0).map((each) => each.plan.index));
  return plan.activities.filter(({ index }) => !dealt.has(index));
}

/** Whether an activity is about a place, as far as that is known of it. */
function mayUse({ block, sections, unknown }: PlannedActivity, { unit }: CheckContext, { start }: Range): boolean {
  if (sections.length === 0 || unknown.length > 0 || holds(block.fence, start)) return true;
  return sections.some((section) => unit.sections.includes(section) && holds(section.range, start));
}
