import { accessSync, constants, existsSync } from "node:fs";
import path from "node:path";
import { mustRun, Stop } from "../../src/build/project.mjs";

/*
 * What the tests need from the machine and npm cannot bring: a Chromium and poppler's PDF readers; and what they read where it
 * can be had: dictionaries. On Debian as root they are installed; elsewhere a message says what is missing.
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
  if (!mayInstall())
    throw new Stop(
      `The tests need ${list} (Debian's package names). Please install ${missing.length > 1 ? "them" : "it"}; ` +
        "another Chromium can be named in the environment variable CHROMIUM.",
    );
  await install(missing);
}

/** Dictionaries under the GPL, which are never part of this project: Debian's packages of FreeDict. */
const dictionaries = ["spa-eng", "por-eng", "fra-eng", "ita-eng"];

/** Installs dictionaries that are missing, where that can be done; tests that read them are not run where it cannot. */
export async function ensureDictionaries() {
  const missing = dictionaries
    .filter((pair) => !existsSync(`/usr/share/dictd/freedict-${pair}.index`))
    .map((pair) => `dict-freedict-${pair}`);
  if (missing.length === 0) return;
  try {
    if (!mayInstall()) throw new Stop("this needs Debian and its superuser");
    await install(missing);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    console.log(`Without ${missing.join(", ")} (Debian's package names) some tests are not run: ${reason}.`);
  }
}

const mayInstall = () => process.getuid?.() === 0 && onPath("apt-get") !== undefined;

async function install(packages) {
  console.log(`Installing ${packages.join(" and ")} …`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  await mustRun("apt-get", ["update", "-qq"], { env });
  const quiet = ["-qq", "-o", "Dpkg::Use-Pty=0"];
  await mustRun("apt-get", ["install", "-y", ...quiet, "--no-install-recommends", ...packages], {
    env,
    stdio: ["ignore", "ignore", "inherit"],
  });
}
