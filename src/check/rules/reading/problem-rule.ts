import type { Rule } from "../../../base/finding";
import { type CheckContext, inUse } from "../../context";

/** A rule that hands on what reading the unit found under its code; traps only where an activity uses the section. */
export function problemRule(rule: Omit<Rule<CheckContext>, "check">): Rule<CheckContext> {
  return {
    ...rule,
    check: (context) =>
      context.unit.problems
        .filter(({ code, trap, range }) => code === rule.code && (!trap || inUse(context, range.start)))
        .map(({ range, message, fixes }) => ({
          range,
          message,
          fixes: fixes.map(({ title, edits, drops }, i) =>
            i === 0 && !drops ? { title, edits, preferred: true } : { title, edits },
          ),
        })),
  };
}
