import assert from "node:assert/strict";
import { adopt } from "../../src/activities/foreign";
import { readUnit } from "../../src/unit/read";
import { readUnitText } from "../support/units";
import { shapes } from "./material";

describe("a section of another unit", () => {
  const other =
    "## Articles\n\n### o\n\n- o selim = the saddle\n- o pneu = the tyre\n\n### a\n\n- a roda = the wheel\n- a bomba = the pump\n";
  const unit = (make: string, from: string): string =>
    `## X\n\n\`\`\`activity\nmake: ${make}\nfrom: "${from}"\n\`\`\`\n`;

  it("keeps an item that stands in a pile the one item that it is", async () => {
    const [section] = readUnit(other).sections;
    assert.ok(section);
    const copy = adopt(section, { start: 3, end: 7 }, "far/other.unit.md");
    assert.deepEqual(
      copy.pairs,
      copy.piles.flatMap(({ members }) => members.map(({ item }) => item)),
    );
    copy.piles.flatMap(({ members }) => members).forEach(({ item }, i) => void assert.equal(item, copy.pairs[i]));
    assert.notEqual(copy.pairs[0], copy.pairs[1]);
    assert.deepEqual(copy.pairs[0]?.range, { start: 3, end: 7 });
    const units = new Map([["other.unit.md", other]]);
    const { findings } = await readUnitText(unit("sort", "other.unit.md#Articles"), { units });
    assert.deepEqual(findings, []);
  });

  it("feeds every kind at both levels, as one of this unit does", async () => {
    const about = {
      tiles: "Bench",
      loop: "Bench",
      board: "Bench",
      sort: "Bench",
      strips: "Morning",
      rebuild: "Ask",
      calls: "Before",
    };
    const text = Object.values(shapes)
      .map((shape) => shape.text)
      .join("\n");
    for (const [make, name] of Object.entries(about)) {
      // A loop may take words of the whole unit for cards that belong nowhere, so it leaves some here.
      const options = make === "tiles" ? "" : `\nlevels: [gentle, hard]${make === "loop" ? "\ntake: 8" : ""}`;
      const far = unit(`${make}${options}`, `other.unit.md#${name}`);
      const here = `${text}\n${unit(`${make}${options}`, name)}`;
      const [there] = (await readUnitText(far, { units: new Map([["other.unit.md", text]]) })).activities;
      const [own] = (await readUnitText(here)).activities;
      assert.ok(there && own && there.deals.length > 0, make);
      assert.deepEqual([make, there.summary], [make, own.summary]);
    }
  });
});
