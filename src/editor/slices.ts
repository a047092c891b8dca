import type { Steps } from "../base/steps";

/**
 * Milliseconds after which work stops for other features of the editor, with the step that it is at: a slice is as long as this
 * and its last step, of which some take several more while code runs for the first time. `npm run bench steps` tells how long that is.
 */
export const slice = 2;

/** The clock and the pause that work in slices goes by; replaced in tests. */
export interface Pace {
  now(): number;
  breathe(): Promise<void>;
}

export const realPace: Pace = {
  now: () => performance.now(),
  // A timer takes a millisecond at least, in which nothing may be waiting; browsers have nothing else.
  breathe: () =>
    new Promise((resolve) => {
      if (typeof setImmediate === "function") setImmediate(resolve);
      else setTimeout(resolve);
    }),
};

export interface Watcher {
  /** Told what the work is at, at each pause. */
  say(state: string): void;
  /** Asked at each pause; the work is dropped where its result is no longer wanted. */
  wanted(): boolean;
}

/** Does work in steps without holding up the editor for longer than a slice and one step. Undefined where it was dropped. */
export async function inSlices<Result>(
  steps: Steps<Result>,
  { say, wanted }: Watcher,
  pace: Pace = realPace,
): Promise<Result | undefined> {
  for (;;) {
    const end = pace.now() + slice;
    let step = steps.next();
    while (!step.done && pace.now() < end) step = steps.next();
    if (step.done) return step.value;
    say(step.value);
    await pace.breathe();
    if (!wanted()) return undefined;
  }
}
