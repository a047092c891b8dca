import { strict as assert } from "node:assert";
import { finished, type Steps } from "../../src/base/steps";
import { inSlices, type Pace, slice } from "../../src/editor/slices";
import { nothingAround } from "../../src/make/workshop";
import { testWorkshop, unitOf } from "../support/units";

/** Each step takes so many milliseconds of this clock. */
function clock(): Pace & { breaths: number; readonly steps: (count: number, cost: number) => Steps<string> } {
  let time = 0;
  return {
    breaths: 0,
    now: () => time,
    async breathe() {
      this.breaths++;
    },
    *steps(count, cost) {
      for (let i = 1; i <= count; i++) {
        time += cost;
        yield `step ${i}`;
      }
      return "done";
    },
  };
}

describe("work in slices", () => {
  it("stops for breath after each slice, says what it is at, and comes to the same end", async () => {
    const pace = clock();
    const said: string[] = [];
    const result = await inSlices(
      pace.steps(20, slice / 4),
      { say: (state) => said.push(state), wanted: () => true },
      pace,
    );
    assert.equal(result, "done");
    assert.deepEqual(said, ["step 4", "step 8", "step 12", "step 16", "step 20"]);
    assert.equal(pace.breaths, 5);
  });

  it("does little work at one stretch", async () => {
    const pace = clock();
    await inSlices(pace.steps(3, slice / 4), { say: assert.fail, wanted: () => true }, pace);
    assert.equal(pace.breaths, 0);
  });

  it("drops work that is no longer wanted", async () => {
    const pace = clock();
    let left = 2;
    const result = await inSlices(pace.steps(20, slice), { say: () => {}, wanted: () => left-- > 0 }, pace);
    assert.equal(result, undefined);
    assert.equal(pace.breaths, 3);
  });

  it("reads a unit to the same reading", async () => {
    const workshop = await testWorkshop();
    const file = { name: "unit", text: unitOf(9, "levels: [gentle, hard]") };
    const whole = workshop.read(file, nothingAround);
    const pace: Pace = { now: () => 0, breathe: async () => {} };
    const sliced = await inSlices(workshop.reading(file, nothingAround), { say: () => {}, wanted: () => true }, pace);
    assert.deepEqual(sliced?.findings, whole.findings);
    assert.deepEqual(sliced?.activities, whole.activities);
    const states: string[] = [];
    const steps = workshop.reading(file, nothingAround);
    for (let step = steps.next(); !step.done; step = steps.next()) states.push(step.value);
    assert.equal(states[0], "Reading");
    assert.ok(states.includes("Dealing “Words – tiles”"));
    // Six letters that are answered alike, sixty times: nothing is settled soon.
    const hard = `## S\n\n${Array.from({ length: 60 }, (_, i) => `- w${i} = ${"abcdef"[i % 6]} / ${"abcdef"[(i + 1) % 6]}`).join("\n")}\n\n\`\`\`activity\nmake: tiles\ngrid: 6 x 6\n\`\`\`\n`;
    const told: string[] = [];
    const work = workshop.reading({ name: "hard", text: hard }, nothingAround);
    for (let step = work.next(); !step.done; step = work.next()) told.push(step.value);
    assert.ok(
      told.some((state) => /^Proving “S – tiles”: arrangement \d+, \d+ steps$/u.test(state)),
      [...new Set(told)].join(", "),
    );
    assert.equal(finished(workshop.reading(file, nothingAround)).findings.length, whole.findings.length);
  });
});
