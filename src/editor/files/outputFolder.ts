import * as vscode from "vscode";
import { folderOf } from "../units";
import { isAbsolute } from "./paths";
import type { OutputFolder } from "./wholeFiles";

/** Where a unit's PDFs go, from the setting `cutwork.outputFolder`; undefined for a unit that was never saved. */
export function outputFolderOf(unit: vscode.Uri): vscode.Uri | undefined {
  const folder = folderOf(unit);
  if (!folder) return undefined;
  const setting = vscode.workspace.getConfiguration("cutwork", unit).get<string>("outputFolder")?.trim() || "out";
  if (!isAbsolute(setting)) return vscode.Uri.joinPath(folder, setting);
  return unit.scheme === "file" ? vscode.Uri.file(setting) : unit.with({ path: setting.replaceAll("\\", "/") });
}

/** The folder as the writer sees it; it and the folders above it are made on the first write. */
export function writable(folder: vscode.Uri): OutputFolder {
  const files = vscode.workspace.fs;
  const at = (name: string): vscode.Uri => vscode.Uri.joinPath(folder, name);
  let made: Thenable<void> | undefined;
  return {
    names: async () => (await files.readDirectory(folder)).map(([name]) => name),
    write: async (name, bytes) => {
      made ??= files.createDirectory(folder);
      await made;
      await files.writeFile(at(name), bytes);
    },
    rename: async (from, to) => files.rename(at(from), at(to), { overwrite: true }),
    remove: async (name) => files.delete(at(name)),
  };
}
