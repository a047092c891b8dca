import { spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** The checkout's top folder. */
export const root = path.resolve(fileURLToPath(new URL("../..", import.meta.url)));

/** An absolute path inside the checkout. */
export const inProject = (...parts) => path.join(root, ...parts);

/** A way for a person to stop reading a stack trace: the message is all there is to say. */
export class Stop extends Error {}

/**
 * Runs a program in the checkout, its output going straight through. Resolves to its exit code; a program that cannot be
 * started rejects.
 */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: ["ignore", "inherit", "inherit"], ...options });
    child.on("error", reject);
    child.on("close", (code, signal) => resolve(code ?? (signal ? 1 : 0)));
  });
}

/** Runs a program and throws where it fails. */
export async function mustRun(command, args, options = {}) {
  const code = await run(command, args, options);
  if (code !== 0) throw new Stop(`${[command, ...args].join(" ")} ended with ${code}`);
}

/** Runs a script of this checkout with this Node. */
export const node = (...args) => run(process.execPath, args);

/** The Node script behind a command that a package installs, for a start without a shell. */
export function binary(packageName, command) {
  const folder = inProject("node_modules", packageName);
  const { bin } = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
  return path.join(folder, typeof bin === "string" ? bin : bin[command]);
}

/**
 * Installs what package-lock.json names, if that is not what node_modules holds. npm notes what it installed in
 * node_modules/.package-lock.json; packages for other platforms are in the one list and not in the other.
 */
export async function ensureInstalled() {
  if (isInstalled()) return;
  console.log("Installing the packages of package-lock.json …");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  await mustRun(npm, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], { shell: process.platform === "win32" });
}

function isInstalled() {
  const stamp = inProject("node_modules", ".package-lock.json");
  if (!existsSync(stamp)) return false;
  const wanted = JSON.parse(readFileSync(inProject("package-lock.json"), "utf8")).packages;
  const present = JSON.parse(readFileSync(stamp, "utf8")).packages;
  return Object.entries(wanted).every(([place, { version, optional, peer }]) => {
    if (place === "") return true;
    const found = present[place];
    return found === undefined ? Boolean(optional || peer) : found.version === version;
  });
}

/** Runs a script's main function; turns a `Stop` into a plain message and any failure into exit code 1. */
export async function main(work) {
  try {
    process.exitCode = (await work()) ?? 0;
  } catch (error) {
    console.error(error instanceof Stop ? error.message : error);
    process.exitCode = 1;
  }
}
