import type { Finding } from "../base/finding";
import type { Reading } from "../make/workshop";

/** `file:line:column severity code message`, counted from 1 as editors show it, and related places indented. */
export function findingLines(file: string, { unit, findings }: Reading): string[] {
  const at = (offset: number): string => {
    const { line, character } = unit.lines.positionAt(offset);
    return `${line + 1}:${character + 1}`;
  };
  return findings.flatMap((finding) => [
    `${file}:${at(finding.range.start)} ${finding.severity} ${finding.code} ${finding.message}`,
    ...finding.related.map(({ range, message }) => `    ${file}:${at(range.start)} ${message}`),
  ]);
}

/** One line an activity: what it is and what is proven. */
export function proofLines({ activities }: Reading): string[] {
  return activities.map(({ title, summary, deals }) => {
    if (deals.length === 0) return `  ${title}: ${summary}, not dealt`;
    const states = deals.map(({ level, version, code, copies, proof }) => {
      const sets = copies === "by copier" ? "a master" : `${copies} ${copies === 1 ? "set" : "sets"}`;
      return `${code} ${level}${version > 1 ? ` ${version}` : ""}, ${sets}: ${words[proof.status]}`;
    });
    return `  ${title}: ${summary}; ${states.join("; ")}`;
  });
}

const words = {
  one: "one solution",
  several: "several solutions",
  none: "no solution",
  unsettled: "not settled",
} as const;

/** The unit as JSON: findings with zero-based UTF-16 ranges as in LSP, and the proofs. */
export function toJson(file: string, { unit, findings, activities }: Reading): unknown {
  const lsp = (finding: Finding["range"]): unknown => unit.lines.lsp(finding);
  return {
    file,
    findings: findings.map(({ code, severity, range, message, related, fixes }) => ({
      code,
      severity,
      range: lsp(range),
      message,
      related: related.map((place) => ({ range: lsp(place.range), message: place.message })),
      fixes: fixes.map(({ title, edits, preferred }) => ({
        title,
        preferred: preferred ?? false,
        edits: edits.map((edit) => ({ range: lsp(edit.range), newText: edit.text })),
      })),
    })),
    proofs: activities.flatMap(({ title, make, deals }) =>
      deals.map(({ level, version, code, proof }) => ({
        activity: title,
        make,
        level,
        version,
        code,
        status: proof.status,
        count: proof.count,
        capped: proof.capped,
        nodes: proof.nodes,
        by: proof.by,
        ...(proof.second === undefined ? {} : { second: proof.second }),
      })),
    ),
  };
}

const ranks = { error: 3, warning: 2, information: 1, hint: 0 } as const;

export function worstIn(findings: readonly Finding[]): number {
  return Math.max(0, ...findings.map(({ severity }) => ranks[severity]));
}

export function rankOf(severity: "error" | "warning"): number {
  return ranks[severity];
}
