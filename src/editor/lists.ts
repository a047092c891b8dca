import * as vscode from "vscode";
import { isUnit } from "./units";

const contextKey = "cutwork.onEmptyItem";
/** Milliseconds that the cursor rests on an empty item before Enter ends the list: who types on means the next item. */
const rest = 80;
const emptyItem = /^[ \t]*([-*+]|\d{1,9}[.)])([ \t]+\[[ xX]?\])?[ \t]*$/;

/** Enter on an item that holds nothing ends the list, instead of adding one empty item after the other. */
export function endListsOnEnter(): vscode.Disposable {
  let told = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const tell = async (now: boolean): Promise<void> => {
    if (now === told) return;
    told = now;
    await vscode.commands.executeCommand("setContext", contextKey, now);
  };
  const look = (): void => {
    clearTimeout(waiting);
    const editor = vscode.window.activeTextEditor;
    if (!editor || !emptyItemAt(editor)) void tell(false);
    else {
      // The second, empty wait lets keystrokes in that came while something else kept the thread busy.
      waiting = setTimeout(() => {
        waiting = setTimeout(() => void tell(true), 0);
      }, rest);
    }
  };
  return vscode.Disposable.from(
    new vscode.Disposable(() => clearTimeout(waiting)),
    vscode.window.onDidChangeTextEditorSelection(look),
    vscode.window.onDidChangeActiveTextEditor(look),
    vscode.workspace.onDidChangeTextDocument(look),
    vscode.commands.registerTextEditorCommand("cutwork.endList", async (editor) => {
      const line = emptyItemAt(editor);
      if (line) await Promise.all([editor.edit((edit) => edit.delete(line.range)), tell(false)]);
      // The key was pressed before the news came that the item is no longer empty: then it is an Enter like any other.
      else await vscode.commands.executeCommand("type", { text: "\n" });
    }),
  );
}

/** The line of the cursor, where it is the end of an empty item. */
function emptyItemAt({ document, selections, selection }: vscode.TextEditor): vscode.TextLine | undefined {
  if (!isUnit(document) || selections.length !== 1 || !selection.isEmpty) return undefined;
  const line = document.lineAt(selection.active.line);
  return selection.active.character === line.text.length && emptyItem.test(line.text) ? line : undefined;
}
