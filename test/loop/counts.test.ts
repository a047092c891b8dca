import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

describe("the number of full circles", () => {
  // BEST with one class of k cards and the rest alone: one spanning tree, (k − 1)! circles.
  for (const [k, circles] of [
    [3, 2],
    [4, 6],
    [5, 24],
  ] as const)
    it(`is exact: ${k} words with one answer make ${circles}`, async () => {
      const words = ["patrão", "chefe", "dono", "gerente", "diretor"]
        .slice(0, k)
        .map((word) => `- o ${word} = the boss`);
      const others = ["- a amiga = the friend", "- o vizinho = the neighbour"];
      const text = `## People\n\n${[...words, ...others].join("\n")}\n\n\`\`\`activity\nmake: loop\n\`\`\`\n`;
      const [activity] = (await readUnitText(text)).activities;
      const { status, count, capped } = activity?.deals[0]?.proof ?? {};
      assert.deepEqual({ status, count, capped }, { status: "several", count: circles, capped: false });
    });
});
