import { spawn } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { binary, ensureInstalled, inProject, main, root, Stop } from "../../src/build/project.mjs";

/*
 * npm test: everything that holds this project up, from a fresh clone.
 *
 *   node test/run/main.mjs [unit | host]
 *
 * Without a word: packages, types, style, build, browser and readers, VS Code; then the tests in Node, in VS Code's extension
 * host for Node and in the one for the web. `unit` runs only what Node runs, `host` only what VS Code runs.
 * The last line is `N passed, N failed` over all runs; a step that fails, or a run without a test, counts as a failure.
 */

const script = (file, ...args) => [process.execPath, [inProject(file), ...args]];

const tool = (packageName, command, ...args) => [process.execPath, [binary(packageName, command), ...args]];

/** What must be clean. Looked up late: on a fresh clone the tools are not installed yet. */
const checks = {
  types: () => tool("typescript", "tsc", "-p", "."),
  "types of the preview's page": () => tool("typescript", "tsc", "-p", "src/webview"),
  style: () => tool("@biomejs/biome", "biome", "check", "--log-level=warn"),
};

/** Runs of tests; each prints its totals alone on its last line. */
const runs = {
  unit: () => tool("mocha", "mocha", "test/**/*.test.ts"),
  "VS Code, its machinery": () => script("test/host/run.mjs", "node", "--fixture"),
  "VS Code, Node": () => script("test/host/run.mjs", "node"),
  "VS Code, web": () => script("test/host/run.mjs", "web"),
  "VS Code, untrusted workspace": () => script("test/host/run.mjs", "restricted"),
};

/** Minutes of search by themselves: they run beside the tests in VS Code, which wait more than they work. */
const longRun = () => tool("mocha", "mocha", "test/prove/macmahon.test.ts");

const totalsLine = /^(\d+) passed, (\d+) failed(?:, (\d+) skipped)?$/;

async function runEverything(only) {
  if (only !== undefined && only !== "unit" && only !== "host") throw new Stop(`unknown: ${only} (unit, host)`);
  const results = [];
  const note = (name, result) => results.push({ name, ...result });

  await ensureInstalled();
  const { bundle } = await import("../../src/build/bundle.mjs");
  const { ensureDictionaries, ensurePrograms } = await import("./system.mjs");

  title("build");
  note("build", await attempt(() => bundle()));
  if (only === undefined)
    for (const [name, command] of Object.entries(checks)) {
      title(name);
      note(name, await runCheck(command()));
    }

  title("browser and readers");
  note("programs", await attempt(() => ensurePrograms({ browser: true })));
  if (only !== "host") await ensureDictionaries();

  // Before the unit tests, since those of the grammar read VS Code's own grammars.
  const wantsHost = only !== "unit" && process.env.CUTWORK_HOST !== "desktop";
  if (wantsHost) title("VS Code");
  const { ensureHost } = await import("../host/install.mjs");
  const host = wantsHost ? await attempt(() => ensureHost(process.env.CUTWORK_HOST_VERSION)) : fine;
  if (wantsHost) note("VS Code", host);

  if (only !== "host") {
    title("unit tests");
    note("unit", await runTests(runs.unit()));
  }
  const long = only === undefined ? runLong() : undefined;
  if (only !== "unit") {
    for (const name of host === fine ? hostRuns() : []) {
      title(name);
      note(name, await runTests(runs[name]()));
    }
  }
  if (long !== undefined) {
    title("unit tests that take minutes");
    const { print, result } = await long;
    print();
    note("long", result);
  }
  return report(results);
}

/** Starts the long tests; what they print is kept until they are waited for. */
function runLong() {
  const lines = [];
  const env = { ...process.env, CUTWORK_LONG_TESTS: "1" };
  const result = runTests(longRun(), { env, write: (line) => lines.push(line) });
  return result.then((done) => ({ result: done, print: () => lines.forEach((line) => void console.log(line)) }));
}

function hostRuns() {
  const names = ["VS Code, its machinery"];
  if (existsSync(inProject("dist/extension.js"))) names.push("VS Code, Node");
  if (existsSync(inProject("dist/web/extension.js"))) names.push("VS Code, web");
  const restricted = readdirSync(inProject("test/host/suite")).some((file) => file.endsWith(".restricted.ts"));
  if (restricted) names.push("VS Code, untrusted workspace");
  return names;
}

const title = (text) => console.log(`\n── ${text} ${"─".repeat(Math.max(3, 60 - text.length))}`);

const failed = { passed: 0, failed: 1, skipped: 0, isStep: true };
const fine = { passed: 0, failed: 0, skipped: 0, isStep: true };

async function attempt(step) {
  try {
    await step();
    return fine;
  } catch (error) {
    console.error(error instanceof Stop ? error.message : error);
    return failed;
  }
}

async function runCheck(command) {
  const { code } = await runQuietly(command);
  if (code === 0) console.log("clean");
  return code === 0 ? fine : failed;
}

async function runTests(command, options) {
  const { code, totals } = await runQuietly(command, options);
  if (totals === undefined) {
    console.error(`the run ended with ${code} and no totals`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const [passed, failures, skipped] = totals;
  if (passed + failures === 0) console.error("the run held no test");
  const silentFailure = failures === 0 && (code !== 0 || passed === 0);
  return { passed, failed: failures + (silentFailure ? 1 : 0), skipped };
}

/** Passes a program's output on, but for the line of totals, which it gives back. */
function runQuietly(
  [command, args],
  { env = process.env, write = (line) => void process.stdout.write(`${line}\n`) } = {},
) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, env, stdio: ["ignore", "pipe", "inherit"] });
    let totals;
    let rest = "";
    const take = (line) => {
      const match = totalsLine.exec(line);
      if (match !== null) totals = match.slice(1).map((digits) => Number(digits ?? 0));
      else if (!/^Exit code: +\d+$/.test(line)) write(line);
    };
    child.stdout.setEncoding("utf8").on("data", (chunk) => {
      const lines = (rest + chunk).split("\n");
      rest = lines.pop() ?? "";
      lines.forEach(take);
    });
    child.on("error", reject);
    child.on("close", (code) => {
      if (rest !== "") take(rest);
      resolve({ code: code ?? 1, totals });
    });
  });
}

function report(results) {
  title("result");
  for (const { name, passed, failed: failures, skipped, isStep } of results) {
    const counts = isStep ? (failures > 0 ? "failed" : "done") : `${passed} tests passed, ${failures} failed`;
    console.log(`  ${failures > 0 ? "✗" : "✓"} ${name}: ${counts}${skipped > 0 ? `, ${skipped} not run` : ""}`);
  }
  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  const passed = sum("passed");
  const failures = sum("failed") + (passed === 0 && sum("failed") === 0 ? 1 : 0);
  console.log(`\n${passed} passed, ${failures} failed`);
  return failures > 0 ? 1 : 0;
}

await main(() => runEverything(process.argv[2]));
