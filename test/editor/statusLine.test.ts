import { strict as assert } from "node:assert";
import { statusLine } from "../../src/editor/statusLine";
import { readUnitText, unitOf } from "../support/units";

describe("the language status", () => {
  it("says of a unit that is not read yet nothing of another", () => {
    assert.deepEqual(statusLine(undefined), {
      busy: true,
      text: "Reading the unit",
      detail: "",
      level: "information",
    });
  });

  it("counts errors and warnings, and says what is proven", async () => {
    const good = statusLine(await readUnitText(unitOf(12, "")));
    assert.deepEqual([good.busy, good.text, good.level], [false, "Nothing to mend", "information"]);
    assert.match(good.detail, /proven/);
    const { text, level } = statusLine(await readUnitText(unitOf(4, "gird: 3 x 3")));
    assert.deepEqual([text, level], ["1 thing to mend", "error"]);
  });
});
