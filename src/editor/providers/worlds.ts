import * as vscode from "vscode";
import { foreignPaths } from "../../activities/plan";
import { readUnit } from "../../unit/read";
import type { Unit } from "../../unit/unit";
import { insidePath, pathFrom } from "../files/paths";
import type { World } from "../language/names/named";
import { folderOf, isUnit, placeIn } from "../units";
import type { Parsed } from "./parsed";

/** Files beyond these are not looked through for names. */
const mostFiles = 300;
const unitFiles = "**/*.unit.md";
/** A larger file is no unit that anyone wrote. */
const mostBytes = 4 * 1024 * 1024;

/** A section of a unit of the workspace. */
export interface LyingSection {
  readonly unit: vscode.Uri;
  readonly name: string;
  readonly place: vscode.Range;
}

interface Kept {
  readonly stamp: string;
  readonly text: string;
  unit?: Unit;
}

/** The units that a unit names or that name it: as they stand in the editor, else as they lie in the workspace. */
export class Worlds {
  private readonly kept = new Map<string, Kept>();
  private readonly decoder = new TextDecoder();

  constructor(private readonly parsed: Parsed) {}

  /** A unit with those that its activities take sections from. */
  async around(document: vscode.TextDocument): Promise<World> {
    const own = this.parsed.unit(document);
    const places = foreignPaths(own).flatMap((path) => placeOf(document.uri, path) ?? []);
    return worldOf([[document.uri, own], ...(await this.load(places))]);
  }

  /** The same with every unit of the workspace that may name one of `files`. */
  async naming(document: vscode.TextDocument, files: readonly string[]): Promise<World> {
    const paths = files.map((file) => vscode.Uri.parse(file).path);
    const names = paths.map((path) => path.slice(path.lastIndexOf("/") + 1));
    const open = vscode.workspace.textDocuments.filter(isUnit).map(({ uri }) => uri);
    const lying = await filesLike(unitFiles);
    const near = await this.around(document);
    const loaded = await this.load([...open, ...lying], (text) => names.some((name) => text.includes(name)));
    const known = [...near.units].map(([key, unit]): [vscode.Uri, Unit] => [vscode.Uri.parse(key), unit]);
    return worldOf([...loaded, ...known]);
  }

  /** The other units that a unit can name, by their paths as written there, nearest first; with the sections of one. */
  async beside({ uri }: vscode.TextDocument, wanted?: string): Promise<Map<string, readonly string[] | undefined>> {
    const paths = await pathsFrom(uri, unitFiles);
    const found = new Map<string, readonly string[] | undefined>(paths.map((path) => [path, undefined]));
    const place = wanted === undefined ? undefined : placeOf(uri, wanted);
    const [loaded] = place ? await this.load([place]) : [];
    if (wanted !== undefined && loaded) found.set(wanted, loaded[1].sections.map(({ name }) => name).filter(Boolean));
    return found;
  }

  /** All units of the workspace. */
  async all(): Promise<readonly (readonly [vscode.Uri, Unit])[]> {
    return this.load(await filesLike(unitFiles));
  }

  /** The sections of all units of the workspace. */
  async allSections(): Promise<readonly LyingSection[]> {
    return (await this.all()).flatMap(([unit, { sections, lines }]) =>
      sections.flatMap(({ name, heading }): LyingSection[] => {
        return name === "" ? [] : [{ unit, name, place: placeIn(lines, heading) }];
      }),
    );
  }

  private async load(
    places: readonly vscode.Uri[],
    wanted: (text: string) => boolean = () => true,
  ): Promise<readonly [vscode.Uri, Unit][]> {
    const loaded = await Promise.all(
      places.map(async (place): Promise<readonly [vscode.Uri, Unit][]> => {
        const open = vscode.workspace.textDocuments.find(({ uri }) => uri.toString() === place.toString());
        // VS Code holds documents of files that are gone.
        if (open?.isDirty) return wanted(open.getText()) ? [[place, this.openUnit(open)]] : [];
        const kept = await this.read(place);
        if (!kept || !wanted(kept.text)) return [];
        kept.unit ??= readUnit(kept.text);
        return [[place, kept.unit]];
      }),
    );
    return loaded.flat();
  }

  private openUnit(document: vscode.TextDocument): Unit {
    return isUnit(document) ? this.parsed.unit(document) : readUnit(document.getText());
  }

  private async read(place: vscode.Uri): Promise<Kept | undefined> {
    const key = place.toString();
    try {
      const { mtime, size } = await vscode.workspace.fs.stat(place);
      if (size > mostBytes) return undefined;
      const stamp = `${mtime}:${size}`;
      const known = this.kept.get(key);
      if (known?.stamp === stamp) return known;
      const kept = { stamp, text: this.decoder.decode(await vscode.workspace.fs.readFile(place)) };
      this.kept.set(key, kept);
      return kept;
    } catch {
      this.kept.delete(key);
      return undefined;
    }
  }
}

function filesLike(glob: string): Thenable<vscode.Uri[]> {
  return vscode.workspace.findFiles(glob, "**/node_modules/**", mostFiles);
}

/** Files of the workspace as a unit writes them, nearest first, without the unit itself; none for one that was never saved. */
export async function pathsFrom(unit: vscode.Uri, glob: string): Promise<readonly string[]> {
  const folder = folderOf(unit);
  const places = folder ? await filesLike(glob) : [];
  const paths = places.flatMap((place) => {
    const path = folder && place.toString() !== unit.toString() ? pathFrom(folder.path, place.path) : undefined;
    return path !== undefined && placeOf(unit, path)?.toString() === place.toString() ? [path] : [];
  });
  return paths.sort(byNearness);
}

/** Files in the same folder come first. */
function byNearness(one: string, other: string): number {
  const steps = (path: string): number => path.split("/").length;
  return steps(one) - steps(other) || one.localeCompare(other);
}

function worldOf(units: readonly (readonly [vscode.Uri, Unit])[]): World {
  return {
    units: new Map(units.map(([uri, unit]) => [uri.toString(), unit])),
    resolve: (file, path) => placeOf(vscode.Uri.parse(file), path)?.toString(),
  };
}

/** Where a path written in a unit leads, within the workspace. */
export function placeOf(unit: vscode.Uri, path: string): vscode.Uri | undefined {
  const folder = folderOf(unit);
  if (!folder) return undefined;
  const root = vscode.workspace.getWorkspaceFolder(unit)?.uri ?? folder;
  const inside = insidePath(root.path, folder.path, path);
  return inside === undefined ? undefined : folder.with({ path: inside });
}
