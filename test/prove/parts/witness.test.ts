import assert from "node:assert/strict";
import { lookOf } from "../../../src/prove/assembly";
import { type Assembly, isAssembly, proveTiles, type TilePuzzle, type Turn } from "../../../src/prove/tiles";
import { dealt } from "../instances";

const turns: readonly Turn[] = [0, 1, 2, 3];

/** Whether turning one tile or exchanging two makes another assembly to look at: each such change is tried. */
function isNear(puzzle: TilePuzzle, intended: Assembly): boolean {
  const { cells } = intended;
  const look = lookOf(puzzle, intended);
  return cells.some(({ tile: own }, a) =>
    cells.slice(a).some(({ tile: other }, distance) =>
      turns.some((turnA) =>
        turns.some((turnB) => {
          const changed = cells.with(a + distance, { tile: own, turn: turnB }).with(a, { tile: other, turn: turnA });
          const replaced = { ...intended, cells: changed };
          return isAssembly(puzzle, replaced) && lookOf(puzzle, replaced) !== look;
        }),
      ),
    ),
  );
}

describe("a second assembly near the intended one", () => {
  it("is found iff turning one tile or exchanging two gives one, among many different tiles too", () => {
    const seen = { near: 0, far: 0 };
    for (let seed = 1; seed <= 120; seed++) {
      const { puzzle, intended } = dealt({ rows: 4, columns: 5, repeat: 14 + (seed % 12), blank: true, seed });
      const near = isNear(puzzle, intended);
      seen[near ? "near" : "far"]++;
      assert.equal(proveTiles(puzzle, { intended, budget: 200 }).by === "witness", near, `seed ${seed}`);
    }
    assert.ok(seen.near >= 5 && seen.far >= 5, JSON.stringify(seen));
  });
});
