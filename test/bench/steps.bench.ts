/*
 * How long a step of reading takes: the editor does other things between steps only, after so many milliseconds of them. First
 * readings are those of a new process, where most code runs for the first time. Each step's time is the median of several
 * processes, since other work of the machine lengthens now one step and now another; what single processes show is told too. What
 * the engine of JavaScript takes to clear memory in the midst of a step, which no step can put off, is told apart.
 * Run with `npm run bench steps`; prints, asserts nothing.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { type PerformanceEntry, PerformanceObserver } from "node:perf_hooks";
import { setImmediate } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import type { Steps } from "../../src/base/steps";
import { slice } from "../../src/editor/slices";
import { practising } from "../../src/make/practice";
import { nothingAround, openWorkshop, type Workshop } from "../../src/make/workshop";
import { testAssets } from "../support/typeface";
import { allKinds, largeUnit, median, quantile, tilesOnly, typed } from "./support/typing";

const processes = 7;
const edits = 60;

/** What is measured in a process. */
type What = "practice" | "first" | "edited";

const units: ReadonlyMap<string, () => string> = new Map([
  ["300 pairs, 60 statements, ten activities: tiles", () => largeUnit(tilesOnly)],
  ["300 pairs, 60 statements, ten activities: all kinds", () => largeUnit(allKinds)],
  ["the sample am-markt", () => readFileSync("samples/am-markt.unit.md", "utf8")],
  ["the sample bicycle-workshop", () => readFileSync("samples/bicycle-workshop.unit.md", "utf8")],
]);

interface Step {
  /** What was said at its beginning. */
  readonly at: string;
  /** When it began, as the process counts, ms. */
  readonly start: number;
  readonly ms: number;
  /** Without clearing memory. */
  readonly own: number;
}

/** Pauses of this process in which memory was cleared. */
const pauses: PerformanceEntry[] = [];
const observer = new PerformanceObserver((list) => void pauses.push(...list.getEntries()));
observer.observe({ entryTypes: ["gc"] });

/** The same steps, with what clearing memory took of them. Pauses are told some time later. */
async function withoutPauses(steps: readonly Step[]): Promise<Step[]> {
  await setImmediate();
  pauses.push(...observer.takeRecords());
  const within = ({ start, ms }: Step): number =>
    pauses.reduce(
      (sum, { startTime, duration }) => sum + (start <= startTime && startTime < start + ms ? duration : 0),
      0,
    );
  const own = steps.map((step) => ({ ...step, own: Math.max(0, step.ms - within(step)) }));
  pauses.length = 0;
  return own;
}

function timed<Result>(steps: Steps<Result>, into: Step[]): Result {
  let at = "Reading";
  for (;;) {
    const start = performance.now();
    const step = steps.next();
    const ms = performance.now() - start;
    into.push({ at, start, ms, own: ms });
    if (step.done) return step.value;
    at = step.value;
  }
}

/** All steps that the editor takes for a text: looking what to load, then reading. */
function stepsOf(workshop: Workshop, text: string): Step[] {
  const steps: Step[] = [];
  timed(workshop.needing(text, new Map()), steps);
  timed(workshop.reading({ name: "unit", text }, nothingAround), steps);
  return steps;
}

/** Readings of one process, in their steps, on the standard output. */
async function inProcess(what: What, name: string): Promise<void> {
  const workshop = await openWorkshop(testAssets());
  const practised: Step[] = [];
  timed(practising(workshop), practised);
  const readings = [await withoutPauses(practised)];
  let text = units.get(name)?.() ?? "";
  if (what === "first") readings.push(await withoutPauses(stepsOf(workshop, text)));
  for (let n = 0; what === "edited" && n < 2 * edits; n++) {
    text = typed(text, n);
    readings.push(await withoutPauses(stepsOf(workshop, text)));
  }
  const told = { practice: readings.slice(0, 1), first: readings.slice(1), edited: readings.slice(edits + 1) }[what];
  console.log(JSON.stringify(told));
}

/** Slices as the editor makes them, ms: steps until so much time has passed, and the one that it is at. */
function slicesOf(steps: readonly Step[]): Pick<Step, "ms" | "own">[] {
  const slices = [{ ms: 0, own: 0 }];
  for (const { ms, own } of steps) {
    if ((slices.at(-1)?.ms ?? 0) >= slice) slices.push({ ms: 0, own: 0 });
    const last = slices.pop() ?? { ms: 0, own: 0 };
    slices.push({ ms: last.ms + ms, own: last.own + own });
  }
  return slices;
}

/** What the editor is not to be held up longer than, ms. */
const limit = 8;

function print(name: string, readings: readonly (readonly Step[])[]): void {
  const told = (values: readonly number[]): string =>
    `median ${median(values).toFixed(2)} ms, 95 % ${quantile(values, 0.95).toFixed(2)} ms, most ${Math.max(...values).toFixed(1)} ms`;
  const steps = readings.flat();
  console.log(name);
  console.log(`  steps:  ${told(steps.map(({ ms }) => ms))}`);
  const slices = readings.flatMap(slicesOf);
  for (const [what, times] of [
    ["slices", slices.map(({ ms }) => ms)],
    ["slices without clearing memory", slices.map(({ own }) => own)],
  ] as const) {
    const over = times.filter((ms) => ms > limit).length;
    console.log(`  ${what}: ${told(times)}, ${over} of ${times.length} over ${limit} ms`);
  }
  const longest = [...steps].sort((a, b) => b.ms - a.ms).slice(0, 3);
  console.log(`  longest: ${longest.map(({ at, ms }) => `${ms.toFixed(1)} ms ${at}`).join("; ")}`);
}

/** Prints readings of several processes: the median of each step, and how many slices of the processes themselves are too long. */
function compare(what: What, name: string): void {
  const all = Array.from({ length: processes }, () => {
    const { stdout } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), what, name], {
      encoding: "utf8",
      maxBuffer: 1e9,
    });
    return JSON.parse(stdout) as Step[][];
  });
  const [first = []] = all;
  const middle = (n: number, i: number, of: "ms" | "own"): number => median(all.map((each) => each[n]?.[i]?.[of] ?? 0));
  const medians = first.map((steps, n) =>
    steps.map((step, i) => ({ ...step, ms: middle(n, i, "ms"), own: middle(n, i, "own") })),
  );
  print(name, medians);
  const single = all.flat().flatMap(slicesOf);
  const over = (of: "ms" | "own"): number => single.filter((each) => each[of] > limit).length;
  console.log(
    `  in single processes: ${over("ms")} of ${single.length} slices over ${limit} ms, ${over("own")} without clearing memory`,
  );
}

function main(): void {
  console.log(`each step as the median of ${processes} processes`);
  compare("practice", "the practice, when the engine is opened");
  console.log("first readings");
  for (const name of units.keys()) compare("first", name);
  console.log(`one edited word, ${edits} times`);
  for (const name of [...units.keys()].slice(0, 2)) compare("edited", name);
}

const [, , what, name] = process.argv;
if (what === "practice" || what === "first" || what === "edited") void inProcess(what, name ?? "");
else main();
