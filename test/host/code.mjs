#!/usr/bin/env node
import { rm } from "node:fs/promises";
import path from "node:path";
import { format } from "node:util";
import { chromium } from "playwright-core";
import { inProject } from "../../src/build/project.mjs";
import { findBrowser } from "../run/system.mjs";
import { ensureHost } from "./install.mjs";
import { serveScenes } from "./scene.mjs";
import { freePort, startServer, temporaryFolder, windowAddress, writeUserSettings } from "./server.mjs";

/*
 * Stands in for the desktop `code` where @vscode/test-electron asks for one: starts VS Code's server, opens it in a headless
 * Chromium, lets the real extension host run the tests, passes their console on and exits with their code.
 *
 * Arguments, as for `code`: [folder | FILE.code-workspace], --extensionDevelopmentPath (repeatable), --extensionTestsPath,
 * --extensionDevelopmentKind=web, --user-data-dir, --extensions-dir, --disable-workspace-trust, --disable-extensions.
 * Environment: CUTWORK_HOST_VERSION, CUTWORK_TRUST=restricted (keeps workspace trust on), CUTWORK_SCENES (port, see scene.mjs),
 * CUTWORK_SHOTS, CUTWORK_TIMEOUT (seconds), CUTWORK_DEBUG (prints what server and page say), CHROMIUM.
 * Tests in Node find the browser's debugging address in VSCODE_CDP.
 */

const { env } = process;
const { folder, options, developed } = readArguments(process.argv.slice(2));
const debug = Boolean(env.CUTWORK_DEBUG);
const profile = await temporaryFolder("profile");
const userData = path.resolve(options.get("user-data-dir") ?? path.join(profile, "data"));

let server;
let browser;
let page;
let ending = false;

async function end(code, reason) {
  if (ending) return;
  ending = true;
  if (reason !== undefined) console.error(reason);
  await browser?.close().catch(() => {});
  await server?.stop();
  await rm(profile, { recursive: true, force: true });
  process.exit(code);
}

process.on("SIGINT", () => end(130));
process.on("SIGTERM", () => end(143));
const limit = Number(env.CUTWORK_TIMEOUT ?? 900);
setTimeout(() => end(124, `VS Code gave no result in ${limit} s\n${server?.log() ?? ""}`), limit * 1000);

try {
  await open();
} catch (error) {
  await end(1, error);
}

async function open() {
  const [port, debugging, host] = [await freePort(), await freePort(), await ensureHost(env.CUTWORK_HOST_VERSION)];
  await writeUserSettings(userData);
  server = await startServer({
    host,
    port,
    userData,
    extensions: path.resolve(options.get("extensions-dir") ?? path.join(profile, "extensions")),
    trustEverything: options.has("disable-workspace-trust") && env.CUTWORK_TRUST !== "restricted",
    env: { VSCODE_CDP: `http://127.0.0.1:${debugging}` },
    onOutput: (chunk) => debug && process.stderr.write(chunk),
  });
  server.ended.then((code) => end(1, `VS Code's server ended (${code})\n${server.log()}`));

  // A persistent context, so that a second connection by the debugging port sees this very page.
  browser = await chromium.launchPersistentContext(path.join(profile, "chromium"), {
    executablePath: findBrowser(),
    viewport: { width: 1400, height: 900 },
    args: [
      ...["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"],
      ...["--disable-component-update", "--disable-sync", `--remote-debugging-port=${debugging}`],
    ],
  });
  page = browser.pages()[0] ?? (await browser.newPage());
  page.on("crash", () => end(1, "VS Code's page crashed"));
  if (env.CUTWORK_SCENES)
    await serveScenes({
      port: Number(env.CUTWORK_SCENES),
      getPage: async () => page,
      shots: env.CUTWORK_SHOTS ?? inProject(".test-out/shots"),
    });

  await page.exposeFunction("cutworkLog", (type, args, fromTests) => {
    if (!fromTests && !debug) return;
    const stream = type === "error" || type === "warn" ? process.stderr : process.stdout;
    stream.write(`${fromTests ? "" : `[page ${type}] `}${format(...args)}\n`);
  });
  await page.exposeFunction("codeAutomationExit", (code) => end(code));

  const web = options.get("extensionDevelopmentKind") === "web";
  await page.addInitScript(prepareWorkbench, web ? { enableSmokeTestDriver: true } : developmentOptions());
  await page.goto(windowAddress({ address: server.address, folder, payload: web ? webPayload() : sharedPayload() }));
}

/** Runs in the page before VS Code does. */
function prepareWorkbench(development) {
  if (window !== top) return;
  // The page's configuration names the extension under development. It is changed where it is read: a document rewritten
  // on its way by the browser's driver had all its web sockets closed.
  const read = Element.prototype.getAttribute;
  Element.prototype.getAttribute = function (name) {
    const value = read.call(this, name);
    if (name !== "data-settings" || this.id !== "vscode-workbench-web-configuration") return value;
    const configuration = JSON.parse(value);
    configuration.developmentOptions = { ...configuration.developmentOptions, ...development };
    return JSON.stringify(configuration);
  };
  // The page's own log and the tests' console arrive by the same call; only the latter comes from this remote call.
  Error.stackTraceLimit = 40;
  window.codeAutomationLog = (type, args) =>
    window.cutworkLog(type, args, /\$logExtensionHostMessage/.test(new Error().stack));
}

function developmentOptions() {
  const remote = (place) => ({ scheme: "vscode-remote", authority: server.authority, path: path.resolve(place) });
  const tests = options.get("extensionTestsPath");
  return {
    extensions: developed.map(remote),
    ...(tests === undefined ? {} : { extensionTestsPath: remote(tests) }),
  };
}

function sharedPayload() {
  return options.has("disable-extensions") ? [["disableExtensions", "true"]] : [];
}

function webPayload() {
  const remote = (place) => `vscode-remote://${server.authority}${encodeURI(path.resolve(place))}`;
  const tests = options.get("extensionTestsPath");
  return [
    ...sharedPayload(),
    ...developed.map((place) => ["extensionDevelopmentPath", remote(place)]),
    ...(tests === undefined ? [] : [["extensionTestsPath", remote(tests)]]),
    ["extensionDevelopmentKind", "web"],
  ];
}

function readArguments(args) {
  const options = new Map();
  const developed = [];
  let folder;
  for (const arg of args) {
    const match = /^--([^=]+)(?:=(.*))?$/s.exec(arg);
    if (match === null) folder ??= path.resolve(arg);
    else if (match[1] === "extensionDevelopmentPath") developed.push(match[2]);
    else options.set(match[1], match[2] ?? "");
  }
  return { folder, options, developed };
}
