import * as vscode from "vscode";
import type { Steps } from "../base/steps";
import type { Finding, Fix } from "../check/finding";
import { editBetween, fixingAll } from "../make/fix-all";
import { diagnosticOf } from "./findings";
import type { DocumentReading, Readings } from "./readings";
import { inSlices } from "./slices";
import { toRange, unitSelector } from "./units";

const everything = vscode.CodeActionKind.SourceFixAll.append("cutwork");

/** Fixes several findings at once. What it changes takes further readings to find out, and is found out when it is chosen. */
class WholeFix extends vscode.CodeAction {
  constructor(
    title: string,
    kind: vscode.CodeActionKind,
    readonly read: DocumentReading,
    readonly code?: string,
  ) {
    super(title, kind);
  }
}

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
        if (all) {
          const action = new WholeFix("Fix all that can be fixed", everything, current);
          await work(action, token);
          return action.edit ? [action] : [];
        }
        const here = current.reading.findings.filter(({ range }) => toRange(document, range).intersection(place));
        const each = here.flatMap((finding) => finding.fixes.map((fix) => actionOf(document, finding, fix)));
        return [...each, ...[...new Set(here.map(({ code }) => code))].flatMap((code) => ofCode(current, code))];
      },
      async resolveCodeAction(action, token) {
        if (action instanceof WholeFix) await work(action, token);
        return action;
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
  return count > 1 ? [new WholeFix(`Fix all of “${code}”`, vscode.CodeActionKind.QuickFix, current, code)] : [];
}

/** Works out what an action changes; it stays without an edit where that is nothing, or where nobody waits any more. */
async function work(action: WholeFix, token: vscode.CancellationToken): Promise<void> {
  const { document, workshop, reading } = action.read;
  const { file, around } = reading;
  const find = function* (text: string): Steps<readonly Finding[]> {
    return (yield* workshop.reading({ ...file, text }, around)).findings;
  };
  const fixed = await inSlices(fixingAll(file.text, find, action.code), {
    say: () => {},
    wanted: () => !token.isCancellationRequested,
  });
  // Its places are those of the text that was read.
  if (fixed === undefined || document.version !== action.read.version) return;
  const edit = editBetween(file.text, fixed);
  if (!edit) return;
  action.edit = new vscode.WorkspaceEdit();
  action.edit.replace(document.uri, toRange(document, edit.range), edit.text);
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
