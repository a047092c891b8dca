import { mkdir, readdir, rename, rm, rmdir, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { NotWritten, type OutputFolder, writeWhole as writeAll } from "../make/whole-files";
import type { MadeFile } from "../make/workshop";
import { reason } from "./units";
import { FileError } from "./usage";

/** What may end the command from outside. */
const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/**
 * Writes all files or none: where one cannot be written, or a signal such as Ctrl-C comes meanwhile, everything is as it was
 * before. Throws a FileError that names the file; ends the process by the signal.
 */
export async function writeWhole(folder: string, files: readonly MadeFile[]): Promise<void> {
  let signal: NodeJS.Signals | undefined;
  const note = (each: NodeJS.Signals): void => {
    signal = each;
  };
  for (const each of signals) process.on(each, note);
  const made: string[] = [];
  try {
    await makeFolder(folder, made);
    await writeAll(outputFolder(folder, made), files, () => {
      if (signal) throw new Error("the command was ended.");
    });
  } catch (error) {
    if (signal) return;
    if (!(error instanceof NotWritten)) await unmake(made);
    const [at, cause] = error instanceof NotWritten ? [path.join(folder, error.file), error.cause] : [folder, error];
    throw new FileError(`${at} cannot be written: ${reason(cause)}`);
  } finally {
    for (const each of signals) process.off(each, note);
    // Nobody listens any more: this ends the process, as the signal would have done.
    if (signal) process.kill(process.pid, signal);
  }
}

/** A folder that is there; `made` are those that were made for it, the innermost last. */
function outputFolder(folder: string, made: string[]): OutputFolder {
  const at = (name: string): string => path.join(folder, name);
  return {
    names: () => readdir(folder),
    write: (name, bytes) => writeFile(at(name), bytes),
    rename: async (from, to) => {
      // Only a file may step aside for another one.
      if ((await stat(at(from))).isDirectory()) throw new Error("it is a folder.");
      await rename(at(from), at(to));
    },
    remove: (name) => rm(at(name)),
    unmake: () => unmake(made),
  };
}

/** Takes folders away again; one in which something stands stays. */
async function unmake(made: string[]): Promise<void> {
  for (const each of made.splice(0).reverse()) await rmdir(each).catch(() => undefined);
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
