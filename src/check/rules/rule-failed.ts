import type { Rule } from "../../base/finding";

/** A rule that threw, and what it said. */
export interface Failure {
  readonly code: string;
  readonly reason: string;
}

export const ruleFailed: Rule<{ readonly failures: readonly Failure[] }> = {
  code: "rule-failed",
  severity: "warning",
  title: "A check that failed",
  why: "One of the checks met something that it was not made for and was passed over; all others were done. What it would have found is not told. The editor's log (**Output: Cutwork**) has the details. This is a fault in the program: please report it with the unit.",
  example: { wrong: "No unit is known that gives this.", right: "Every unit." },
  check: ({ failures }) =>
    failures.map(({ code, reason }) => ({
      range: { start: 0, end: 0 },
      message: `The check “${code}” failed and was passed over (${reason}). Please report it with this unit.`,
    })),
};
