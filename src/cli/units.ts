import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { settingsNames } from "../make/settings-files";
import { openWorkshop, type Reading, type Surroundings, type Workshop } from "../make/workshop";
import { FileError } from "./usage";

/** How the names of pieces files end. */
export const pieceFilesEnding = ".pieces.json";

/** Opens the engine with the assets beside the command. */
export async function openEngine(): Promise<Workshop> {
  const asset = async (name: string): Promise<Uint8Array> => readFile(path.join(__dirname, "assets", name));
  const [harfbuzz, harfbuzzSubset, regular, bold, italic, boldItalic] = await Promise.all([
    asset("harfbuzz.wasm"),
    asset("harfbuzz-subset.wasm"),
    asset("regular.ttf"),
    asset("bold.ttf"),
    asset("italic.ttf"),
    asset("boldItalic.ttf"),
  ]);
  return openWorkshop({ harfbuzz, harfbuzzSubset, fonts: { regular, bold, italic, boldItalic } });
}

/** A unit file's base name without `.unit.md` (or `.md`). */
export function unitName(file: string): string {
  return path.basename(file).replace(/(\.unit)?\.md$/i, "");
}

/** Reads a file, “-” being standard input, with what lies around it. Rejects with a FileError where it cannot be read. */
export async function readUnitFile(workshop: Workshop, file: string, out?: string): Promise<Reading> {
  const text = file === "-" ? await standardInput() : await fileText(file);
  const name = file === "-" ? "stdin" : unitName(file);
  const folder = file === "-" ? process.cwd() : path.dirname(path.resolve(file));
  const units = await otherUnits(folder, workshop.needs(text).units);
  const around: Surroundings = {
    settings: await settings(folder),
    units,
    pictures: await pictures(folder, workshop.needs(text, units).pictures),
    ...(out === undefined ? { neighbours: [] } : await printed(out, name)),
  };
  return workshop.read({ name, text }, around);
}

async function fileText(file: string): Promise<string> {
  try {
    return decode(file, await readFile(file));
  } catch (error) {
    throw error instanceof FileError ? error : new FileError(`${file} cannot be read: ${await unread(file, error)}`);
  }
}

/** Why a file cannot be read. A folder is read as the units in it: that it is one says that there are none. */
async function unread(file: string, error: unknown): Promise<string> {
  if (!(error instanceof Error && "code" in error && error.code === "EISDIR")) return reason(error);
  return readdir(file).then(() => "it is a folder without a unit, a file whose name ends in “.unit.md”.", reason);
}

async function standardInput(): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk);
  return decode("Standard input", Buffer.concat(chunks));
}

/** The text without a byte order mark, as editors count columns. */
function decode(name: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new FileError(`${name} is not UTF-8 text.`);
  }
}

/** The settings files, the nearest first, from the unit's folder up to the working directory. */
async function settings(folder: string): Promise<Surroundings["settings"]> {
  const top = process.cwd();
  const found: { path: string; text: string }[] = [];
  for (let at = folder; ; at = path.dirname(at)) {
    for (const name of settingsNames) {
      const file = path.join(at, name);
      const text = await readFile(file, "utf8").catch(() => undefined);
      if (text !== undefined) found.push({ path: path.relative(top, file) || file, text });
    }
    if (at === top || !at.startsWith(`${top}${path.sep}`)) return found;
  }
}

/** Other units beside the unit. */
async function otherUnits(folder: string, paths: readonly string[]): Promise<Map<string, string>> {
  const files = await filesBeside(folder, paths);
  return new Map([...files].map(([name, bytes]) => [name, decode(name, bytes)]));
}

/** Pictures beside the unit. */
const pictures = (folder: string, paths: readonly string[]): Promise<Map<string, Uint8Array>> =>
  filesBeside(folder, paths);

/** Files at or below the unit's folder or the working directory. Others are left out, so that they become findings. */
async function filesBeside(folder: string, paths: readonly string[]): Promise<Map<string, Uint8Array>> {
  const found = new Map<string, Uint8Array>();
  for (const name of paths) {
    const full = path.resolve(folder, name);
    const inside = [folder, process.cwd()].some((place) => full.startsWith(`${place}${path.sep}`));
    if (!inside || /^[a-z][a-z0-9+.-]*:/i.test(name)) continue;
    try {
      found.set(name, await readFile(full));
    } catch {
      // Not there: the finding says so at its place.
    }
  }
  return found;
}

/** The pieces files of the output folder: this unit's own and its neighbours'. */
async function printed(out: string, name: string): Promise<Pick<Surroundings, "pieces" | "neighbours">> {
  const suffix = pieceFilesEnding;
  const names = await readdir(out).catch(() => []);
  const neighbours: { name: string; text: string }[] = [];
  let pieces: string | undefined;
  for (const file of names.filter((each) => each.endsWith(suffix)).sort()) {
    const text = await readFile(path.join(out, file), "utf8").catch(() => undefined);
    if (text === undefined) continue;
    const unit = file.slice(0, -suffix.length);
    if (unit === name) pieces = text;
    else neighbours.push({ name: unit, text });
  }
  return { neighbours, ...(pieces === undefined ? {} : { pieces }) };
}

export function reason(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const code = "code" in error ? error.code : undefined;
  if (code === "ENOENT") return "it is not there.";
  if (code === "EISDIR") return "it is a folder.";
  if (code === "EACCES" || code === "EPERM") return "permission is denied.";
  return error.message;
}
