import type { Finding, Severity } from "../base/finding";
import type { Silence } from "../unit/unit";
import type { CheckContext } from "./context";

const severities: readonly string[] = ["error", "warning", "information", "hint"] satisfies Severity[];

function isSeverity(value: string): value is Severity {
  return severities.includes(value);
}

/**
 * Findings with the severities that the unit and the settings give them. Those that are off are gone, but for those of `lasting` codes:
 * nothing is left out on paper without a word.
 */
export function withSeverities(
  findings: readonly Finding[],
  wanted: ReadonlyMap<string, string>,
  lasting: ReadonlySet<string>,
): Finding[] {
  return findings.flatMap((finding) => {
    const severity = wanted.get(finding.code);
    if (severity === "off") return lasting.has(finding.code) ? [{ ...finding, severity: "information" }] : [];
    return [severity !== undefined && isSeverity(severity) ? { ...finding, severity } : finding];
  });
}

/** All silences of a unit: comments, and what activities allow. */
export function silencesOf({ unit, plan }: Pick<CheckContext, "unit" | "plan">): Silence[] {
  const allowed = plan.activities.flatMap(({ block }) => {
    const entry = block.options.entries.find(({ key }) => key === "allow");
    if (!entry || typeof entry.value !== "object" || entry.value === null || Array.isArray(entry.value)) return [];
    return Object.entries(entry.value).map(
      ([code, reason]): Silence => ({ code, reason: String(reason), range: entry.valueRange, scope: block.fence }),
    );
  });
  return [...unit.silences, ...allowed];
}

/** Parts findings into those that are said and silences that were used. */
export function silence(
  findings: readonly Finding[],
  silences: readonly Silence[],
): { readonly said: readonly Finding[]; readonly used: ReadonlySet<Silence> } {
  const used = new Set<Silence>();
  const said = findings.filter(({ code, range }) => {
    const found = silences.filter(
      (each) => each.code === code && each.scope.start <= range.start && range.start < each.scope.end,
    );
    for (const each of found) used.add(each);
    return found.length === 0;
  });
  return { said, used };
}
