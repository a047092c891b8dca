import { existsSync, readFileSync } from "node:fs";
import { cp, mkdir, readdir, rm } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { ensureInstalled, inProject, main, root, Stop } from "../../src/build/project.mjs";
import { freePort, temporaryFolder, writeUserSettings } from "./server.mjs";

/*
 * Runs the tests of test/host/suite inside VS Code.
 *
 *   node test/host/run.mjs [node | web | restricted] [--grep PATTERN] [--fixture]
 *
 * `node` and `web` run every *.test.ts in the extension host for Node or for the web; `restricted` runs the *.restricted.ts
 * in an untrusted workspace. `--fixture` takes the small extension of test/host/fixture and its tests instead: it proves the
 * machinery by itself. Environment: CUTWORK_HOST=desktop or browser (else the desktop build where it can be downloaded),
 * CUTWORK_HOST_VERSION, and what code.mjs reads.
 */

const kinds = ["node", "web", "restricted"];

async function runHost(args) {
  const kind = args.find((arg) => kinds.includes(arg)) ?? "node";
  const grep = args.includes("--grep") ? args[args.indexOf("--grep") + 1] : undefined;
  const extension = args.includes("--fixture") ? inProject("test/host/fixture") : root;
  if (!existsSync(path.join(extension, "package.json"))) throw new Stop(`no extension in ${extension}`);
  const suite = args.includes("--fixture") ? extension : inProject("test/host/suite");

  const bundle = await bundleSuite({ kind, grep, suite, extension });
  const workspace = await temporaryFolder("workspace");
  const profile = await temporaryFolder("user");
  const scenes = await freePort();
  const shots = inProject(".test-out/shots");
  try {
    await cp(inProject("test/host/workspace"), workspace, { recursive: true });
    await mkdir(path.join(workspace, "units"), { recursive: true });
    await writeUserSettings(profile, {
      cutworkTest: { kind, scenes },
      ...(kind === "web" ? asWebExtension(extension) : {}),
    });
    return await runInside({ kind, bundle, extension, workspace, profile, scenes, shots });
  } finally {
    await rm(workspace, { recursive: true, force: true });
    await rm(profile, { recursive: true, force: true });
  }
}

/** Of an extension that has both entries, a window with a server takes the one for Node unless the user says otherwise. */
function asWebExtension(folder) {
  const { publisher, name } = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
  return { "remote.extensionKind": { [`${publisher}.${name}`]: ["web"] } };
}

/** Runs the bundled tests by @vscode/test-electron. Resolves to the exit code. */
async function runInside({ kind, bundle, extension, workspace, profile, scenes, shots }) {
  const { runTests } = await import("@vscode/test-electron");
  const desktop = await wantsDesktop();
  const debugging = await freePort();
  const options = {
    extensionDevelopmentPath: extension,
    extensionTestsPath: bundle,
    extensionTestsEnv: { CUTWORK_SCENES: String(scenes), CUTWORK_SHOTS: shots },
    launchArgs: [
      workspace,
      `--user-data-dir=${profile}`,
      `--extensions-dir=${path.join(profile, "extensions")}`,
      ...(kind === "web" ? ["--extensionDevelopmentKind=web"] : []),
      ...(desktop ? [`--remote-debugging-port=${debugging}`] : []),
    ],
  };
  if (kind === "restricted") {
    if (desktop)
      throw new Stop("test-electron always trusts the workspace: a restricted run needs CUTWORK_HOST=browser");
    options.extensionTestsEnv.CUTWORK_TRUST = "restricted";
  }
  const window = desktop ? await serveDesktop({ debugging, scenes, shots }) : undefined;
  if (desktop) options.version = process.env.CUTWORK_HOST_VERSION ?? "stable";
  else options.vscodeExecutablePath = inProject("test/host/code.mjs");
  try {
    return await runTests(options);
  } catch (error) {
    if (error?.constructor?.name !== "TestRunFailedError") throw error;
    return error.code ?? 1;
  } finally {
    await window?.close();
  }
}

/** The desktop build is taken where it can be had within five seconds and has a display to open on. */
async function wantsDesktop() {
  const forced = process.env.CUTWORK_HOST;
  if (forced === "desktop" || forced === "browser") return forced === "desktop";
  if (process.platform === "linux" && !process.env.DISPLAY) return false;
  const { fetchStableVersions } = await import("@vscode/test-electron/out/download.js").then(
    (module) => module.default,
  );
  const patience = new Promise((resolve) => setTimeout(resolve, 5000, []).unref());
  const versions = await Promise.race([fetchStableVersions(true, 5000).catch(() => []), patience]);
  return versions.length > 0;
}

/** Serves the scenes of a desktop window: its page is found by the debugging port once it is open. */
async function serveDesktop({ debugging, scenes, shots }) {
  const { chromium } = await import("playwright-core");
  const { serveScenes } = await import("./scene.mjs");
  let browser;
  const getPage = async () => {
    browser ??= await chromium.connectOverCDP(`http://127.0.0.1:${debugging}`);
    const pages = browser.contexts().flatMap((context) => context.pages());
    const page = pages.find((candidate) => /workbench/.test(candidate.url()));
    if (page === undefined) throw new Error("VS Code's window is not open yet");
    return page;
  };
  const server = await serveScenes({ port: scenes, getPage, shots });
  return {
    close: async () => {
      server.close();
      await browser?.close().catch(() => {});
    },
  };
}

/** Bundles the tests of a run into one file that exports `run`, as VS Code wants it. Resolves to its path. */
async function bundleSuite({ kind, grep, suite, extension }) {
  const { build } = await import("esbuild");
  const web = kind === "web";
  const suffix = kind === "restricted" ? ".restricted.ts" : ".test.ts";
  const files = (await readdir(suite)).filter((file) => file.endsWith(suffix)).sort();
  if (files.length === 0) throw new Stop(`no ${suffix} in ${path.relative(root, suite)}`);

  // Inside the extension: VS Code runs tests where it runs the extension that their file belongs to.
  const outfile = path.join(extension, ".test-out", kind === "node" ? "host-suite.js" : `host-suite-${kind}.js`);
  const runner = JSON.stringify(inProject(`test/host/suite/run.${web ? "web" : "node"}.ts`));
  const options = { timeout: 120_000, ...(grep === undefined ? {} : { grep }) };
  await build({
    absWorkingDir: root,
    stdin: {
      resolveDir: suite,
      contents: `import { runSuite } from ${runner};
        export const run = () => runSuite(() => {
          ${files.map((file) => `require(${JSON.stringify(`./${file}`)});`).join("\n")}
        }, ${JSON.stringify(options)});`,
    },
    outfile,
    bundle: true,
    format: "cjs",
    sourcemap: "inline",
    logLevel: "warning",
    ...(web
      ? {
          platform: "browser",
          external: ["vscode"],
          alias: { "node:assert/strict": inProject("test/host/suite/assert.web.ts") },
        }
      : {
          platform: "node",
          target: "node20",
          external: ["vscode", "mocha", "playwright-core"],
          // A bundled module that looks for packages beside itself finds those of this checkout.
          define: { "import.meta.url": JSON.stringify(pathToFileURL(inProject("package.json")).href) },
        }),
  });
  return outfile;
}

await main(async () => {
  await ensureInstalled();
  return runHost(process.argv.slice(2));
});
