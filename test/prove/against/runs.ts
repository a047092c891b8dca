import assert from "node:assert/strict";
import fc from "fast-check";

/*
 * The provers against general solvers and against trying everything, on small instances of any sort. `npm test` runs them
 * all with a fixed seed; `npm run fuzz` runs more with a seed of its own (CUTWORK_FUZZ_SEED repeats one). A failure is
 * shrunk to the smallest instance that shows it, which is printed with seed and path.
 */

const share = Math.ceil(Number(process.env["CUTWORK_FUZZ_RUNS"] ?? 0) / 20);

export const runs = Math.max(2000, share);
export const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 20_250_611);

/** For the name of a suite. */
export const drawn = `${runs} instances each, seed ${seed}`;

/**
 * Looks at so many instances. `check` throws where something is wrong, and returns what kinds of instance it was; each of
 * those named must be one in 100 at least, or the draw would say little.
 */
export function forAll<T>(
  instances: fc.Arbitrary<T>,
  kinds: readonly string[],
  check: (instance: T) => readonly string[],
): void {
  const met = new Map<string, number>();
  fc.assert(
    fc.property(instances, (instance) => {
      for (const kind of check(instance)) met.set(kind, (met.get(kind) ?? 0) + 1);
    }),
    { numRuns: runs, seed, includeErrorInReport: true },
  );
  for (const kind of kinds) assert.ok((met.get(kind) ?? 0) >= runs / 100, `${kind}: ${met.get(kind) ?? 0}`);
}

/** A value one time in six. */
export function rarely<T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.oneof({ weight: 5, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: value });
}

/** What a number of solutions is called. */
export function verdict(count: number): "none" | "one" | "several" {
  return count === 0 ? "none" : count === 1 ? "one" : "several";
}
