import * as vscode from "vscode";
import { editsAfter } from "../language/moves";
import { placeIn } from "../units";
import type { Worlds } from "./worlds";

/** When a unit, a picture or a folder gets another name or place, the units that name it are changed with it. */
export function followMoves(worlds: Worlds): vscode.Disposable {
  return vscode.workspace.onWillRenameFiles((event) => {
    event.waitUntil(editsFor(worlds, event.files));
  });
}

async function editsFor(
  worlds: Worlds,
  files: readonly { readonly oldUri: vscode.Uri; readonly newUri: vscode.Uri }[],
): Promise<vscode.WorkspaceEdit> {
  const moved = (path: string): string => {
    const file = files.find(({ oldUri }) => path === oldUri.path || path.startsWith(`${oldUri.path}/`));
    return file ? file.newUri.path + path.slice(file.oldUri.path.length) : path;
  };
  const edit = new vscode.WorkspaceEdit();
  for (const [place, unit] of await worlds.all()) {
    const root = vscode.workspace.getWorkspaceFolder(place)?.uri.path;
    if (root === undefined) continue;
    const changes = editsAfter(unit, { root, from: place.path, to: moved(place.path), moved });
    // The edits come before the move: what moves is still where it was.
    for (const { range, text } of changes) edit.replace(place, placeIn(unit.lines, range), text);
  }
  return edit;
}
