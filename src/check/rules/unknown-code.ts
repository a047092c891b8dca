import type { Report, Rule } from "../../base/finding";
import type { Mapping } from "../../unit/unit";
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
  check: ({ unit }) => unknownCodes(unit.front, unit.text, codes()),
};

/** Codes under `severities` that are not among the `known` ones. */
export function unknownCodes({ entries }: Mapping, text: string, known: readonly string[]): Report[] {
  const entry = entries.find(({ key }) => key === "severities");
  if (!entry || typeof entry.value !== "object" || entry.value === null || Array.isArray(entry.value)) return [];
  return Object.keys(entry.value)
    .filter((code) => !known.includes(code))
    .map((code): Report => {
      const at = text.indexOf(code, entry.valueRange.start);
      const range = at < 0 ? entry.valueRange : { start: at, end: at + code.length };
      const near = nearest(code, known, true)[0];
      return {
        range,
        message: `There is no finding “${code}”.`,
        fixes: near ? [{ title: `Change to “${near}”`, edits: [{ range, text: near }], preferred: true }] : [],
      };
    });
}
