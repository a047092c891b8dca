import { kindNamed } from "../activities/kinds";
import { levelTold } from "../activities/levels";
import type { Range } from "../base/range";
import type { FileReport } from "./report";

/** A file as JSON: findings with zero-based UTF-16 ranges as in LSP, and the proofs. */
export function toJson({ file, lines, findings, activities }: FileReport): unknown {
  const lsp = (range: Range): unknown => lines.lsp(range);
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
    proofs: activities.flatMap(({ title, make, deals, levels }) =>
      deals.map(({ level, version, code, proof, smaller, difficulty }) => ({
        activity: title,
        make,
        level: levelTold({ level }, levels),
        version,
        code,
        status: proof.status,
        count: proof.count,
        capped: proof.capped,
        nodes: proof.nodes,
        by: proof.by,
        ...(proof.second === undefined ? {} : { second: proof.second }),
        ...(kindNamed(make)?.closesCircles ? { smaller: smallerCircle(smaller) } : {}),
        ...(difficulty === undefined ? {} : { difficulty }),
      })),
    ),
  };
}

/** Whether cards can close a circle while others are left over: judged apart from how many circles take all cards. */
function smallerCircle(circle: readonly number[] | undefined): unknown {
  return circle ? { status: "some", circle } : { status: "none" };
}

/** A file that could not be read, in the same shape, with the reason. */
export function unreadJson(file: string, error: string): unknown {
  return { file, error, findings: [], proofs: [] };
}
