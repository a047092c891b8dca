import { readdir, realpath, stat } from "node:fs/promises";
import path from "node:path";
import { UsageError } from "./usage";

const unitEnding = /\.unit\.md$/i;

/**
 * The files that a call names, in its order, each once however it is spelled. A folder stands for all units in it and below it,
 * a name with `*`, `?` or `**` for the units that it fits, since shells of Windows pass it on as it is. What stands for no unit
 * stays as it was written, so that reading it says what is wrong.
 */
export async function namedFiles(names: readonly string[]): Promise<string[]> {
  // Such as a variable of a script that is not set.
  if (names.includes("")) throw new UsageError("One of the files has an empty name.");
  const files: string[] = [];
  for (const name of names) files.push(...(await standsFor(name)));
  const places = files.map((file) => (file === "-" ? file : path.resolve(file)));
  return files.filter((_, i) => places.indexOf(places[i] ?? "") === i);
}

async function standsFor(name: string): Promise<readonly string[]> {
  if (name === "-") return [name];
  const found = (await kindOf(name)) ?? (/[*?]/.test(name) ? "pattern" : "file");
  if (found === "file") return [name];
  const units = found === "folder" ? await unitsBelow(name) : await unitsLike(name);
  return units.length > 0 ? units : [name];
}

async function kindOf(name: string): Promise<"file" | "folder" | undefined> {
  return stat(name).then(
    (there) => (there.isDirectory() ? "folder" : "file"),
    () => undefined,
  );
}

/**
 * All units in a folder and up to `depth` folders below it, by name. What is hidden and folders of packages are left out; a folder
 * that links lead to is looked into once. What cannot be looked into is named itself.
 */
async function unitsBelow(
  folder: string,
  depth = Number.POSITIVE_INFINITY,
  seen = new Set<string>(),
): Promise<string[]> {
  const real = await realpath(folder).catch(() => folder);
  if (seen.has(real)) return [];
  seen.add(real);
  const names = await readdir(folder).catch(() => undefined);
  if (!names) return [folder];
  const units: string[] = [];
  for (const name of names.sort()) {
    const full = path.join(folder, name);
    if (name.startsWith(".") || name === "node_modules") continue;
    const kind = await kindOf(full);
    if (kind !== "folder") units.push(...(unitEnding.test(name) ? [full] : []));
    else if (depth > 0) units.push(...(await unitsBelow(full, depth - 1, seen)));
  }
  return units;
}

/** The units that a pattern fits. */
async function unitsLike(pattern: string): Promise<string[]> {
  const [fixed, parts] = parted(pattern);
  const fits = new RegExp(`^${expressionOf(parts)}$`, path.sep === "\\" ? "iu" : "u");
  const top = fixed || ".";
  if ((await kindOf(top)) !== "folder") return [];
  const depth = parts.includes("**") ? undefined : parts.length - 1;
  const found = await unitsBelow(top, depth);
  return found.filter(
    (unit) => !unitEnding.test(unit) || fits.test(path.relative(top, unit).split(path.sep).join("/")),
  );
}

/** The folder above the first part that has a sign of a pattern, and that part with those behind it. */
function parted(pattern: string): readonly [string, readonly string[]] {
  const parts = (path.sep === "\\" ? pattern.replaceAll("\\", "/") : pattern).split("/");
  const first = parts.findIndex((part) => /[*?]/.test(part));
  const fixed = parts.slice(0, first).join("/");
  // The top of everything, or of a drive of Windows.
  const top = first > 0 && (fixed === "" || /^[a-z]:$/i.test(fixed)) ? `${fixed}/` : fixed;
  return [top, parts.slice(first)];
}

/** `**` fits any number of folders, `*` any part of a name, `?` one sign of it. */
function expressionOf(parts: readonly string[]): string {
  return parts
    .map((part, i) => {
      const isLast = i === parts.length - 1;
      if (part === "**") return isLast ? ".*" : "(?:[^/]+/)*";
      const name = part
        .replace(/[\\^$.+()[\]{}|/-]/g, "\\$&")
        .replace(/\*+/g, "[^/]*")
        .replaceAll("?", "[^/]");
      return isLast ? name : `${name}/`;
    })
    .join("");
}
