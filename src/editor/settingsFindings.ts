import * as vscode from "vscode";
import { LineIndex } from "../base/range";
import type { Finding } from "../check/finding";
import { explanationLink } from "./explain";
import { settingsPlaces, shownPath } from "./files/surroundings";
import { severityOf, source } from "./findings";
import type { DocumentReading, Readings } from "./readings";
import { placeIn } from "./units";

/** Shows what is wrong in the `cutwork.yml` files around open units, at its place in those files. */
export function showSettingsFindings(readings: Readings): vscode.Disposable {
  const shown = vscode.languages.createDiagnosticCollection(`${source} settings`);
  return vscode.Disposable.from(
    shown,
    readings.onDidRead((read) => {
      for (const place of settingsPlaces(read.document.uri)) shown.set(place, diagnosticsAt(place, read));
    }),
    readings.onDidClose((unit) => {
      // Other open units say again what they still see.
      for (const place of settingsPlaces(unit)) shown.delete(place);
      readings.requestAll();
    }),
  );
}

function diagnosticsAt(place: vscode.Uri, { reading }: DocumentReading): vscode.Diagnostic[] {
  return reading.elsewhere
    .filter(({ path }) => path === shownPath(place))
    .flatMap(({ text, findings }) => {
      const lines = new LineIndex(text);
      return findings.map((finding) => diagnosticIn(lines, finding));
    });
}

function diagnosticIn(lines: LineIndex, { code, range, message, severity }: Finding): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(placeIn(lines, range), message, severityOf(severity));
  diagnostic.source = source;
  diagnostic.code = { value: code, target: explanationLink(code) };
  return diagnostic;
}
