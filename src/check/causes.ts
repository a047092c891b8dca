import type { Finding, Related, Rule } from "../base/finding";
import type { Range } from "../base/range";
import type { CheckContext } from "./context";

/*
 * Where items are too few because others could not be read, what is told of those is the cause of what is told of the activity.
 */

const inside = ({ start, end }: Range, offset: number): boolean => start <= offset && offset < end;

/** The findings; what says that items of an activity are too few shows the places of its sections where one may not have been read. */
export function withCauses(
  findings: readonly Finding[],
  rules: readonly Pick<Rule<never>, "code" | "hides" | "counts">[],
  { plan }: Pick<CheckContext, "plan">,
): Finding[] {
  const counting = new Set(rules.filter(({ counts }) => counts).map(({ code }) => code));
  if (!findings.some(({ code }) => counting.has(code))) return [...findings];
  const hiding = new Set(rules.filter(({ hides }) => hides).map(({ code }) => code));
  const hidden = findings.filter(({ code }) => hiding.has(code));
  return findings.map((finding) => {
    if (!counting.has(finding.code) || hidden.length === 0) return finding;
    const used = plan.activities
      .filter(({ index }) => finding.activities?.includes(index))
      .flatMap(({ sections }) => sections);
    const causes = hidden
      .filter(({ range }) => used.some((section) => inside(section.range, range.start)))
      .sort((a, b) => a.range.start - b.range.start)
      .map(({ range }): Related => ({ range, message: "This is not read as it stands, and may be one more." }));
    return causes.length > 0 ? { ...finding, related: [...finding.related, ...causes] } : finding;
  });
}
