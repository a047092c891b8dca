import * as vscode from "vscode";
import type { Finding, Severity } from "../check/finding";
import { explanationLink } from "./explain";
import { Patience } from "./patience";
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
  const shown = vscode.languages.createDiagnosticCollection(source);
  const patience = new Patience((key) => {
    const read = readings.last(vscode.Uri.parse(key));
    // Where the text went on since, its reading will show everything.
    if (read && read.document.version === read.version) show(read);
  });

  const show = (read: DocumentReading): void => {
    const { uri } = read.document;
    const known = new Set(shown.get(uri)?.map(sameness));
    const isNews = (found: vscode.Diagnostic): boolean =>
      patience.isTyped(uri.toString(), found.range.start.line, found.range.end.line) && !known.has(sameness(found));
    shown.set(
      uri,
      diagnosticsOf(read).filter((found) => !isNews(found)),
    );
  };

  return vscode.Disposable.from(
    shown,
    new vscode.Disposable(() => patience.forgetAll()),
    readings.onDidRead(show),
    readings.onDidClose((uri) => {
      patience.forget(uri.toString());
      shown.delete(uri);
    }),
    vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const line = isUnit(document) ? cursorLine(document) : undefined;
      const here = contentChanges.some(({ range }) => range.start.line === line || range.end.line === line);
      if (line !== undefined && here) patience.typed(document.uri.toString(), line);
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor: { document, selection } }) => {
      patience.moved(document.uri.toString(), selection.active.line);
    }),
  );
}

function cursorLine(document: vscode.TextDocument): number | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.document === document ? editor.selection.active.line : undefined;
}

/** Equal for a finding before and after a keystroke in its line. */
function sameness({ code, range }: vscode.Diagnostic): string {
  return `${range.start.line} ${typeof code === "object" ? code.value : code}`;
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
