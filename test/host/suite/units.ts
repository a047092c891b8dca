import * as vscode from "vscode";
import { workbench } from "./driver";

/*
 * Units for the tests of the editor, in the `units` folder of the workspace.
 */

export function place(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (!folder) throw new Error("the run has no workspace folder");
  return vscode.Uri.joinPath(folder.uri, "units", name);
}

/** Writes a unit and opens it in front, the cursor at its start. */
export async function openUnit(name: string, text: string): Promise<vscode.TextEditor> {
  await vscode.workspace.fs.writeFile(place(name), new TextEncoder().encode(text));
  return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(place(name)));
}

/** Gives the keyboard to the editor in front. */
export async function focusEditor(): Promise<void> {
  await vscode.commands.executeCommand("workbench.action.focusActiveEditorGroup");
  await workbench.waitFor(".monaco-editor.focused");
}

export async function closeAll(): Promise<void> {
  await vscode.commands.executeCommand("workbench.action.files.revert");
  await vscode.commands.executeCommand("workbench.action.closeAllEditors");
}

/** Where PDFs go: a folder of the test's own, since the pieces of other units in it count as printed. */
export const setOutputFolder = (folder: string | undefined): Thenable<void> =>
  vscode.workspace.getConfiguration("cutwork").update("outputFolder", folder, vscode.ConfigurationTarget.Workspace);

/** Puts the cursor where the text first occurs, or behind it. */
export function goTo(editor: vscode.TextEditor, text: string, behind = false): void {
  const start = editor.document.getText().indexOf(text);
  if (start < 0) throw new Error(`the unit has no “${text}”`);
  const position = editor.document.positionAt(start + (behind ? text.length : 0));
  editor.selection = new vscode.Selection(position, position);
}

/** Whether the extension host knows the cursor at the end of its line. */
export function atEnd({ document, selection }: vscode.TextEditor): boolean {
  return selection.isEmpty && selection.active.character === document.lineAt(selection.active.line).text.length;
}

/** Puts a text in the place of the first occurrence of another. */
export async function replace(editor: vscode.TextEditor, old: string, text: string): Promise<void> {
  const { document } = editor;
  const start = document.getText().indexOf(old);
  if (start < 0) throw new Error(`the unit has no “${old}”`);
  const range = new vscode.Range(document.positionAt(start), document.positionAt(start + old.length));
  if (!(await editor.edit((edit) => edit.replace(range, text)))) throw new Error("the edit was not taken");
}

export function findingsIn(unit: vscode.Uri): readonly vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(unit).filter(({ source }) => source === "cutwork");
}

export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

export const ninePairs = [
  "a cebola = the onion",
  "o alho = the garlic",
  "a cenoura = the carrot",
  "o pepino = the cucumber",
  "a alface = the lettuce",
  "o feijão = the bean",
  "a batata = the potato",
  "o tomate = the tomato",
  "a couve = the cabbage",
];

export const marketUnit = [
  "---",
  "title: At the market",
  "teaches: pt",
  "explains: en",
  "---",
  "",
  "## At the stall",
  "",
  ...ninePairs.map((pair) => `- ${pair}`),
  "",
  "```activity",
  "make: tiles",
  "```",
  "",
].join("\n");
