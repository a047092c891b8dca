import assert from "node:assert/strict";
import { difficultyText } from "../../src/activities/difficulty";
import { toJson } from "../../src/cli/json";
import { unitReport } from "../../src/cli/report";
import { proofLines } from "../../src/cli/text";
import { screenOf } from "../../src/editor/preview/screen";
import type { Sheet } from "../../src/page/sheet";
import { readUnitText, testWorkshop, unitOf, word } from "../support/units";

/** Every text of a sheet. */
function textsOn({ items }: Sheet): string[] {
  return items.flatMap((item) => (item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : []));
}

describe("how hard tiles are", () => {
  const measure = { wrongNeighbours: 6, survives: 3, detour: 12, capped: false, nodes: 20 };

  it("is told in a few words", () => {
    assert.equal(difficultyText({ ...measure, wrongNeighbours: 0, survives: 0 }), "no wrong neighbours");
    assert.equal(difficultyText(measure), "each wrong neighbour tried once: 12 tiles laid in vain");
    assert.equal(
      difficultyText({ ...measure, wrongNeighbours: 1, survives: 0, detour: 1 }),
      "each wrong neighbour tried once: 1 tile laid in vain",
    );
    assert.equal(
      difficultyText({ ...measure, capped: true }),
      "each wrong neighbour tried once: at least 12 tiles laid in vain",
    );
  });

  it("stands in the command line's text and JSON, in the preview and on the key", async () => {
    const shared = unitOf(12, "grid: 3 x 3\nseed: 2").replace(`${word(1)}o`, `${word(0)}o`);
    for (const [text, told] of [
      [shared, /^each wrong neighbour tried once: \d+ tiles? laid in vain$/],
      [unitOf(12, "grid: 3 x 3"), /^no wrong neighbours$/],
    ] as const) {
      const reading = await readUnitText(text);
      const [activity] = reading.activities;
      const [deal] = activity?.deals ?? [];
      assert.ok(activity && deal?.difficulty);
      const short = difficultyText(deal.difficulty);
      assert.match(short, told);
      const report = unitReport("unit.unit.md", reading);
      assert.deepEqual(proofLines(report), [
        `  ${activity.title}: 3 × 3 tiles; ${deal.code}, 1 set: one solution (${short})`,
      ]);
      const { proofs } = JSON.parse(JSON.stringify(toJson(report)));
      assert.deepEqual(proofs[0].difficulty, deal.difficulty);
      const workshop = await testWorkshop();
      const sentence = `${short.charAt(0).toUpperCase()}${short.slice(1)}.`;
      assert.equal(screenOf(workshop, reading, { view: "solved" }).line, `One solution, proven. ${sentence}`);
      const [key] = workshop.view(reading, activity, deal, "solved");
      assert.ok(key);
      assert.equal(textsOn(key).includes(sentence), deal.difficulty.wrongNeighbours > 0);
    }
  });
});
