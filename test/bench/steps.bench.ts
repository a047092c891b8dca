/*
 * How long a step of reading takes: the editor does other things between steps only, after so many milliseconds of them. First
 * readings are those of a new process, where most code runs for the first time; each step's time is the median of several
 * processes. What the engine of JavaScript takes to clear memory in the midst of a step, which no step can put off, is told apart.
 * Run with `npm run bench steps`; prints, asserts nothing.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { type PerformanceEntry, PerformanceObserver } from "node:perf_hooks";
import { setImmediate } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import type { Steps } from "../../src/base/steps";
import { slice } from "../../src/editor/slices";
import { practice } from "../../src/make/practice";
import { nothingAround, openWorkshop, type Workshop } from "../../src/make/workshop";
import { testAssets } from "../support/typeface";
import { allKinds, largeUnit, median, quantile, tilesOnly, typed } from "./support/typing";

const processes = 7;
const edits = 60;

const units: ReadonlyMap<string, () => string> = new Map([
  ["the practice, when the engine is opened", () => practice],
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

/** In a process of its own: the steps of one unit's first reading, on the standard output. */
async function firstReading(name: string): Promise<void> {
  const workshop = await openWorkshop(testAssets());
  if (units.get(name)?.() !== practice) stepsOf(workshop, practice);
  console.log(JSON.stringify(await withoutPauses(stepsOf(workshop, units.get(name)?.() ?? ""))));
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

async function main(): Promise<void> {
  console.log(`first readings, each step as the median of ${processes} processes`);
  for (const name of units.keys()) {
    const all = Array.from({ length: processes }, () => {
      const { stdout } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), name], { encoding: "utf8" });
      return JSON.parse(stdout) as Step[];
    });
    const [first = []] = all;
    const middle = (i: number, of: "ms" | "own"): number => median(all.map((each) => each[i]?.[of] ?? 0));
    print(name, [first.map(({ at, start }, i) => ({ at, start, ms: middle(i, "ms"), own: middle(i, "own") }))]);
  }
  console.log(`one edited word, ${edits} times`);
  const workshop = await openWorkshop(testAssets());
  for (const name of [...units.keys()].slice(1, 3)) {
    let text = units.get(name)?.() ?? "";
    const readings: Step[][] = [];
    for (let n = 0; n < 2 * edits; n++) {
      text = typed(text, n);
      readings.push(await withoutPauses(stepsOf(workshop, text)));
    }
    print(name, readings.slice(edits));
  }
}

const [, , asked] = process.argv;
void (asked === undefined ? main() : firstReading(asked));
