import * as vscode from "vscode";
import snippets from "../../syntaxes/cutwork.snippets.json";
import { languageId } from "./units";

/** `cutwork.newUnit`: an untitled unit that holds the starter, ready to be overwritten place by place. */
export function startUnits(): vscode.Disposable {
  return vscode.commands.registerCommand("cutwork.newUnit", async () => {
    const document = await vscode.workspace.openTextDocument({ language: languageId });
    const editor = await vscode.window.showTextDocument(document);
    await editor.insertSnippet(new vscode.SnippetString(snippets.Unit.body.join("\n")));
  });
}
