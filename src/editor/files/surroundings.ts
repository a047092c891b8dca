import * as vscode from "vscode";
import type { Surroundings } from "../../make/workshop";
import { folderOf, unitName } from "../units";
import { outputFolderOf } from "./outputFolder";
import { insidePath, upwards } from "./paths";

const settingsName = "cutwork.yml";
const piecesEnding = ".pieces.json";
/** Larger files are not read: a picture for a tile has no use for more, and a pieces file never gets there. */
const mostBytes = 64 * 1024 * 1024;

interface Kept {
  readonly stamp: string;
  readonly bytes: Uint8Array;
}

/**
 * Reads what lies around units: settings upwards, pictures, the pieces files of the output folder. A file that did not change
 * since it was last asked for is not read again. What is missing or out of bounds is left out; the engine says so.
 */
export class Neighbourhood {
  private readonly kept = new Map<string, Kept>();
  private readonly decoder = new TextDecoder();

  async around(unit: vscode.Uri, pictures: readonly string[]): Promise<Surroundings> {
    const folder = folderOf(unit);
    if (!folder) return { settings: [], pictures: new Map(), neighbours: [] };
    const root = vscode.workspace.getWorkspaceFolder(unit)?.uri ?? folder;
    const [settings, pictureBytes, pieces] = await Promise.all([
      this.settings(root, folder),
      this.pictures(root, folder, pictures),
      this.pieces(unit),
    ]);
    return { settings, pictures: pictureBytes, ...pieces };
  }

  private async settings(root: vscode.Uri, folder: vscode.Uri): Promise<Surroundings["settings"]> {
    const places = upwards(root.path, folder.path).map((path) =>
      vscode.Uri.joinPath(folder.with({ path }), settingsName),
    );
    const texts = await Promise.all(places.map((place) => this.text(place)));
    return places.flatMap((place, index) => {
      const text = texts[index];
      return text === undefined ? [] : [{ path: vscode.workspace.asRelativePath(place), text }];
    });
  }

  private async pictures(
    root: vscode.Uri,
    folder: vscode.Uri,
    written: readonly string[],
  ): Promise<Surroundings["pictures"]> {
    const found = new Map<string, Uint8Array>();
    await Promise.all(
      written.map(async (name) => {
        const path = insidePath(root.path, folder.path, name);
        const bytes = path === undefined ? undefined : await this.bytes(folder.with({ path }));
        if (bytes) found.set(name, bytes);
      }),
    );
    // In the order that they were asked for, whichever came first.
    return new Map(
      written.flatMap((name) => {
        const bytes = found.get(name);
        return bytes ? [[name, bytes]] : [];
      }),
    );
  }

  private async pieces(unit: vscode.Uri): Promise<Pick<Surroundings, "pieces" | "neighbours">> {
    const out = outputFolderOf(unit);
    if (!out) return { neighbours: [] };
    const names = await entriesOf(out);
    const own = `${unitName(unit)}${piecesEnding}`;
    const read = await Promise.all(
      names
        .filter((name) => name.endsWith(piecesEnding) && !name.startsWith("."))
        .sort()
        .map(async (name) => ({ name, text: await this.text(vscode.Uri.joinPath(out, name)) })),
    );
    const neighbours = read.flatMap(({ name, text }) =>
      name === own || text === undefined ? [] : [{ name: name.slice(0, -piecesEnding.length), text }],
    );
    const pieces = read.find(({ name }) => name === own)?.text;
    return pieces === undefined ? { neighbours } : { neighbours, pieces };
  }

  private async text(place: vscode.Uri): Promise<string | undefined> {
    // What is being edited counts as it stands in the editor.
    const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === place.toString());
    if (open) return open.getText();
    const bytes = await this.bytes(place);
    return bytes && this.decoder.decode(bytes);
  }

  private async bytes(place: vscode.Uri): Promise<Uint8Array | undefined> {
    const key = place.toString();
    try {
      const { type, mtime, size } = await vscode.workspace.fs.stat(place);
      if ((type & vscode.FileType.File) === 0 || size > mostBytes) return undefined;
      const stamp = `${mtime}:${size}`;
      const kept = this.kept.get(key);
      if (kept?.stamp === stamp) return kept.bytes;
      const bytes = await vscode.workspace.fs.readFile(place);
      this.kept.set(key, { stamp, bytes });
      return bytes;
    } catch {
      this.kept.delete(key);
      return undefined;
    }
  }
}

async function entriesOf(folder: vscode.Uri): Promise<readonly string[]> {
  try {
    // Asked first, since VS Code logs an error where a folder that is not there is listed.
    await vscode.workspace.fs.stat(folder);
    return (await vscode.workspace.fs.readDirectory(folder)).map(([name]) => name);
  } catch {
    return [];
  }
}
