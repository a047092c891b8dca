import { existsSync } from "node:fs";
import { readdir, rm, stat } from "node:fs/promises";
import path from "node:path";
import { ensureInstalled, inProject, main, node, root, Stop } from "./project.mjs";

/*
 * npm run demo: from a fresh clone to paper. Installs and builds what is needed, checks every unit of samples/ and makes its
 * files in out/, with the built command line as anyone would call it.
 */

const cli = inProject("dist/cli.js");
const out = "out";

async function demo() {
  await ensureInstalled();
  const { bundle } = await import("./bundle.mjs");
  await bundle();
  if (!existsSync(cli)) throw new Stop("dist/cli.js was not built");

  const units = (await filesUnder("samples")).filter((file) => file.endsWith(".unit.md"));
  if (units.length === 0) throw new Stop("no unit in samples/");

  await rm(inProject(out), { recursive: true, force: true });
  for (const unit of units) {
    const target = path.join(out, path.dirname(path.relative("samples", unit)));
    await cutwork("check", unit);
    await cutwork("make", unit, "--out", target);
  }
  await listWritten();
}

/** Runs the command line where a person can see what was asked. Findings (exit code 1) are for reading, not a failure. */
async function cutwork(...args) {
  console.log(`\n$ cutwork ${args.join(" ")}`);
  const code = await node(cli, ...args);
  if (code > 1) throw new Stop(`that ended with ${code}`);
}

async function listWritten() {
  const files = existsSync(inProject(out)) ? await filesUnder(out) : [];
  if (files.length === 0) throw new Stop("nothing was written");
  console.log(`\nWritten to ${out}/:`);
  for (const file of files) {
    const { size } = await stat(inProject(file));
    console.log(`${String(Math.max(1, Math.round(size / 1024))).padStart(7)} KB  ${file}`);
  }
}

/** All files in a folder of the checkout, by their path from its top, sorted. */
async function filesUnder(folder) {
  const entries = await readdir(inProject(folder), { recursive: true, withFileTypes: true }).catch(() => []);
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(root, path.join(entry.parentPath ?? entry.path, entry.name)))
    .sort();
}

await main(demo);
