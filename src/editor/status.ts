import * as vscode from "vscode";
import { proofInShort } from "./preview/sentences";
import type { Readings } from "./readings";
import { unitSelector } from "./units";

/** Tells in the language status of the status bar what was found and what is proven. */
export function showStatus(readings: Readings): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem("cutwork.status", unitSelector);
  item.name = "Cutwork";
  item.text = "Reading the unit";
  item.busy = true;
  item.command = { command: "workbench.actions.view.problems", title: "Show Problems" };

  // A reading that takes more than a moment says what it is at, so that nobody waits in the dark.
  const wait = ({ document, state }: { readonly document: vscode.TextDocument; readonly state: string }): void => {
    if (document !== vscode.window.activeTextEditor?.document) return;
    item.busy = true;
    item.detail = `${state} …`;
  };
  const show = (): void => {
    const document = vscode.window.activeTextEditor?.document;
    const read = document && readings.last(document.uri);
    if (!read) return;
    const { findings, activities } = read.reading;
    const loud = findings.filter(({ severity }) => severity === "error" || severity === "warning").length;
    item.busy = false;
    item.text = loud === 0 ? "Nothing to mend" : loud === 1 ? "1 thing to mend" : `${loud} things to mend`;
    item.detail = proofInShort(activities.flatMap(({ deals }) => deals.map(({ proof }) => proof)));
    item.severity = findings.some(({ severity }) => severity === "error")
      ? vscode.LanguageStatusSeverity.Error
      : loud > 0
        ? vscode.LanguageStatusSeverity.Warning
        : vscode.LanguageStatusSeverity.Information;
  };
  return vscode.Disposable.from(
    item,
    readings.onDidPause(wait),
    readings.onDidRead(show),
    vscode.window.onDidChangeActiveTextEditor(show),
  );
}
