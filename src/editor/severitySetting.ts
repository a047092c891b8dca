import * as vscode from "vscode";
import { unknownNames } from "./severityNames";

const setting = "cutwork.severities";

/** Tells once of each thing that the user's setting for severities names although there is no such finding. */
export function checkSeverities(): vscode.Disposable {
  const said = new Set<string>();
  const look = (): void => {
    const message = unknownNames(vscode.workspace.getConfiguration().get(setting));
    if (message === undefined || said.has(message)) return;
    said.add(message);
    const open = "Open the Settings";
    void vscode.window.showWarningMessage(message, open).then((chosen) => {
      if (chosen === open) void vscode.commands.executeCommand("workbench.action.openSettings", setting);
    });
  };
  look();
  return vscode.workspace.onDidChangeConfiguration((event) => {
    if (event.affectsConfiguration(setting)) look();
  });
}
