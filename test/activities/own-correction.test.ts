import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

const unit = (make: string, ...items: readonly string[]): string =>
  `## The workshop\n\n- [x] A roda gira.\n- [x] O selim é macio.\n- [x] O sino toca.\n- [ ] O pneu é quadrado.\n- [ ] A bomba canta.\n${items.join("\n")}\n\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;

/** Codes of what is found that matters, and what the proof says. */
async function verdictOf(text: string): Promise<readonly string[]> {
  const { findings, activities } = await readUnitText(text);
  const codes = findings.filter(({ severity }) => severity === "error" || severity === "warning");
  return [
    ...codes.map(({ code }) => code),
    ...activities.flatMap(({ deals }) => deals.map(({ proof }) => proof.status)),
  ];
}

describe("a correction that says the same as its statement", () => {
  for (const make of ["sort", "calls"]) {
    it(`is a slip of the key in ${make}, no contradiction`, async () => {
      const own = unit(make, "- [ ] A corrente é nova.", "  - A corrente é nova.");
      assert.deepEqual(await verdictOf(own), ["same-correction", "one"]);
    });

    it(`contradicts another statement of ${make} no more where that says the same`, async () => {
      const slip = ["- [ ] A corrente é nova.", "  - A corrente é nova."];
      const twice = await verdictOf(unit(make, ...slip, "- [ ] A corrente é nova."));
      assert.ok(!twice.includes("contradicting-statements") && twice.at(-1) === "one", twice.join());
    });

    it(`contradicts in ${make} where it belongs to another statement`, async () => {
      const other = unit(make, "- [ ] A corrente é nova.", "- [ ] A corrente é velha.", "  - A corrente é nova.");
      assert.deepEqual(await verdictOf(other), ["contradicting-statements", "none"]);
      const both = unit(make, "- [ ] A corrente é nova.", "- [x] A corrente é nova.");
      assert.deepEqual(await verdictOf(both), ["contradicting-statements", "none"]);
    });
  }
});
