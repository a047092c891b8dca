import * as vscode from "vscode";
import type { Finding, Severity } from "../check/finding";
import { CalmFindings } from "./calmFindings";
import { explanationLink } from "./explain";
import type { DocumentReading, Readings } from "./readings";
import { isUnit, toRange } from "./units";

export const source = "cutwork";

const severities: Readonly<Record<Severity, vscode.DiagnosticSeverity>> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  information: vscode.DiagnosticSeverity.Information,
  hint: vscode.DiagnosticSeverity.Hint,
};

export function severityOf(severity: Severity): vscode.DiagnosticSeverity {
  return severities[severity];
}

/** Shows what was found in every open unit, and takes it away when the unit is closed. */
export function showFindings(readings: Readings): vscode.Disposable {
  const shown = new CalmFindings(source, isUnit);
  return vscode.Disposable.from(
    shown,
    readings.onDidRead((read) => {
      const { document, version } = read;
      shown.set(document.uri, {
        diagnostics: diagnosticsOf(read),
        isCurrent: () => readings.last(document.uri) === read && document.version === version,
      });
    }),
    readings.onDidClose((uri) => shown.delete(uri)),
  );
}

/** One diagnostic a finding, in the same order. */
export function diagnosticsOf({ document, reading }: DocumentReading): vscode.Diagnostic[] {
  return reading.findings.map((finding) => diagnosticOf(document, finding));
}

export function diagnosticOf(document: vscode.TextDocument, finding: Finding): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(
    toRange(document, finding.range),
    finding.message,
    severityOf(finding.severity),
  );
  diagnostic.source = source;
  diagnostic.code = { value: finding.code, target: explanationLink(finding.code) };
  diagnostic.relatedInformation = finding.related.map(
    ({ range, message }) =>
      new vscode.DiagnosticRelatedInformation(new vscode.Location(document.uri, toRange(document, range)), message),
  );
  return diagnostic;
}
