import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { rm } from "node:fs/promises";
import path from "node:path";
import { onPath } from "../../test/run/system.mjs";
import { ensureInstalled, inProject, main, root, Stop } from "./project.mjs";

/*
 * npm run try: opens samples/ in VS Code with the extension as built. It takes the desktop's `code` where there is one; else
 * it serves VS Code to a browser on this machine, until Ctrl-C. CUTWORK_HOST=desktop or browser decides otherwise.
 */

async function tryOut() {
  await ensureInstalled();
  const { bundle } = await import("./bundle.mjs");
  await bundle();

  const wanted = process.env.CUTWORK_HOST;
  const desktop = wanted === "browser" ? undefined : onPath("code", "code-insiders", "codium");
  if (desktop !== undefined) return openDesktop(desktop);
  if (wanted === "desktop") throw new Stop("no `code` on the PATH");
  return serveBrowser();
}

function openDesktop(code) {
  console.log(`Opening samples/ in ${code} …`);
  const child = spawn(code, ["--new-window", `--extensionDevelopmentPath=${root}`, inProject("samples")], {
    stdio: "ignore",
  });
  return new Promise((resolve, reject) => child.on("error", reject).on("close", (exit) => resolve(exit ?? 0)));
}

async function serveBrowser() {
  const { ensureHost } = await import("../../test/host/install.mjs");
  const { freePort, startServer, temporaryFolder, windowAddress, writeUserSettings } = await import(
    "../../test/host/server.mjs"
  );
  const host = await ensureHost();
  const profile = await temporaryFolder("try");
  const [port, token] = [await freePort(), randomBytes(16).toString("hex")];
  await writeUserSettings(profile);
  const server = await startServer({
    host,
    port,
    token,
    userData: profile,
    extensions: path.join(profile, "extensions"),
    trustEverything: true, // the samples are the project's own
  });
  const extension = `vscode-remote://${server.authority}${encodeURI(root)}`;
  const payload = [["extensionDevelopmentPath", extension]];
  console.log("\nOpen this address in a browser on this machine; Ctrl-C ends it.\n");
  console.log(`  ${windowAddress({ address: server.address, folder: inProject("samples"), token, payload })}\n`);

  const reason = await Promise.race([
    server.ended.then((code) => `VS Code's server ended (${code})\n${server.log()}`),
    ...["SIGINT", "SIGTERM"].map((signal) => new Promise((resolve) => process.once(signal, () => resolve("")))),
  ]);
  await server.stop();
  await rm(profile, { recursive: true, force: true });
  if (reason !== "") throw new Stop(reason);
  return 0;
}

await main(tryOut);
