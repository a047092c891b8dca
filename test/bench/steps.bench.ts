/*
 * How long a step of reading takes: the editor does other things between steps only, after so many milliseconds of them. First
 * readings are those of a new process, where most code runs for the first time; each step's time is the median of several
 * processes. Run with `npm run bench steps`; prints, asserts nothing.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
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
  readonly ms: number;
}

function timed<Result>(steps: Steps<Result>, into: Step[]): Result {
  let at = "Reading";
  for (;;) {
    const before = performance.now();
    const step = steps.next();
    into.push({ at, ms: performance.now() - before });
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
  console.log(JSON.stringify(stepsOf(workshop, units.get(name)?.() ?? "")));
}

/** Slices as the editor makes them, ms: steps until so much time has passed, and the one that it is at. */
function slicesOf(steps: readonly Step[]): number[] {
  const slices = [0];
  for (const { ms } of steps) {
    if ((slices.at(-1) ?? 0) >= slice) slices.push(0);
    slices.push((slices.pop() ?? 0) + ms);
  }
  return slices;
}

function print(name: string, readings: readonly (readonly Step[])[]): void {
  const told = (values: readonly number[]): string =>
    `median ${median(values).toFixed(2)} ms, 95 % ${quantile(values, 0.95).toFixed(2)} ms, most ${Math.max(...values).toFixed(1)} ms`;
  const steps = readings.flat();
  console.log(name);
  console.log(`  steps:  ${told(steps.map(({ ms }) => ms))}`);
  console.log(`  slices: ${told(readings.flatMap(slicesOf))}`);
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
    print(name, [first.map(({ at }, i) => ({ at, ms: median(all.map((each) => each[i]?.ms ?? 0)) }))]);
  }
  console.log(`one edited word, ${edits} times`);
  const workshop = await openWorkshop(testAssets());
  for (const name of [...units.keys()].slice(1, 3)) {
    let text = units.get(name)?.() ?? "";
    const readings = Array.from({ length: 2 * edits }, (_, n) => {
      text = typed(text, n);
      return stepsOf(workshop, text);
    });
    print(name, readings.slice(edits));
  }
}

const [, , asked] = process.argv;
void (asked === undefined ? main() : firstReading(asked));
