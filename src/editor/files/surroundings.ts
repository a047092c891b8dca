import * as vscode from "vscode";
import { settingsNames } from "../../make/settings-files";
import { type Needs, nothingAround, type Surroundings } from "../../make/workshop";
import { folderOf, unitName } from "../units";
import { outputFolderOf } from "./outputFolder";
import { insidePath, upwards } from "./paths";

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

  /** `needs` says what to load: first without, then with the texts of the other units that it named. */
  async around(unit: vscode.Uri, needs: (units: ReadonlyMap<string, string>) => Promise<Needs>): Promise<Surroundings> {
    const severities = severitiesFor(unit);
    const folder = folderOf(unit);
    if (!folder) return { ...nothingAround, severities };
    const root = rootOf(unit, folder);
    const units = await this.beside(root, folder, (await needs(new Map())).units, (place) => this.text(place));
    const wanted = await needs(units);
    const [settings, pictures, pieces] = await Promise.all([
      this.settings(unit),
      this.beside(root, folder, wanted.pictures, (place) => this.bytes(place)),
      this.pieces(unit),
    ]);
    return { settings, units, pictures, severities, ...pieces };
  }

  private async settings(unit: vscode.Uri): Promise<Surroundings["settings"]> {
    const places = settingsPlaces(unit);
    const texts = await Promise.all(places.map((place) => this.text(place)));
    return places.flatMap((place, index) => {
      const text = texts[index];
      return text === undefined ? [] : [{ path: shownPath(place), text }];
    });
  }

  /** Files inside the workspace by their path as written, in the order asked for; what is not there is left out. */
  private async beside<Content>(
    root: vscode.Uri,
    folder: vscode.Uri,
    written: readonly string[],
    load: (place: vscode.Uri) => Promise<Content | undefined>,
  ): Promise<Map<string, Content>> {
    const found = await Promise.all(
      written.map(async (name) => {
        const path = insidePath(root.path, folder.path, name);
        return path === undefined ? undefined : load(folder.with({ path }));
      }),
    );
    return new Map(written.flatMap((name, i) => (found[i] === undefined ? [] : [[name, found[i]]])));
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
    // What is being edited counts as it stands in the editor. Else the file does: VS Code holds documents of files that are gone.
    const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === place.toString());
    if (open?.isDirty) return open.getText();
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

/** Where a unit's settings files would be, nearest first. */
export function settingsPlaces(unit: vscode.Uri): readonly vscode.Uri[] {
  const folder = folderOf(unit);
  if (!folder) return [];
  return upwards(rootOf(unit, folder).path, folder.path).flatMap((path) =>
    settingsNames.map((name) => vscode.Uri.joinPath(folder.with({ path }), name)),
  );
}

/** A file's path as it is told to the user. */
export function shownPath(place: vscode.Uri): string {
  return vscode.workspace.asRelativePath(place);
}

/** Nothing above this folder is looked at. */
function rootOf(unit: vscode.Uri, folder: vscode.Uri): vscode.Uri {
  return vscode.workspace.getWorkspaceFolder(unit)?.uri ?? folder;
}

/** How much each finding matters to the user, from the setting `cutwork.severities`. */
function severitiesFor(unit: vscode.Uri): ReadonlyMap<string, string> {
  const setting: unknown = vscode.workspace.getConfiguration("cutwork", unit).get("severities");
  const entries = typeof setting === "object" && setting !== null ? Object.entries(setting) : [];
  return new Map(entries.flatMap(([code, value]) => (typeof value === "string" ? [[code, value]] : [])));
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
