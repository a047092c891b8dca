import { accessSync, constants } from "node:fs";
import path from "node:path";
import { mustRun, Stop } from "../../src/build/project.mjs";

/*
 * What the tests need from the machine and npm cannot bring: a Chromium and poppler's PDF readers. On Debian as root they are
 * installed; elsewhere a message says what is missing.
 */

const browserNames = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/** The first of the programs that is on the PATH, with its folder; undefined where none is. */
export function onPath(...names) {
  for (const name of names)
    for (const folder of (process.env.PATH ?? "").split(path.delimiter)) {
      const file = path.join(folder, name);
      if (folder !== "" && isExecutable(file)) return file;
    }
  return undefined;
}

function isExecutable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The browser to use: the one that CHROMIUM names, else one on the PATH. */
export function findBrowser() {
  const named = process.env.CHROMIUM;
  if (named === undefined || named === "") return onPath(...browserNames);
  if (!isExecutable(named)) throw new Stop(`CHROMIUM names ${named}, which cannot be started`);
  return named;
}

/** Sees to it that poppler's readers, and a browser where one is wanted, can be started. */
export async function ensurePrograms({ browser }) {
  const missing = [];
  if (browser && findBrowser() === undefined) missing.push("chromium");
  if (onPath("pdftotext") === undefined || onPath("pdftoppm") === undefined) missing.push("poppler-utils");
  if (missing.length === 0) return;

  const list = missing.join(" and ");
  if (process.getuid?.() !== 0 || onPath("apt-get") === undefined)
    throw new Stop(
      `The tests need ${list} (Debian's package names). Please install ${missing.length > 1 ? "them" : "it"}; ` +
        "another Chromium can be named in the environment variable CHROMIUM.",
    );
  console.log(`Installing ${list} …`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  await mustRun("apt-get", ["update", "-qq"], { env });
  const quiet = ["-qq", "-o", "Dpkg::Use-Pty=0"];
  await mustRun("apt-get", ["install", "-y", ...quiet, "--no-install-recommends", ...missing], {
    env,
    stdio: ["ignore", "ignore", "inherit"],
  });
}
