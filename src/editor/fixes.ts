import * as vscode from "vscode";
import type { Finding, Fix } from "../check/finding";
import { editBetween, fixAll } from "../make/fix-all";
import { diagnosticOf } from "./findings";
import type { DocumentReading, Readings } from "./readings";
import { toRange, unitSelector } from "./units";

const everything = vscode.CodeActionKind.SourceFixAll.append("cutwork");

/**
 * Offers the fixes of the findings at a place, all preferred fixes of one code, and all of the unit (also on save, by VS Code's
 * setting `editor.codeActionsOnSave`). They come from the findings themselves, never from their messages.
 */
export function offerFixes(readings: Readings): vscode.Disposable {
  return vscode.languages.registerCodeActionsProvider(
    unitSelector,
    {
      async provideCodeActions(document, place, context, token) {
        const { only } = context;
        const quick = !only || only.contains(vscode.CodeActionKind.QuickFix);
        const all = only?.contains(everything) ?? false;
        if (!quick && !all) return [];
        const current = await readings.current(document);
        if (token.isCancellationRequested || current.version !== document.version) return [];
        if (all) return whole(current, everything, "Fix all that can be fixed");
        const here = current.reading.findings.filter(({ range }) => toRange(document, range).intersection(place));
        const each = here.flatMap((finding) => finding.fixes.map((fix) => actionOf(document, finding, fix)));
        return [...each, ...[...new Set(here.map(({ code }) => code))].flatMap((code) => ofCode(current, code))];
      },
    },
    { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix, everything] },
  );
}

/** One action for all findings of a code, where there are several with a preferred fix. */
function ofCode(current: DocumentReading, code: string): vscode.CodeAction[] {
  const count = current.reading.findings.filter(
    (finding) => finding.code === code && finding.fixes.some(({ preferred }) => preferred),
  ).length;
  return count > 1 ? whole(current, vscode.CodeActionKind.QuickFix, `Fix all of “${code}”`, code) : [];
}

function whole(
  { document, workshop, reading }: DocumentReading,
  kind: vscode.CodeActionKind,
  title: string,
  code?: string,
): vscode.CodeAction[] {
  const { file, around } = reading;
  const fixed = fixAll(file.text, (text) => workshop.read({ ...file, text }, around).findings, code);
  const edit = editBetween(file.text, fixed);
  if (!edit) return [];
  const action = new vscode.CodeAction(title, kind);
  action.edit = new vscode.WorkspaceEdit();
  action.edit.replace(document.uri, toRange(document, edit.range), edit.text);
  return [action];
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
