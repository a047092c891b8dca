import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import net from "node:net";
import os from "node:os";
import path from "node:path";

/** A TCP port on the loopback address that was free a moment ago. */
export function freePort() {
  return new Promise((resolve, reject) => {
    const probe = net.createServer().on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

export const temporaryFolder = (name) => mkdtemp(path.join(os.tmpdir(), `cutwork-${name}-`));

/** Settings that keep a fresh VS Code quiet. */
const quiet = {
  "workbench.startupEditor": "none",
  "telemetry.telemetryLevel": "off",
  "update.mode": "none",
  "chat.disableAIFeatures": true,
  "extensions.autoCheckUpdates": false,
  "extensions.autoUpdate": false,
  "extensions.ignoreRecommendations": true,
  "git.openRepositoryInParentFolders": "never",
  "files.simpleDialog.enable": true,
};

/** Writes the user's settings of a fresh profile. Settings that are there already win. */
export async function writeUserSettings(userData, settings = {}) {
  const file = path.join(userData, "User/settings.json");
  if (existsSync(file)) return;
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, JSON.stringify({ ...quiet, ...settings }, null, 2));
}

/**
 * Starts VS Code's server on the loopback address and resolves when it answers.
 *
 * `host` is the folder made by install.mjs. Without a `token` anyone on this machine may connect.
 * The result's `log` gives the last of what the server said; `stop` ends it and everything that it started.
 */
export async function startServer({ host, userData, extensions, port, token, trustEverything, env = {}, onOutput }) {
  const data = await temporaryFolder("server");
  const ownNode = path.join(host, "bin/node");
  const args = [
    path.join(host, "out/server-main.js"),
    ...["--host", "127.0.0.1", "--port", String(port)],
    ...(token === undefined ? ["--without-connection-token"] : ["--connection-token", token]),
    ...["--accept-server-license-terms", "--telemetry-level", "off"],
    ...["--server-data-dir", data, "--user-data-dir", userData, "--extensions-dir", extensions],
    ...(trustEverything ? ["--disable-workspace-trust"] : []),
  ];
  const child = spawn(existsSync(ownNode) ? ownNode : process.execPath, args, {
    detached: true, // its own process group, so that `stop` reaches the extension host too
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, ...env },
  });
  let log = "";
  for (const stream of [child.stdout, child.stderr])
    stream.on("data", (chunk) => {
      log = (log + chunk).slice(-4000);
      onOutput?.(chunk);
    });
  const ended = new Promise((resolve) => child.on("exit", resolve));

  const stop = async () => {
    try {
      process.kill(-child.pid, "SIGKILL");
    } catch {} // it had ended by itself
    await ended;
    await rm(data, { recursive: true, force: true });
  };

  const address = `http://127.0.0.1:${port}`;
  let alive = true;
  ended.then(() => {
    alive = false;
  });
  while (alive && !(await answers(`${address}/version`))) await new Promise((resolve) => setTimeout(resolve, 100));
  if (!alive) {
    await stop();
    throw new Error(`VS Code's server ended at once\n${log}`);
  }
  return { address, authority: `127.0.0.1:${port}`, ended, stop, log: () => log };
}

const answers = (url) =>
  fetch(url).then(
    (response) => response.ok,
    () => false,
  );

/** The address of a window: a folder or a `.code-workspace` file, or an empty window, and what the page is told besides. */
export function windowAddress({ address, folder, token, payload = [] }) {
  const query = new URLSearchParams(
    folder === undefined ? { ew: "true" } : { [folder.endsWith(".code-workspace") ? "workspace" : "folder"]: folder },
  );
  if (token !== undefined) query.set("tkn", token);
  query.set("payload", JSON.stringify([["skipWelcome", "true"], ["skipReleaseNotes", "true"], ...payload]));
  return `${address}/?${query}`;
}
