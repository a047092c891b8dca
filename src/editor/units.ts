import * as vscode from "vscode";
import type { LineIndex, Range } from "../base/range";

export const languageId = "cutwork";

/** Every document in Cutwork's language, saved or not, local or virtual. */
export const unitSelector: vscode.DocumentSelector = { language: languageId };

export function isUnit(document: vscode.TextDocument): boolean {
  return document.languageId === languageId;
}

/** `food.unit.md` and `food.md` are both `food`. */
export function unitName(uri: vscode.Uri): string {
  const base = uri.path.slice(uri.path.lastIndexOf("/") + 1);
  return base.replace(/(\.unit)?\.md$/i, "") || base;
}

/** The folder of a saved document; undefined for one that was never saved. */
export function folderOf(uri: vscode.Uri): vscode.Uri | undefined {
  return uri.scheme === "untitled" ? undefined : vscode.Uri.joinPath(uri, "..");
}

export function toRange(document: vscode.TextDocument, span: Range): vscode.Range {
  return new vscode.Range(document.positionAt(span.start), document.positionAt(span.end));
}

/** A place in a text that may not be open. */
export function placeIn(lines: LineIndex, span: Range): vscode.Range {
  const { start, end } = lines.lsp(span);
  return new vscode.Range(start.line, start.character, end.line, end.character);
}

/** The unit that a command is meant for: the one it was called on, or the one in front. */
export async function unitFor(target: unknown): Promise<vscode.TextDocument | undefined> {
  if (target instanceof vscode.Uri) return vscode.workspace.openTextDocument(target);
  const active = vscode.window.activeTextEditor?.document;
  if (active && isUnit(active)) return active;
  return vscode.window.visibleTextEditors.map((editor) => editor.document).find(isUnit);
}

/** A failure in words. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
