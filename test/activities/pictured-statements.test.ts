import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

const unit = (make: string, ...items: readonly string[]): string =>
  `## The workshop\n\n- [x] O selim é macio.\n- [x] O sino toca.\n- [ ] O pneu é quadrado.\n- [ ] A bomba canta.\n${items.join("\n")}\n\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;

/** What is found of contradictions and words that are easily mistaken, and what the proof says. */
async function verdictOf(text: string): Promise<readonly string[]> {
  const { findings, activities } = await readUnitText(text);
  const codes = findings.filter(({ code }) => code === "contradicting-statements" || code === "look-alike");
  return [
    ...codes.map(({ code, severity }) => `${code} ${severity}`),
    ...activities.flatMap(({ deals }) => deals.map(({ proof }) => proof.status)),
  ];
}

describe("a statement with a picture", () => {
  const plain = "A roda gira.";
  const pictured = "![a wheel](wheel.png) A roda gira.";
  const contradicting = ["contradicting-statements error", "none"];

  it("is called like the same words without it", async () => {
    assert.deepEqual(await verdictOf(unit("calls", `- [x] ${plain}`, `- [ ] ${pictured}`)), contradicting);
    assert.deepEqual(await verdictOf(unit("calls", `- [x] ${pictured}`, `- [ ] ${plain}`)), contradicting);
    const corrected = unit("calls", `- [ ] ${pictured}`, "- [ ] A roda chia.", `  - ${plain}`);
    assert.deepEqual(await verdictOf(corrected), contradicting);
    assert.deepEqual(await verdictOf(unit("calls", `- [x] ${plain}`, "- [ ] ![a wheel](wheel.png) A roda gira!")), [
      "look-alike warning",
      "one",
    ]);
  });

  it("is another card to sort than the same words without it", async () => {
    assert.deepEqual(await verdictOf(unit("sort", `- [x] ${plain}`, `- [ ] ${pictured}`)), ["one"]);
    assert.deepEqual(await verdictOf(unit("sort", `- [x] ${pictured}`, `- [ ] ${plain}`)), ["one"]);
    assert.deepEqual(await verdictOf(unit("sort", `- [x] ${pictured}`, `- [ ] ${pictured}`)), contradicting);
  });
});
