import * as vscode from "vscode";
import type { Steps } from "../base/steps";
import type { Finding, Fix } from "../check/finding";
import { editBetween, fixingAll } from "../make/fix-all";
import { diagnosticOf } from "./findings";
import type { DocumentReading, Readings } from "./readings";
import { inSlices } from "./slices";
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
        if (all) return await whole(current, token);
        const here = current.reading.findings.filter(({ range }) => toRange(document, range).intersection(place));
        const each = here.flatMap((finding) => finding.fixes.map((fix) => actionOf(document, finding, fix)));
        return [...each, ...[...new Set(here.map(({ code }) => code))].flatMap((code) => ofCode(current, code))];
      },
      async resolveCodeAction(action, token) {
        if (!(action instanceof FixAllOfCode)) return action;
        const current = await readings.current(action.document);
        action.edit = (await editOf(current, token, action.code)) ?? new vscode.WorkspaceEdit();
        return action;
      },
    },
    { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix, everything] },
  );
}

/** One for all findings of a code. What it changes is found out only when it is chosen: for that the unit is dealt again and again. */
class FixAllOfCode extends vscode.CodeAction {
  constructor(
    readonly document: vscode.TextDocument,
    readonly code: string,
  ) {
    super(`Fix all of “${code}”`, vscode.CodeActionKind.QuickFix);
  }
}

/** One action for all findings of a code, where there are several with a preferred fix. */
function ofCode({ document, reading }: DocumentReading, code: string): vscode.CodeAction[] {
  const count = reading.findings.filter(
    (finding) => finding.code === code && finding.fixes.some(({ preferred }) => preferred),
  ).length;
  return count > 1 ? [new FixAllOfCode(document, code)] : [];
}

async function whole(current: DocumentReading, token: vscode.CancellationToken): Promise<vscode.CodeAction[]> {
  const edit = await editOf(current, token);
  if (!edit) return [];
  const action = new vscode.CodeAction("Fix all that can be fixed", everything);
  action.edit = edit;
  return [action];
}

/**
 * All preferred fixes, of all codes or of one. Undefined where they change nothing, where nobody waits for them any more, and
 * where the document has another text by now.
 */
async function editOf(
  { document, version, workshop, reading }: DocumentReading,
  token: vscode.CancellationToken,
  code?: string,
): Promise<vscode.WorkspaceEdit | undefined> {
  const { file, around } = reading;
  const find = function* (text: string): Steps<readonly Finding[]> {
    return (yield* workshop.reading({ ...file, text }, around)).findings;
  };
  const watcher = { say: () => {}, wanted: () => !token.isCancellationRequested };
  const fixed = await inSlices(fixingAll(file.text, find, code), watcher);
  const change = fixed === undefined || document.version !== version ? undefined : editBetween(file.text, fixed);
  if (!change) return undefined;
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, toRange(document, change.range), change.text);
  return edit;
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
