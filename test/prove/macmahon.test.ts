import assert from "node:assert/strict";
import { type Assembly, proveTiles, type TileEdges, type TilePuzzle } from "../../src/prove/tiles";
import { standIn } from "./naive";

/*
 * MacMahon's 24 squares in three colours (New Mathematical Pastimes, 1921), like colours together, the whole border in one
 * colour. 4 × 6: 106,624 as they lie, 53,312 up to half a turn, 13,328 up to turns, reflections and exchanging the two other
 * colours; 3 × 8 and 2 × 12: none. The values were recomputed by two independent programs; 13,328 is credited to Fernández
 * Long, 1977 (from memory, not confirmed). The 12,261 that is often quoted, from a computer run of 1964, is wrong.
 */

function squares(): TileEdges[] {
  const seen = new Map<string, TileEdges>();
  for (let n = 0; n < 81; n++) {
    const tile: TileEdges = [n % 3, Math.floor(n / 3) % 3, Math.floor(n / 9) % 3, Math.floor(n / 27)];
    const key = standIn([[tile]], true);
    if (!seen.has(key)) seen.set(key, tile);
  }
  return [...seen.values()];
}

function bordered(rows: number, columns: number): TilePuzzle {
  return { rows, columns, tiles: squares(), partners: [[0], [1], [2]], turn: "free", outer: [0] };
}

const everything = { cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY };

/** The shown texts row by row, mirrored left to right and with the colours 1 and 2 exchanged as asked for. */
function picture(tiles: readonly TileEdges[], { rows, columns, cells }: Assembly, mirror: boolean, swap: boolean) {
  const colour = (text = 0) => (swap && text > 0 ? 3 - text : text);
  const faces = cells.map(({ tile, turn }) => {
    const shown = [0, 1, 2, 3].map((side) => colour(tiles[tile]?.at((side - turn + 4) % 4)));
    const [n = 0, e = 0, s = 0, w = 0] = shown;
    return mirror ? [n, w, s, e] : [n, e, s, w];
  });
  return Array.from({ length: rows }, (_, row) => {
    const line = faces.slice(row * columns, (row + 1) * columns);
    return mirror ? line.reverse() : line;
  });
}

describe("MacMahon's three-coloured squares", () => {
  it("are 24", () => assert.equal(squares().length, 24));

  for (const [rows, columns] of [
    [3, 8],
    [2, 12],
  ] as const) {
    it(`have no one-colour border in ${rows} × ${columns}`, function () {
      this.timeout(60_000);
      const proof = proveTiles(bordered(rows, columns), everything);
      assert.deepEqual([proof.status, proof.count, proof.capped], ["none", 0, false]);
    });
  }

  // Some 28 million tiles are laid, which takes minutes: set CUTWORK_LONG_TESTS to have it.
  it("have 53,312 one-colour borders in 4 × 6, which are 13,328 patterns", function () {
    if (!process.env["CUTWORK_LONG_TESTS"]) this.skip();
    this.timeout(1_800_000);
    const puzzle = bordered(4, 6);
    const patterns = new Set<string>();
    let raw = 0;
    const found = (assembly: Assembly) => {
      const likenesses = [false, true].flatMap((mirror) =>
        [false, true].map((swap) => standIn(picture(puzzle.tiles, assembly, mirror, swap), true)),
      );
      patterns.add(likenesses.sort()[0] ?? "");
      // No half turn leaves a pattern as it was, since every tile is there once and none lies in the middle.
      raw += 2;
    };
    const proof = proveTiles(puzzle, { ...everything, found });
    assert.deepEqual([proof.status, proof.count, proof.capped], ["several", 53_312, false]);
    assert.equal(raw, 106_624);
    assert.equal(patterns.size, 13_328);
  });
});
