import * as vscode from "vscode";
import type { Finding, Fix } from "../check/finding";
import { diagnosticOf } from "./findings";
import type { Readings } from "./readings";
import { toRange, unitSelector } from "./units";

/** Offers the fixes of the findings at a place. They come from the findings themselves, never from their messages. */
export function offerFixes(readings: Readings): vscode.Disposable {
  const kinds = [vscode.CodeActionKind.QuickFix];
  return vscode.languages.registerCodeActionsProvider(
    unitSelector,
    {
      async provideCodeActions(document, place, context, token) {
        if (context.only && !context.only.contains(vscode.CodeActionKind.QuickFix)) return [];
        const { reading, version } = await readings.current(document);
        if (token.isCancellationRequested || version !== document.version) return [];
        return reading.findings
          .filter((finding) => toRange(document, finding.range).intersection(place))
          .flatMap((finding) => finding.fixes.map((fix) => actionOf(document, finding, fix)));
      },
    },
    { providedCodeActionKinds: kinds },
  );
}

function actionOf(document: vscode.TextDocument, finding: Finding, fix: Fix): vscode.CodeAction {
  const action = new vscode.CodeAction(fix.title, vscode.CodeActionKind.QuickFix);
  action.edit = new vscode.WorkspaceEdit();
  action.edit.set(
    document.uri,
    fix.edits.map(({ range, text }) => vscode.TextEdit.replace(toRange(document, range), text)),
  );
  action.diagnostics = [diagnosticOf(document, finding)];
  if (fix.preferred) action.isPreferred = true;
  return action;
}
