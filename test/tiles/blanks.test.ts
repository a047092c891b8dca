import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import { tiles } from "../../src/activities/tiles/kind";
import { blanksIn } from "../../src/activities/tiles/rules/causes";
import { readUnit } from "../../src/unit/read";
import { applyEdits, readUnitText, unitOf } from "../support/units";

/** The finding about the number of solutions of tiles with blank inner edges. */
async function told(pairs: number, options: string): Promise<{ code: string; message: string; fixes: string[] }> {
  const text = unitOf(pairs, `${options}\nfill: blank`);
  const { findings } = await readUnitText(text);
  const [found, ...others] = findings.filter(({ code }) => code === "several-solutions" || code === "unsettled-proof");
  assert.ok(found && others.length === 0);
  for (const fix of found.fixes) {
    const after = await readUnitText(applyEdits(text, fix.edits));
    assert.ok(!after.findings.some(({ code }) => code === found.code), fix.title);
  }
  return { code: found.code, message: found.message, fixes: found.fixes.map(({ title }) => title) };
}

describe("tiles with hardly a word", () => {
  it("are said to be so, and the largest smaller grid with one solution is offered", async () => {
    const { code, message, fixes } = await told(2, "grid: 3 x 3");
    assert.equal(code, "several-solutions");
    assert.match(message, / 10 of 12 inner edges are blank, and 6 of 9 tiles have no word at all, so too little says/);
    assert.match(message, / Put in more pairs or take a smaller grid\.$/);
    assert.deepEqual(fixes, ["Take a grid of 2 x 2"]);
  });

  it("are mended by a grid that the pairs fill", async () => {
    const { code, message, fixes } = await told(10, "grid: 6 x 6");
    assert.equal(code, "several-solutions");
    assert.match(message, / 50 of 60 inner edges are blank, and 20 of 36 tiles have no word at all/);
    assert.match(message, / Put in more pairs or take a smaller grid\.$/);
    assert.deepEqual(fixes, ["Take the largest grid that the pairs fill"]);
  });

  it("are none where every inner edge has a pair", () => {
    for (const [pairs, silent] of [
      [12, true],
      [11, false],
    ] as const) {
      const [planned] = planUnit(readUnit(unitOf(pairs, "grid: 3 x 3\nfill: blank"))).activities;
      assert.ok(planned?.request);
      const dealt = tiles.deal(planned.request);
      const [deal] = dealt.deals;
      assert.ok(deal);
      assert.equal(blanksIn(dealt, deal) === "", silent);
      if (!silent) assert.match(blanksIn(dealt, deal), /^ 1 of 12 inner edges is blank, so/);
    }
  });

  it("are said to be so also where it is not settled", async () => {
    const { code, message, fixes } = await told(100, "grid: 12 x 12\nturn: fixed");
    assert.equal(code, "unsettled-proof");
    assert.match(message, / 164 of 264 inner edges are blank, and \d+ of 144 tiles have no word at all/);
    assert.deepEqual(fixes, ["Take the largest grid that the pairs fill"]);
  });
});
