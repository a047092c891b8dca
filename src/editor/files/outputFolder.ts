import * as vscode from "vscode";
import type { OutputFolder } from "../../make/whole-files";
import { folderOf } from "../units";
import { isAbsolute } from "./paths";

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
  let making: Promise<readonly vscode.Uri[]> | undefined;
  return {
    names: async () => (await files.readDirectory(folder)).map(([name]) => name),
    write: async (name, bytes) => {
      making ??= makeFolder(folder);
      await making;
      await files.writeFile(at(name), bytes);
    },
    rename: async (from, to) => {
      // Only a file may step aside for another one.
      if (((await files.stat(at(from))).type & vscode.FileType.Directory) !== 0) throw new Error("it is a folder.");
      await files.rename(at(from), at(to), { overwrite: true });
    },
    remove: async (name) => files.delete(at(name)),
    unmake: async () => {
      const made = (await making) ?? [];
      making = undefined;
      for (const each of made) {
        if ((await files.readDirectory(each)).length > 0) return;
        await files.delete(each);
      }
    },
  };
}

/** Makes a folder and those above it that are missing; resolves to all that it made, the innermost first. */
async function makeFolder(folder: vscode.Uri): Promise<readonly vscode.Uri[]> {
  const missing: vscode.Uri[] = [];
  for (let at = folder; ; at = vscode.Uri.joinPath(at, "..")) {
    const there = await vscode.workspace.fs.stat(at).then(
      () => true,
      () => false,
    );
    if (there || at.path === vscode.Uri.joinPath(at, "..").path) break;
    missing.push(at);
  }
  await vscode.workspace.fs.createDirectory(folder);
  return missing;
}
