import assert from "node:assert/strict";
import { readUnitText, unitOf } from "../support/units";

/* Nothing is left out on paper without a word, whatever is turned off. */

describe("what would be missing on paper", () => {
  for (const [code, item] of [
    ["missing-glyph", "- o sol ☀ = the sun"],
    ["missing-picture", "- ![a spoon](none.png) = a colher"],
  ] as const) {
    it(`${code} is told as information where it is turned off`, async () => {
      const unit = unitOf(4, "").replace(/^- .*$/m, item);
      const severities = async (front: string): Promise<string[]> =>
        (await readUnitText(`${front}${unit}`)).findings.flatMap((each) => (each.code === code ? [each.severity] : []));
      assert.deepEqual(await severities(""), ["error"]);
      assert.deepEqual(await severities(`---\nseverities:\n  ${code}: off\n---\n`), ["information"]);
      assert.deepEqual(await severities(`---\nseverities:\n  ${code}: hint\n---\n`), ["hint"]);
    });
  }

  it("anything else is gone where it is turned off", async () => {
    const text = unitOf(6, "grid: 2 x 2");
    const codes = async (front: string): Promise<string[]> =>
      (await readUnitText(`${front}${text}`)).findings.map(({ code }) => code);
    assert.ok((await codes("")).includes("unused-pairs"));
    assert.ok(!(await codes("---\nseverities:\n  unused-pairs: off\n---\n")).includes("unused-pairs"));
  });
});
