import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

describe("look-alikes on cards of a circle", () => {
  const unit = (pairs: readonly string[], make: string): string =>
    `---\nteaches: pt\nexplains: en\n---\n\n## S\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;

  async function told(pairs: readonly string[], make: string): Promise<string[]> {
    const { findings } = await readUnitText(unit(pairs, make));
    return findings
      .filter(({ code }) => code === "look-alike")
      .map(({ severity, message }) => `${severity}: ${message}`);
  }

  const pairs = ["bomba = bell", "Bomba = pump", "luz = cable", "pedal = nut"];

  it("leave one circle of all cards, but not without a smaller one: nothing keeps the two apart", async () => {
    const [hint, ...more] = await told(pairs, "loop");
    assert.deepEqual(more, []);
    assert.match(hint ?? "", /^hint: /u);
    assert.doesNotMatch(hint ?? "", /keep them apart/u);
    assert.ok(
      hint?.endsWith(
        " For someone who overlooks it the solution is still the only one, but the cards of “S – loop” can close a circle while others are left over.",
      ),
      hint,
    );
  });

  it("are kept apart on tiles, where there is no circle to close", async () => {
    const [hint] = await told(pairs, "tiles\ngrid: 2 x 2");
    assert.match(hint ?? "", /Other words keep them apart: for someone who overlooks it/u);
  });
});
