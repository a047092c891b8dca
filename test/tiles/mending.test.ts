import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const crossing = ["- o selim = a roda", "- a roda = the wheel", "- a chave = the spanner", "- o óleo = the oil"];
const unit = (options: string, ...more: readonly string[]): string =>
  `## Bench\n\n${[...crossing, ...more].join("\n")}\n\n\`\`\`activity\nmake: tiles\n${options}\n\`\`\`\n`;

/** Titles of the fixes of edges that fit although they are no pair, and what is found after each. */
async function offersOf(text: string): Promise<{ title: string; after: string[] }[]> {
  const { findings } = await readUnitText(text);
  const own = findings.filter(({ code }) => code === "ambiguous-edge");
  assert.equal(own.length, 1);
  return Promise.all(
    own.flatMap(({ fixes }) =>
      fixes.map(async ({ title, edits }) => ({
        title,
        after: (await readUnitText(applyEdits(text, edits))).findings.map(({ code }) => code),
      })),
    ),
  );
}

describe("fixes of edges that fit although they are no pair", () => {
  it("take no pair out that the tiles need", async () => {
    assert.deepEqual(await offersOf(unit("grid: 2 x 2")), []);
    assert.deepEqual(await offersOf(unit("")), []);
  });

  it("take one out where enough stay, or where blank edges may be", async () => {
    const blank = await offersOf(unit("grid: 2 x 2\nfill: blank"));
    const many = await offersOf(
      unit("grid: auto", "- o sino = the bell", "- o cesto = the basket", "- o farol = the lamp"),
    );
    for (const offers of [blank, many]) {
      assert.deepEqual(
        offers.map(({ title }) => title),
        ["Take out “a roda = the wheel”"],
      );
      assert.ok(!offers.some(({ after }) => after.includes("ambiguous-edge") || after.includes("too-few-pairs")));
    }
  });
});
