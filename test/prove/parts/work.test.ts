import assert from "node:assert/strict";
import { proveTiles } from "../../../src/prove/tiles";
import { dealt, type Recipe } from "../instances";

/*
 * Work is counted in tiles laid, which is the same on every machine. What follows at once is drawn without a choice, so that
 * a grid as teachers have it takes hardly more tiles than it has cells. The sums were measured; a change that needs less work
 * lowers them.
 */

describe("the work of the tile prover", () => {
  const seeds = [1, 2, 3, 4, 5, 6];
  const work = (recipe: Omit<Recipe, "seed">) =>
    seeds.map((seed) => {
      const { puzzle } = dealt({ ...recipe, seed });
      return proveTiles(puzzle, { budget: 5_000 });
    });

  for (const recipe of [
    { rows: 12, columns: 12, repeat: 8, hits: 4 },
    { rows: 12, columns: 12, repeat: 4 },
    { rows: 6, columns: 6, repeat: 8, blank: true },
    { rows: 5, columns: 5, repeat: 5, hits: 3, turn: "fixed" },
  ] as const)
    it(`lays each tile once where all follows: ${JSON.stringify(recipe)}`, () => {
      for (const { status, nodes } of work(recipe))
        assert.deepEqual([status, nodes], ["one", recipe.rows * recipe.columns]);
    });

  for (const [most, recipe] of [
    [470, { rows: 8, columns: 8, repeat: 8, hits: 4 }],
    [306, { rows: 6, columns: 6, repeat: 6, hits: 8 }],
    [1203, { rows: 4, columns: 4, repeat: 8, hits: 8 }],
    [1101, { rows: 8, columns: 8, repeat: 8, hits: 16 }],
    [2563, { rows: 6, columns: 6, repeat: 5, hits: 24 }],
    [317, { rows: 4, columns: 6, repeat: 8, frameUntold: true }],
    [174, { rows: 1, columns: 12, repeat: 4, hits: 3 }],
  ] as const)
    it(`lays at most ${most} tiles for ${JSON.stringify(recipe)}`, () => {
      const nodes = work(recipe).reduce((sum, proof) => sum + proof.nodes, 0);
      assert.ok(nodes <= most, `${nodes}`);
    });
});
