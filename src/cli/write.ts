import { mkdir, rename, rm, rmdir, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import type { MadeFile } from "../make/workshop";
import { reason } from "./units";
import { FileError } from "./usage";

/**
 * Writes all files under temporary names beside their places, then renames them, so that a good file is never replaced by a
 * broken one. Throws a FileError that names the file; what was temporary is gone then.
 */
export async function writeWhole(folder: string, files: readonly MadeFile[]): Promise<void> {
  const temporary = (name: string): string => path.join(folder, `.${name}.tmp`);
  let at = folder;
  const made: string[] = [];
  try {
    await makeFolder(folder, made);
    for (const { name, bytes } of files) {
      at = path.join(folder, name);
      await writeFile(temporary(name), bytes);
    }
    for (const { name } of files) {
      at = path.join(folder, name);
      await rename(temporary(name), at);
    }
  } catch (error) {
    await Promise.all(files.map(({ name }) => rm(temporary(name), { force: true }).catch(() => undefined)));
    // A folder in which something stands stays.
    for (const each of made.reverse()) await rmdir(each).catch(() => undefined);
    throw new FileError(`${at} cannot be written: ${reason(error)}`);
  }
}

/** Makes a folder and those above it one by one, and adds to `made` what it made: asked for all at once, Node never ends on some file systems (`/proc`). */
async function makeFolder(folder: string, made: string[]): Promise<void> {
  const isFolder = await stat(folder).then(
    (found) => found.isDirectory(),
    () => undefined,
  );
  if (isFolder) return;
  if (isFolder === false) throw new Error("it is a file, not a folder.");
  const above = path.dirname(folder);
  if (above !== folder) await makeFolder(above, made);
  await mkdir(folder).then(
    () => made.push(folder),
    (error: NodeJS.ErrnoException) => {
      if (error.code !== "EEXIST") throw error;
    },
  );
}
