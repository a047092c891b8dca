import { strict as assert } from "node:assert";
import { practise } from "../../src/editor/practising";
import type { Pace } from "../../src/editor/slices";
import type { Workshop } from "../../src/make/workshop";

/** Every step is a slice of its own. */
const pace = (): Pace => {
  let time = 0;
  return { now: () => (time += 100), breathe: async () => {} };
};

function workshop(count: number, fault?: Error): { readonly reading: Workshop["reading"]; taken: number } {
  const engine = {
    taken: 0,
    *reading(): ReturnType<Workshop["reading"]> {
      for (; engine.taken < count; engine.taken++) yield "Reading";
      throw fault ?? new Error("the end");
    },
  };
  return engine;
}

describe("the practice when the engine is opened", () => {
  it("ends early where the extension goes meanwhile", async () => {
    const engine = workshop(100);
    const faults: unknown[] = [];
    await practise(
      engine,
      () => engine.taken < 10,
      (fault) => faults.push(fault),
      pace(),
    );
    assert.deepEqual([engine.taken, faults], [10, []]);
  });

  it("keeps nobody from reading where it fails, and is told", async () => {
    const fault = new Error("broken");
    const faults: unknown[] = [];
    await practise(
      workshop(3, fault),
      () => true,
      (each) => faults.push(each),
      pace(),
    );
    assert.deepEqual(faults, [fault]);
  });
});
