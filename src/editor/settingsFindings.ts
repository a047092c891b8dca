import * as vscode from "vscode";
import { LineIndex } from "../base/range";
import type { Finding } from "../check/finding";
import { readSettings } from "../check/settings";
import { settingsNames } from "../make/settings-files";
import { CalmFindings } from "./calmFindings";
import { explanationLink } from "./explain";
import { settingsPlaces, shownPath } from "./files/surroundings";
import { severityOf, source } from "./findings";
import type { Readings } from "./readings";
import { placeIn, toRange } from "./units";

/** What was found in a settings file, and the text in which it was found. */
interface Found {
  readonly text: string;
  readonly findings: readonly Finding[];
}

/**
 * Shows what is wrong in the `cutwork.yml` files that are open or lie around open units, at its place in those files, and offers the
 * fixes there.
 */
export function showSettingsFindings(readings: Readings): vscode.Disposable {
  const known = new Map<string, Found>();
  const shown = new CalmFindings(`${source} settings`, ({ uri }) => isSettings(uri));
  const tell = (place: vscode.Uri, found: Found | undefined): void => {
    if (!found) {
      known.delete(place.toString());
      shown.delete(place);
      return;
    }
    known.set(place.toString(), found);
    const lines = new LineIndex(found.text);
    const diagnostics = found.findings.map((finding) => diagnosticIn(lines, finding));
    shown.set(place, { diagnostics, isCurrent: () => openAt(place)?.getText() === found.text });
  };
  /** An open file is read as it stands there, whether or not a unit is open. */
  const look = (document: vscode.TextDocument): void => {
    if (isSettings(document.uri))
      tell(document.uri, readSettings({ path: shownPath(document.uri), text: document.getText() }));
  };
  for (const document of vscode.workspace.textDocuments) look(document);
  return vscode.Disposable.from(
    shown,
    vscode.workspace.onDidOpenTextDocument(look),
    vscode.workspace.onDidChangeTextDocument(({ document }) => look(document)),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => {
      if (!isSettings(uri)) return;
      tell(uri, undefined);
      readings.requestAll();
    }),
    readings.onDidRead(({ document, reading }) => {
      for (const place of settingsPlaces(document.uri))
        if (!openAt(place))
          tell(
            place,
            reading.elsewhere.find(({ path }) => path === shownPath(place)),
          );
    }),
    readings.onDidClose((unit) => {
      // Other open units say again what they still see.
      for (const place of settingsPlaces(unit)) if (!openAt(place)) tell(place, undefined);
      readings.requestAll();
    }),
    vscode.languages.registerCodeActionsProvider(
      { pattern: "**/cutwork.{yml,yaml}" },
      {
        provideCodeActions(document, place) {
          const found = known.get(document.uri.toString());
          return found?.text === document.getText() ? actionsAt(document, place, found) : [];
        },
      },
      { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] },
    ),
  );
}

function actionsAt(document: vscode.TextDocument, place: vscode.Range, { findings, text }: Found): vscode.CodeAction[] {
  const lines = new LineIndex(text);
  return findings
    .filter(({ range }) => toRange(document, range).intersection(place))
    .flatMap((finding) =>
      finding.fixes.map((fix) => {
        const action = new vscode.CodeAction(fix.title, vscode.CodeActionKind.QuickFix);
        action.edit = new vscode.WorkspaceEdit();
        action.edit.set(
          document.uri,
          fix.edits.map((edit) => vscode.TextEdit.replace(toRange(document, edit.range), edit.text)),
        );
        action.diagnostics = [diagnosticIn(lines, finding)];
        if (fix.preferred) action.isPreferred = true;
        return action;
      }),
    );
}

function isSettings({ path }: vscode.Uri): boolean {
  return settingsNames.some((name) => path.endsWith(`/${name}`));
}

function openAt(place: vscode.Uri): vscode.TextDocument | undefined {
  return vscode.workspace.textDocuments.find(({ uri }) => uri.toString() === place.toString());
}

function diagnosticIn(lines: LineIndex, { code, range, message, severity }: Finding): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(placeIn(lines, range), message, severityOf(severity));
  diagnostic.source = source;
  diagnostic.code = { value: code, target: explanationLink(code) };
  return diagnostic;
}
