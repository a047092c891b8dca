import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const unit =
  "## Words\n\n- o sol = the sun\n- o mar = the sea\n\n### Waves\n\n- a onda = the wave\n- a rede = the net\n- o cais = the quay\n- o mastro = the mast\n\n```activity\nmake: tiles\ngrid: 2 x 2\nfrom: Waves\n```\n";

describe("a section that is named by a heading within another one", () => {
  it("is told as such, with both that may be meant", async () => {
    const found = (await readUnitText(unit)).findings.filter(({ code }) => code === "unknown-section");
    assert.deepEqual(
      found.map(({ message, range }) => [message, unit.slice(range.start, range.end)]),
      [["“Waves” is a heading within the section “Words”: a section has two number signs.", "Waves"]],
    );
    const fixed = (found[0]?.fixes ?? []).map(({ edits }) => applyEdits(unit, edits));
    assert.deepEqual(fixed, [unit.replace("from: Waves", "from: Words"), unit.replace("### Waves", "## Waves")]);
    for (const text of fixed)
      assert.ok(!(await readUnitText(text)).findings.some(({ severity }) => severity === "error"), text);
  });
});
