import assert from "node:assert/strict";
import { unitReport } from "../../src/cli/report";
import { proofLines } from "../../src/cli/text";
import { lensText } from "../../src/editor/language/lens";
import { screenOf } from "../../src/editor/preview/screen";
import { readUnitText, testWorkshop } from "../support/units";
import { counter, loopUnit } from "./unit";

/** What is said of a loop: by the command line, over the activity, and in the preview. */
async function said(pairs: readonly string[]): Promise<{ readonly line: string; lens: string; preview: string }> {
  const workshop = await testWorkshop();
  const reading = await readUnitText(loopUnit(pairs));
  const [activity] = reading.activities;
  assert.ok(activity?.deals[0]);
  return {
    line: proofLines(unitReport("unit.unit.md", reading)).join(""),
    lens: lensText(activity, (deal) => workshop.view(reading, activity, deal, "dealt")),
    preview: screenOf(workshop, reading, { view: "solved" }).line,
  };
}

describe("what is said of a loop everywhere", () => {
  const [first = "", second = "", ...others] = counter.slice(0, 6);
  const twice = `${second.split(" = ")[0]} = ${first.split(" = ")[1]}`;

  it("is one solution where no smaller circle can close", async () => {
    const { line, lens, preview } = await said([first, second, ...others]);
    assert.match(line, /: one solution$/);
    assert.match(lens, / · one solution, proven$/);
    assert.equal(preview, "One solution, proven.");
  });

  it("is also that a smaller circle can close: one full circle says nothing of that", async () => {
    const { line, lens, preview } = await said([first, twice, ...others]);
    assert.match(line, /: one solution, but a smaller circle can close$/);
    assert.match(lens, / · one solution, proven, but a smaller circle can close$/);
    assert.equal(preview, "One solution, proven. A smaller circle can close while cards are left over.");
  });

  it("is both where there are several full circles", async () => {
    const third = `${others[0]?.split(" = ")[0]} = ${first.split(" = ")[1]}`;
    const { line, lens, preview } = await said([first, twice, third, ...others.slice(1)]);
    assert.match(line, /: several solutions, and a smaller circle can close$/);
    assert.match(lens, / · more than one solution, and a smaller circle can close$/);
    assert.match(preview, /to solve it.*A smaller circle can close/);
  });
});
