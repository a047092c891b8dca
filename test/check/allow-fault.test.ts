import assert from "node:assert/strict";
import { applyEdits, readUnitText, slice, unitOf } from "../support/units";

/* `allow` in an activity, written otherwise than with a reason for each code. Of nine pairs two are left over. */
const unit = (allow: string): string => unitOf(9, allow);

async function told(allow: string): Promise<{ found: string[]; fixed: string | undefined }> {
  const text = unit(allow);
  const { findings } = await readUnitText(text);
  const found = findings.filter(({ code }) => code !== "unused-pairs");
  const fix = found.flatMap(({ fixes }) => fixes)[0];
  return {
    found: found.map(({ code, message, range }) => `${code} ${slice(text, range)} ${message}`),
    fixed: fix && applyEdits(text, fix.edits),
  };
}

describe("what is allowed in an activity", () => {
  const form = "what is meant stands in “allow” with its reason, as in “allow: { CODE: reason }”.";

  for (const [allow, place, wanted] of [
    ['allow: "unused-pairs: the rest"', '"unused-pairs: the rest"', '{ unused-pairs: "the rest" }'],
    ["allow:\n  - unused-pairs: the rest", "- unused-pairs: the rest", '{ unused-pairs: "the rest" }'],
    ['allow: ["unused-pairs: it"]', '["unused-pairs: it"]', '{ unused-pairs: "it" }'],
  ] as const) {
    it(`${JSON.stringify(allow)} becomes a mapping`, async () => {
      const { found, fixed } = await told(allow);
      assert.deepEqual(found, [`wrong-option ${place} This is no mapping: ${form}`]);
      assert.equal(fixed, unit(allow).replace(place, wanted));
      assert.deepEqual((await readUnitText(fixed ?? "")).findings, []);
    });
  }

  it("has a reason for each code, which only the writer knows", async () => {
    for (const [allow, place] of [
      ["allow: unused-pairs", "unused-pairs"],
      ["allow: [unused-pairs]", "[unused-pairs]"],
      ['allow: ["unused-pairs: it", look-alike]', '["unused-pairs: it", look-alike]'],
    ] as const) {
      const { found, fixed } = await told(allow);
      assert.deepEqual(found, [`wrong-option ${place} A code alone does not do: ${form}`]);
      assert.equal(fixed, undefined);
    }
    for (const allow of ["allow: { unused-pairs: }", "allow:\n  unused-pairs:", 'allow: { "unused-pairs": "" }'])
      assert.deepEqual(
        (await told(allow)).found,
        ["wrong-option unused-pairs “unused-pairs” needs a reason here: why is it meant?"],
        allow,
      );
  });
});
