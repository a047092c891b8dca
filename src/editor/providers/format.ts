import * as vscode from "vscode";
import { formatUnit } from "../language/format/format";
import { toRange, unitSelector } from "../units";

/** “Format Document”, by the command, on saving or on pasting as the settings say. */
export function formatUnits(): vscode.Disposable {
  return vscode.languages.registerDocumentFormattingEditProvider(unitSelector, {
    provideDocumentFormattingEdits: (document) =>
      formatUnit(document.getText()).map(({ range, text }) => vscode.TextEdit.replace(toRange(document, range), text)),
  });
}
