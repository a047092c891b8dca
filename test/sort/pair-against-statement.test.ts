import assert from "node:assert/strict";
import { readUnitText, slice } from "../support/units";

describe("pairs and statements that are sorted together", () => {
  const unit = (statement: string, options: string): string =>
    `## Na cozinha\n\n- o pote = the pot\n- a tampa = the lid\n- o fogo = the fire\n- a pia = the sink\n\n${statement}\n- [x] A pia é de pedra.\n\n\`\`\`activity\nmake: sort\n${options}\n\`\`\`\n`;

  const read = async (text: string) => {
    const { findings, activities } = await readUnitText(text);
    const told = findings.filter(({ code }) => code === "contradicting-statements");
    return { told, status: activities[0]?.deals[0]?.proof.status };
  };

  it("contradict each other where a statement is false that a pair says", async () => {
    const text = unit("- [ ] o pote = the pot", "mispair: 0");
    const { told, status } = await read(text);
    assert.equal(status, "none");
    assert.equal(told.length, 1);
    assert.match(told[0]?.message ?? "", /marked false here, but a pair says so/);
    const [pair] = told[0]?.related ?? [];
    assert.equal(pair && slice(text, pair.range), "o pote = the pot");
  });

  it("do not where it says something else, or the same", async () => {
    for (const statement of ["- [ ] o pote = the lid", "- [x] o pote = the pot"]) {
      assert.deepEqual(await read(unit(statement, "mispair: 0")), { told: [], status: "one" }, statement);
    }
  });

  it("contradict each other where a pair is shown with a wrong partner that a statement calls right", async () => {
    const seen = new Set<string | undefined>();
    for (let seed = 1; seed <= 30; seed++) {
      const { told, status } = await read(unit("- [x] o pote = the lid", `mispair: 2\nseed: ${seed}`));
      seen.add(status);
      assert.equal(told.length, status === "none" ? 1 : 0, String(seed));
      for (const { message } of told)
        assert.match(message, /shown as false here, with a wrong partner, but another statement/);
    }
    assert.deepEqual([...seen].sort(), ["none", "one"]);
  });
});
