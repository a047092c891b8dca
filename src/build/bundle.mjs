import { existsSync, readFileSync } from "node:fs";
import { chmod, copyFile, mkdir, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { inProject, main, root, Stop } from "./project.mjs";

/*
 * src/ -> dist/, everything that the packed extension and the command line need at run time.
 *
 *   node src/build/bundle.mjs [--production] [--strict]
 *
 * `--production` minifies and leaves source maps out; `--strict` fails where an entry point is missing.
 */

const hasShebang = (file) => existsSync(inProject(file)) && readFileSync(inProject(file), "utf8").startsWith("#!");

const firstPresent = (...files) => files.find((file) => existsSync(inProject(file))) ?? files.at(-1);

/** What is bundled: entry, output, and what is special about it. */
const bundles = () => [
  {
    entry: "src/editor/extension.ts",
    out: "dist/extension.js",
    options: { platform: "node", format: "cjs", target: "node20", external: ["vscode"] },
  },
  {
    entry: firstPresent("src/editor/extension.web.ts", "src/editor/extension.ts"),
    out: "dist/web/extension.js",
    options: { platform: "browser", format: "cjs", target: "es2022", external: ["vscode"] },
  },
  {
    entry: "src/cli/main.ts",
    out: "dist/cli.js",
    options: {
      platform: "node",
      format: "cjs",
      target: "node20",
      banner: hasShebang("src/cli/main.ts") ? {} : { js: "#!/usr/bin/env node" },
    },
    executable: true,
  },
  {
    entry: "src/webview/main.ts",
    out: "dist/webview.js",
    options: { platform: "browser", format: "iife", target: "es2022" },
  },
  { entry: "src/webview/main.css", out: "dist/webview.css", options: { target: "chrome120" }, optional: true },
];

const face = (weight) => `node_modules/@expo-google-fonts/noto-sans/${weight}/NotoSans_${weight}.ttf`;

/** Copied as they are into dist/assets. */
const assets = {
  "harfbuzz.wasm": "node_modules/harfbuzzjs/dist/harfbuzz.wasm",
  "harfbuzz-subset.wasm": "node_modules/harfbuzzjs/dist/harfbuzz-subset.wasm",
  "regular.ttf": face("400Regular"),
  "bold.ttf": face("700Bold"),
  "italic.ttf": face("400Regular_Italic"),
  "boldItalic.ttf": face("700Bold_Italic"),
};

/** Builds everything into `dist`. A missing entry point is noted, or an error where `strict` is set. */
export async function bundle({ production = false, strict = false } = {}) {
  const { build } = await import("esbuild");
  const { generateValidators } = await import("./validators.mjs");
  const { fontLicence, thirdPartyNotice } = await import("./notices.mjs");

  await generateValidators();
  const { checkReference } = await import("./reference.mjs");
  await checkReference();
  if (production) await rm(inProject("dist"), { recursive: true, force: true });

  const present = bundles().filter(({ entry, optional }) => {
    if (existsSync(inProject(entry))) return true;
    if (strict && !optional) throw new Stop(`the entry point ${entry} is missing`);
    if (!optional) console.log(`skipped: no ${entry} yet`);
    return false;
  });
  const metafiles = await Promise.all(
    present.map(async ({ entry, out, options, executable }) => {
      const { metafile } = await build({
        absWorkingDir: root,
        entryPoints: [entry],
        outfile: out,
        bundle: true,
        minify: production,
        sourcemap: production ? false : "linked",
        sourcesContent: false,
        legalComments: "none",
        metafile: true,
        charset: "utf8",
        logLevel: "warning",
        define: { "process.env.NODE_ENV": JSON.stringify(production ? "production" : "development") },
        ...options,
      });
      if (executable) await chmod(inProject(out), 0o755);
      return metafile;
    }),
  );

  await mkdir(inProject("dist/assets"), { recursive: true });
  for (const [name, from] of Object.entries(assets)) await copyFile(inProject(from), inProject("dist/assets", name));
  await writeFile(inProject("dist/assets/OFL.txt"), await fontLicence());
  await writeFile(inProject("dist/THIRD-PARTY.txt"), await thirdPartyNotice(metafiles));

  for (const { out } of present) console.log(`built ${out} (${size(out)})`);
  console.log(`built dist/assets (${Object.keys(assets).length} files)`);
}

const size = (file) => `${Math.ceil(readFileSync(path.join(root, file)).length / 1024)} KB`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  await main(() =>
    bundle({ production: process.argv.includes("--production"), strict: process.argv.includes("--strict") }),
  );
