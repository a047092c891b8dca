import type { Report, Rule } from "../../base/finding";
import { codes } from "../codes";
import type { CheckContext } from "../context";
import { nearest } from "../nearest";

export const unknownCode: Rule<CheckContext> = {
  code: "unknown-code",
  severity: "warning",
  title: "A severity for a finding that does not exist",
  why: "`severities` names findings by their codes. The reference lists them.",
  example: {
    wrong: "---\nseverities:\n  duplicate-anser: off\n---\n",
    right: "---\nseverities:\n  duplicate-answer: off\n---\n",
  },
  check: ({ unit }) => {
    const entry = unit.front.entries.find(({ key }) => key === "severities");
    if (!entry || typeof entry.value !== "object" || entry.value === null) return [];
    return Object.keys(entry.value)
      .filter((code) => !codes().includes(code))
      .map((code): Report => {
        const at = unit.text.indexOf(code, entry.valueRange.start);
        const range = at < 0 ? entry.valueRange : { start: at, end: at + code.length };
        const near = nearest(code, codes(), true)[0];
        return {
          range,
          message: `There is no finding “${code}”.`,
          fixes: near ? [{ title: `Change to “${near}”`, edits: [{ range, text: near }], preferred: true }] : [],
        };
      });
  },
};
