import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const errors = (findings: readonly { severity: string; code: string }[]): string[] =>
  findings.filter(({ severity }) => severity === "error").map(({ code }) => code);

describe("a larger grid for pairs that are on no tile", () => {
  const unit = (pairs: readonly string[], options: string): string =>
    `## Drinks\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}\n\`\`\`activity\nmake: tiles\n${options}\n\`\`\`\n`;
  const pairs = [
    "chá = tea",
    "leite = milk",
    "água = water",
    "sumo = juice",
    "café = coffee",
    "vinho = wine",
    "sal = salt",
  ];

  async function offered(text: string): Promise<string[]> {
    const { findings } = await readUnitText(text);
    assert.deepEqual(errors(findings), []);
    const fixes = findings.filter(({ code }) => code === "unused-pairs").flatMap((finding) => finding.fixes);
    for (const { edits } of fixes) assert.deepEqual(errors((await readUnitText(applyEdits(text, edits))).findings), []);
    return fixes.map(({ title }) => title);
  }

  it("is offered where it is proven to have one solution", async () => {
    assert.ok((await offered(unit(pairs, "grid: 2 x 2"))).includes("Make 2 × 3 tiles"));
  });

  for (const options of ["fill: blank", "grid: 2 x 2", "fill: words\ngrid: 2 x 2", "fill: blank\nseed: 2", "seed: 2"])
    it(`writes each option once, whichever of them stand there: ${options.replace("\n", ", ")}`, async () => {
      const text = unit(pairs.slice(0, 5), options);
      const { findings } = await readUnitText(text);
      const fix = findings
        .flatMap(({ fixes }) => fixes)
        .find(({ title }) => title === "Make 2 × 3 tiles with 2 blank inner edges");
      assert.ok(fix);
      const places = fix.edits.map(({ range }) => range.start);
      assert.equal(new Set(places).size, places.length, "an editor takes one edit at a place");
      const mended = applyEdits(text, fix.edits);
      assert.equal(mended.match(/^grid: 2 x 3$/gm)?.length, 1, mended);
      assert.equal(mended.match(/^fill: blank$/gm)?.length, 1, mended);
      assert.deepEqual(
        (await readUnitText(mended)).findings.map(({ code }) => code),
        [],
      );
    });

  it("is not offered where a named decoy would answer a word that comes on a tile then", async () => {
    // One of the pairs that are left out has the decoy for its answer.
    const { activities } = await readUnitText(unit(pairs, "grid: 2 x 2"));
    const [deal] = activities[0]?.deals ?? [];
    assert.ok(deal && "solved" in deal);
    const texts = JSON.stringify(deal.solved);
    const out = pairs.find((pair) => !texts.includes(`"${pair.split(" = ")[1]}"`))?.split(" = ")[1];
    assert.ok(out);
    const titles = await offered(unit(pairs, `grid: 2 x 2\ndecoys: [${out}, o mar]`));
    assert.ok(!titles.includes("Make 2 × 3 tiles"), titles.join());
  });
});
