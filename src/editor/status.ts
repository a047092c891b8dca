import * as vscode from "vscode";
import type { Readings } from "./readings";
import { type StatusLine, statusLine } from "./statusLine";
import { isUnit, unitSelector } from "./units";

const severities: Readonly<Record<StatusLine["level"], vscode.LanguageStatusSeverity>> = {
  error: vscode.LanguageStatusSeverity.Error,
  warning: vscode.LanguageStatusSeverity.Warning,
  information: vscode.LanguageStatusSeverity.Information,
};

/** Tells in the language status of the status bar what was found and what is proven. */
export function showStatus(readings: Readings): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem("cutwork.status", unitSelector);
  item.name = "Cutwork";
  item.command = { command: "workbench.actions.view.problems", title: "Show Problems" };

  // A reading that takes more than a moment says what it is at, so that nobody waits in the dark.
  const wait = ({ document, state }: { readonly document: vscode.TextDocument; readonly state: string }): void => {
    if (document !== vscode.window.activeTextEditor?.document) return;
    item.busy = true;
    item.detail = `${state} …`;
  };
  const say = ({ busy, text, detail, level }: StatusLine): void => {
    item.busy = busy;
    item.text = text;
    item.detail = detail;
    item.severity = severities[level];
  };
  const show = (): void => {
    const document = vscode.window.activeTextEditor?.document;
    if (document && isUnit(document)) say(statusLine(readings.last(document.uri)?.reading));
  };
  say(statusLine(undefined));
  return vscode.Disposable.from(
    item,
    readings.onDidPause(wait),
    readings.onDidRead(show),
    vscode.window.onDidChangeActiveTextEditor(show),
  );
}
