import { fork } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import * as esbuild from "esbuild";
import { ensureInstalled, inProject, main, root, Stop } from "../../src/build/project.mjs";
import { generateValidators } from "../../src/build/validators.mjs";
import { mutantsOf } from "./mutants.mjs";

/*
 * npm run mutate: small faults put into src/match and src/prove, one at a time, to see whether the tests notice.
 *
 *   node test/mutation/main.mjs [--sample 400] [--seed 1] [--all] [--only TEXT] [--jobs 2] [--least 85]
 *
 * A fault is killed when a test of test/match or test/prove fails, does not load, or runs far longer than it does without the
 * fault. Only tests whose imports lead to the changed file are run, and none that takes over two seconds, so that the real share
 * is this or better. The sample is drawn by the seed from all faults; `--only` takes those of it whose `file:line` holds one
 * of some texts parted by commas. Faults that change nothing anybody could see stand with a reason in
 * `equivalent.json` and are not counted; an entry that no fault answers to is an error. Ends with 1 below `--least` per cent.
 */

const areas = ["match", "prove"];

/** Milliseconds of a processor that a test may take beyond five times what it takes without a fault. */
const patience = 2_000;

/** Tests that take more milliseconds than this are left out: their time is better spent on more faults. */
const slowest = 2_000;

const { values } = parseArgs({
  options: {
    sample: { type: "string", default: "400" },
    seed: { type: "string", default: "1" },
    all: { type: "boolean", default: false },
    only: { type: "string", default: "" },
    jobs: { type: "string", default: `${Math.min(2, availableParallelism())}` },
    least: { type: "string", default: "85" },
  },
});

function find(top, ending) {
  const inArea = (area) =>
    readdirSync(inProject(top, area), { recursive: true }).map((file) => `${top}/${area}/${file}`);
  return areas
    .flatMap(inArea)
    .filter((file) => file.endsWith(ending))
    .map((file) => file.replaceAll("\\", "/"))
    .sort();
}

function described({ file, line, column, was, now, source }) {
  const short = (text) => (text.length > 60 ? `${text.slice(0, 57)}...` : text).replace(/\s+/g, " ");
  return `survived  ${file}:${line}:${column}  ${short(was)} → ${short(now) || "nothing"}\n          ${source}`;
}

/** As many as asked for, each choice as likely as the others, in the order of their places. */
function drawn(mutants, count, seed) {
  let state = seed >>> 0;
  // mulberry32
  const random = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const pool = mutants.map((mutant) => ({ mutant, rank: random() }));
  const taken = new Set(
    pool
      .sort((a, b) => a.rank - b.rank)
      .slice(0, count)
      .map(({ mutant }) => mutant),
  );
  return mutants.filter((mutant) => taken.has(mutant));
}

function equivalentsAmong(mutants) {
  const entries = JSON.parse(readFileSync(inProject("test/mutation/equivalent.json"), "utf8"));
  const found = new Set();
  for (const { file, source, was, now } of entries) {
    const like = mutants.filter((m) => m.file === file && m.source === source && m.was === was && m.now === now);
    if (like.length === 0) throw new Stop(`equivalent.json: no fault is like ${file} | ${source} | ${was} → ${now}`);
    for (const mutant of like) found.add(mutant);
  }
  return found;
}

/** For each source file the test files whose imports lead to it. */
async function testsOf(files) {
  const plan = new Map(files.map((file) => [file, []]));
  for (const test of find("test", ".test.ts")) {
    const { metafile } = await bundled([test]);
    for (const input of Object.keys(metafile.inputs)) plan.get(input)?.push(test);
  }
  return plan;
}

/** Tests as one script, with one file's text exchanged. */
async function bundled(tests, file, text) {
  const exchanged = {
    name: "exchanged",
    setup(build) {
      build.onLoad({ filter: /\.ts$/ }, ({ path }) =>
        path === inProject(file) ? { contents: text, loader: "ts" } : undefined,
      );
    },
  };
  return esbuild.build({
    stdin: { contents: tests.map((test) => `import "./${test}";`).join("\n"), resolveDir: root, loader: "ts" },
    bundle: true,
    write: false,
    metafile: true,
    format: "cjs",
    platform: "node",
    target: "node20",
    packages: "external",
    logLevel: "silent",
    plugins: file === undefined ? [] : [exchanged],
  });
}

const forever = { patience: Number.POSITIVE_INFINITY, slowest: Number.POSITIVE_INFINITY };

/** How long each test takes without a fault. A test that fails without one would make all results worthless. */
async function timesWithout(plan, files) {
  const durations = {};
  const runner = new Runner(durations);
  for (const test of new Set([...files].flatMap((file) => plan.get(file) ?? []))) {
    const { outputFiles } = await bundled([test]);
    const { failed, times } = await runner.run(outputFiles[0].text, forever);
    if (failed) throw new Stop(`${test} fails without a fault: ${failed}`);
    Object.assign(durations, times);
  }
  runner.stop();
  return durations;
}

async function tried(runner, plan, mutant, text) {
  const tests = plan.get(mutant.file) ?? [];
  if (tests.length === 0) return "survived";
  const changed = text.slice(0, mutant.start) + mutant.now + text.slice(mutant.end);
  let built;
  try {
    built = await bundled(tests, mutant.file, changed);
  } catch {
    return "no program";
  }
  const { failed, endless } = await runner.run(built.outputFiles[0].text, { patience, slowest });
  if (endless) return "endless";
  return failed ? "failed" : "survived";
}

/** Milliseconds of a processor that a process has taken, so that a busy machine makes no test endless; else of the clock. */
function spentBy({ pid }) {
  if (process.platform !== "linux") return performance.now();
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1).split(" ");
    // User and system time, in hundredths of a second.
    return 10 * (Number(fields[11]) + Number(fields[12]));
  } catch {
    return 0;
  }
}

/** A process that runs tests; a new one is started where it had to be stopped. */
class Runner {
  constructor(durations) {
    this.durations = durations;
  }

  run(code, { patience, slowest }) {
    this.child ??= fork(inProject("test/mutation/worker.mjs"), {
      execArgv: ["--max-old-space-size=1024"],
      stdio: ["ignore", "ignore", "ignore", "ipc"],
      cwd: root,
    });
    const { child, durations } = this;
    return new Promise((resolve) => {
      let until = spentBy(child) + 2 * patience;
      const watch = setInterval(() => spentBy(child) > until && finish({ endless: true }, true), 250);
      const finish = (result, stop) => {
        clearInterval(watch);
        child.removeAllListeners();
        if (stop) this.stop();
        resolve(result);
      };
      child.on("message", ({ begins, done, failed, times }) => {
        if (done) finish({ failed, times }, false);
        else until = spentBy(child) + patience + 5 * (durations[begins] ?? 0);
      });
      child.on("exit", () => finish({ failed: "the process ended" }, true));
      child.send({ code, durations, slowest });
    });
  }

  stop() {
    this.child?.removeAllListeners();
    this.child?.kill("SIGKILL");
    this.child = undefined;
  }
}

function report(results, all, equivalent) {
  const count = (list, ...outcomes) => list.filter(({ outcome }) => outcomes.includes(outcome)).length;
  const line = (name, list) => {
    const killed = count(list, "failed", "endless");
    const survived = count(list, "survived");
    const score = killed + survived === 0 ? 100 : (100 * killed) / (killed + survived);
    const endless = count(list, "endless");
    console.log(
      `${score.toFixed(1).padStart(6)} %  ${`${killed}`.padStart(4)} killed${endless ? ` (${endless} by time)` : ""}, ${survived} survived  ${name}`,
    );
    return score;
  };
  console.log("");
  for (const file of new Set(results.map(({ mutant }) => mutant.file)))
    line(
      file,
      results.filter(({ mutant }) => mutant.file === file),
    );
  const drawnBy = values.all ? "all" : `sample ${results.length}, seed ${values.seed}`;
  const score = line(`all files: ${drawnBy}, of ${all} faults, ${equivalent} of them equivalent`, results);
  return score < Number(values.least) ? 1 : 0;
}

await main(async () => {
  await ensureInstalled();
  await generateValidators();
  const files = find("src", ".ts");
  const texts = new Map(files.map((file) => [file, readFileSync(inProject(file), "utf8")]));
  const all = files.flatMap((file) => mutantsOf(file, texts.get(file)));
  const equivalent = equivalentsAmong(all);
  const wanted = values.all ? all : drawn(all, Number(values.sample), Number(values.seed));
  const names = values.only.split(",");
  const isNamed = ({ file, line }) => names.some((name) => `${file}:${line}`.includes(name));
  const chosen = wanted.filter((mutant) => !equivalent.has(mutant) && isNamed(mutant));

  if (chosen.length === 0) throw new Stop(`no fault of the sample is in ${values.only}`);
  const plan = await testsOf(files);
  const durations = await timesWithout(plan, new Set(chosen.map(({ file }) => file)));
  const runners = Array.from({ length: Number(values.jobs) }, () => new Runner(durations));
  // A test that never ends would outlive this program.
  for (const signal of ["SIGINT", "SIGTERM"])
    process.once(signal, () => {
      for (const runner of runners) runner.stop();
      process.exit(1);
    });
  const queue = [...chosen];
  const results = new Map();
  await Promise.all(
    runners.map(async (runner) => {
      for (let mutant = queue.shift(); mutant !== undefined; mutant = queue.shift()) {
        const outcome = await tried(runner, plan, mutant, texts.get(mutant.file));
        results.set(mutant, outcome);
        if (outcome === "survived") console.log(described(mutant));
        if (results.size % 25 === 0) console.log(`${results.size} of ${chosen.length}`);
      }
      runner.stop();
    }),
  );
  return report(
    chosen.map((mutant) => ({ mutant, outcome: results.get(mutant) })),
    all.length,
    equivalent.size,
  );
});
