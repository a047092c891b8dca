import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { inProject } from "./project.mjs";

/** Packages whose bytes reach `dist` as assets, which no bundle lists. */
const assetPackages = ["harfbuzzjs", "@expo-google-fonts/noto-sans"];

const licenceFile = /^(licen[cs]e|copying|copyrightnotice)([-._].*)?$/i;

/**
 * The package folders under node_modules that bundles took code from, by esbuild's metafiles.
 * A nested package counts for itself: `node_modules/a/node_modules/b`.
 */
export function packagesIn(metafiles) {
  const folders = new Set(assetPackages.map((name) => `node_modules/${name}`));
  for (const { outputs } of metafiles)
    for (const { inputs } of Object.values(outputs))
      for (const [input, { bytesInOutput }] of Object.entries(inputs)) {
        const folder = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
        if (folder !== undefined && bytesInOutput > 0) folders.add(folder);
      }
  return [...folders].sort();
}

/**
 * The notice that the licences of bundled packages ask for: name, version and licence text of each.
 * Throws where a package carries no licence text, since then it must not be shipped.
 */
export async function thirdPartyNotice(metafiles) {
  const parts = [];
  const folders = packagesIn(metafiles);
  // The written-out validators hold ajv's run-time helpers.
  if (!folders.includes("node_modules/ajv")) folders.push("node_modules/ajv");
  for (const folder of folders.sort()) {
    const { name, version, license } = JSON.parse(await readFile(inProject(folder, "package.json"), "utf8"));
    const texts = (await readdir(inProject(folder))).filter((file) => licenceFile.test(file)).sort();
    if (texts.length === 0) throw new Error(`${name} has no licence text in ${folder}`);
    const bodies = await Promise.all(texts.map((file) => readFile(path.join(inProject(folder), file), "utf8")));
    const rule = "=".repeat(80);
    const terms = typeof license === "string" ? license : "see below";
    parts.push(
      `${rule}\n${name} ${version} (${terms})\n${rule}\n\n${bodies.map((text) => text.trim()).join("\n\n")}\n`,
    );
  }
  return `Cutwork contains the following third-party software and fonts.\n\n${parts.join("\n")}`;
}

/** The licence of the bundled faces. */
export async function fontLicence() {
  const file = inProject("node_modules/@expo-google-fonts/noto-sans/LICENSE_FONT");
  if (!existsSync(file)) throw new Error(`no font licence at ${file}`);
  return readFile(file, "utf8");
}
