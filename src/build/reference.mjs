import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { inProject, main, root, Stop } from "./project.mjs";
import { generateValidators } from "./validators.mjs";

/*
 * The pages in reference/ are made from the rules and the schemas.
 *
 *   node src/build/reference.mjs          writes them
 *   node src/build/reference.mjs --check  fails where they are stale
 */

/** Name and text of every page, from the source as it stands. */
async function pages() {
  const { build } = await import("esbuild");
  await generateValidators();
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: ["src/check/reference.ts"],
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    target: "node20",
    logLevel: "warning",
  });
  const code = Buffer.from(outputFiles[0].contents).toString("base64");
  const { referencePages } = await import(`data:text/javascript;base64,${code}`);
  return referencePages();
}

export async function writeReference(folder = inProject("reference")) {
  const made = await pages();
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  for (const [name, text] of made) await writeFile(path.join(folder, name), text);
  return [...made.keys()];
}

/** Throws a Stop that names the pages that are missing, stale or left over. */
export async function checkReference(folder = inProject("reference")) {
  const made = await pages();
  const there = await readdir(folder).catch(() => []);
  const stale = [];
  for (const [name, text] of made) {
    const now = await readFile(path.join(folder, name), "utf8").catch(() => undefined);
    if (now !== text) stale.push(name);
  }
  stale.push(...there.filter((name) => !made.has(name)));
  if (stale.length > 0) throw new Stop(`reference/ is stale (${stale.join(", ")}): run npm run generate`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  await main(async () => {
    if (process.argv.includes("--check")) await checkReference();
    else console.log(`wrote ${(await writeReference()).length} pages to reference/`);
  });
