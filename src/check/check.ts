import { type Finding, type Rule, runRule } from "../base/finding";
import type { CheckContext } from "./context";
import { generalRules } from "./rules";

/** All findings of a unit, in the order of their places. A rule that fails becomes a finding and stops no other. */
export function checkUnit(context: CheckContext): Finding[] {
  const findings = generalRules.flatMap((rule) => guarded(rule, context));
  for (const { plan, dealt } of context.activities) {
    for (const rule of plan.kind?.rules ?? [])
      findings.push(...guarded(rule, { dealt, press: context.press }, plan.index));
  }
  return findings.sort(
    (a, b) => a.range.start - b.range.start || a.range.end - b.range.end || (a.code < b.code ? -1 : 1),
  );
}

function guarded<Context>(rule: Rule<Context>, context: Context, activity?: number): Finding[] {
  try {
    return runRule(rule, context, activity);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return [
      {
        code: "rule-failed",
        severity: "warning",
        range: { start: 0, end: 0 },
        message: `The check “${rule.code}” failed and was passed over (${reason}). Please report it with this unit.`,
        related: [],
        fixes: [],
      },
    ];
  }
}
