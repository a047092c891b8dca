import assert from "node:assert/strict";
import { Stock } from "../../src/prove/stock";
import type { TileEdges, TilePuzzle } from "../../src/prove/tiles";
import { countArrangements } from "./loops/arrangements";

/** Every way to colour the four edges of one square, as so many tiles in a row. */
function coloured(colours: number, turn: "free" | "fixed"): TilePuzzle {
  const tiles = Array.from({ length: colours ** 4 }, (_, n): TileEdges => {
    const edge = (place: number) => Math.floor(n / colours ** place) % colours;
    return [edge(0), edge(1), edge(2), edge(3)];
  });
  return { rows: 1, columns: tiles.length, tiles, partners: [], turn };
}

describe("squares with coloured edges", () => {
  // n(n + 1)(n² − n + 2)/4: MacMahon, New Mathematical Pastimes, 1921; recomputed by independent programs.
  [1, 6, 24, 70, 165, 336].forEach((count, i) => {
    const colours = i + 1;
    it(`in ${colours} colours are ${count} tiles that print differently, whichever way they are turned`, () => {
      assert.equal((colours * (colours + 1) * (colours ** 2 - colours + 2)) / 4, count);
      const { types } = new Stock(coloured(colours, "free"));
      assert.equal(types.length, count);
      // Each looks different in as many turns as there are colourings that are its turns.
      for (const { tiles, turns } of types) assert.equal(tiles.length, turns);
      // One colour all round, and two colours that alternate.
      assert.equal(types.filter(({ turns }) => turns === 1).length, colours);
      assert.equal(types.filter(({ turns }) => turns === 2).length, (colours * (colours - 1)) / 2);
    });
  });

  it("that show which way is up are all different", () => {
    assert.equal(new Stock(coloured(4, "fixed")).types.length, 256);
  });
});

describe("no cards at all", () => {
  // OEIS A000166 begins with 1.
  it("have one arrangement that matches everywhere: the first of the derangement numbers", () => {
    assert.equal(countArrangements({ follows: [] }), 1n);
  });
});
