import assert from "node:assert/strict";
import { lookOf } from "../../../src/prove/assembly";
import { certificate } from "../../../src/prove/certificate";
import { type Assembly, isAssembly, proveTiles, type TilePuzzle, TileSearch } from "../../../src/prove/tiles";
import { dealt } from "../instances";
import { countNaively } from "../naive";
import { anySmall } from "../small";
import { sizes } from "./pieces";

const everything = { cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY };

/** A row of two that can be laid in two ways, and tiles by which no mate is the only one. */
const twoWays: TilePuzzle = {
  rows: 1,
  columns: 3,
  tiles: [
    [9, 0, 9, 8],
    [9, 0, 9, 1],
    [9, 0, 9, 1],
  ],
  partners: [[1], [0]],
  turn: "fixed",
};

describe("the verdict on tiles", () => {
  it("needs a frame that the tiles fill, of one row at least", () => {
    const tile = [0, 0, 0, 0] as const;
    for (const [rows, columns, tiles] of [
      [0, 3, []],
      [-1, -1, [tile]],
      [1, 2, [tile]],
      [1, 1, [tile, tile]],
    ] as const)
      assert.throws(() => proveTiles({ rows, columns, tiles, partners: [], turn: "free" }), RangeError);
  });

  it("tells of each visible assembly once, the intended one apart", () => {
    let told = 0;
    for (let seed = 1; seed <= 120; seed++) {
      const puzzle = anySmall(seed, sizes);
      const all: Assembly[] = [];
      proveTiles(puzzle, { ...everything, found: (assembly) => all.push(assembly) });
      const looks = new Set(all.map((assembly) => lookOf(puzzle, assembly)));
      assert.equal(looks.size, all.length);
      assert.ok(all.every((assembly) => isAssembly(puzzle, assembly)));
      const intended = all.at(-1);
      if (!intended) continue;
      const others = new Set<string>();
      const { count } = proveTiles(puzzle, {
        ...everything,
        intended,
        found: (assembly) => others.add(lookOf(puzzle, assembly)),
      });
      assert.equal(count, all.length);
      assert.deepEqual([...others, lookOf(puzzle, intended)].sort(), [...looks].sort());
      told += others.size;
    }
    assert.ok(told > 120, `${told}`);
  });

  it("shows a second one: other than the first found where none is intended, else other than that", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const puzzle = anySmall(seed, sizes);
      const all: Assembly[] = [];
      const { second } = proveTiles(puzzle, { ...everything, found: (assembly) => all.push(assembly) });
      assert.deepEqual(second, all[1]);
      // What is no assembly is not what is meant, so that any one is another.
      const [first] = all;
      const wrong = { rows: puzzle.rows, columns: puzzle.columns, cells: [{ tile: 0, turn: 0 }] } as const;
      if (!first || puzzle.tiles.length === 1) continue;
      const proof = proveTiles(puzzle, { ...everything, intended: { ...first, cells: wrong.cells.slice(1) } });
      assert.equal(proof.count, all.length);
      assert.ok(proof.second && isAssembly(puzzle, proof.second));
    }
  });

  it("says what settled it, what it cost and whether there may be more", () => {
    const verdict = (puzzle: TilePuzzle, options = {}) => {
      const { status, count, capped, nodes, by } = proveTiles(puzzle, options);
      return [status, count, capped, nodes > 0, by];
    };
    const { puzzle, intended } = dealt({ rows: 2, columns: 3, repeat: 1, seed: 1 });
    assert.deepEqual(verdict(puzzle), ["one", 1, false, false, "certificate"]);
    assert.deepEqual(verdict(puzzle, { intended }), ["one", 1, false, false, "certificate"]);
    assert.deepEqual(verdict({ ...puzzle, outer: [] }), ["none", 0, false, false, "certificate"]);
    assert.deepEqual(verdict({ ...puzzle, outer: [] }, { intended }), ["none", 0, false, false, "certificate"]);

    // 8 faces out on the left or on the right, and two tiles print alike.
    assert.equal(countNaively(twoWays), 1);
    assert.deepEqual(verdict(twoWays), ["one", 1, false, true, "search"]);
    const meant: Assembly = { rows: 1, columns: 3, cells: [0, 1, 2].map((tile) => ({ tile, turn: 0 })) };
    assert.deepEqual(verdict(twoWays, { intended: meant }), ["one", 1, false, true, "search"]);
    const open = { ...twoWays, tiles: twoWays.tiles.with(2, [9, 0, 7, 1]) };
    assert.deepEqual(verdict(open), ["several", 2, true, true, "search"]);
    assert.deepEqual(verdict(open, { cap: 1 }), ["several", 2, true, true, "search"]);
    assert.deepEqual(verdict(open, { cap: 3 }), ["several", 2, false, true, "search"]);
    assert.deepEqual(verdict(open, { intended: meant }), ["several", 2, true, false, "witness"]);
    assert.deepEqual(verdict(open, { intended: meant, cap: 3 }), ["several", 2, false, true, "search"]);
    assert.deepEqual(verdict(open, { budget: 0 }), ["unsettled", 0, false, false, "search"]);
    assert.deepEqual(verdict(open, { budget: 0, intended: meant, cap: 3 }), ["unsettled", 1, false, false, "search"]);
  });

  it("comes in slices, with what is known so far", () => {
    const { puzzle } = dealt({ rows: 6, columns: 6, seed: 1, repeat: 5, hits: 24 });
    const search = new TileSearch(puzzle);
    assert.equal(search.proof.status, "unsettled");
    let slices = 0;
    while (!search.advance(20)) slices++;
    const withoutSearch = 4;
    assert.ok(slices > withoutSearch + 4 && slices <= withoutSearch + search.proof.nodes / 20, `${slices}`);
    assert.equal(search.advance(0), true);
    assert.equal(search.proof.status, "one");
  });
});

describe("the certificate", () => {
  it("settles just the puzzles in which no side has two mates or one that lies apart, and as trying all does", () => {
    const verdicts = { one: 0, none: 0, open: 0 };
    for (let seed = 1; seed <= 600; seed++) {
      const puzzle = anySmall(seed, sizes);
      const settled = certificate(puzzle);
      const mates = puzzle.tiles.flatMap((edges, tile) =>
        edges.map((text) =>
          puzzle.tiles.flatMap((others, other) =>
            other === tile
              ? []
              : others.filter(
                  (facing) => puzzle.partners[text]?.includes(facing) || puzzle.partners[facing]?.includes(text),
                ),
          ),
        ),
      );
      if (mates.some((list) => list.length > 1)) assert.equal(settled, undefined);
      verdicts[settled === undefined ? "open" : settled === "none" ? "none" : "one"]++;
      if (settled === undefined) continue;
      assert.equal(countNaively(puzzle), settled === "none" ? 0 : 1, `seed ${seed}`);
      if (settled !== "none") assert.ok(isAssembly(puzzle, settled));
    }
    assert.ok(verdicts.one > 40 && verdicts.none > 15, JSON.stringify(verdicts));
  });

  it("says none where the figure is no frame, or one that does not count", () => {
    // Three tiles round a corner; the fourth place is left open, or the fourth tile reaches out of it.
    const corner = [
      [20, 0, 2, 21],
      [22, 23, 24, 1],
      [3, 25, 26, 27],
    ] as const;
    const partners = [[1], [], [3], [], [5], []];
    const three: TilePuzzle = { rows: 1, columns: 3, tiles: corner, partners, turn: "free" };
    assert.equal(certificate(three), "none");
    const tail = [corner[0], [22, 4, 24, 1], corner[2], [28, 29, 30, 5]] as const;
    assert.equal(certificate({ ...three, rows: 2, columns: 2, tiles: tail }), "none");
    // A row of three lies in no column, unless it may be turned or the frame is untold.
    const row = [
      [9, 0, 9, 9],
      [9, 2, 9, 1],
      [9, 9, 9, 3],
    ] as const;
    const column: TilePuzzle = { rows: 3, columns: 1, tiles: row, partners, turn: "fixed" };
    assert.equal(certificate(column), "none");
    assert.deepEqual(certificate({ ...column, frameUntold: true }), certificate({ ...column, rows: 1, columns: 3 }));
    const upright = certificate({ ...column, turn: "free" });
    assert.ok(upright && upright !== "none");
    assert.deepEqual([upright.rows, upright.columns, upright.cells.map(({ turn }) => turn)], [3, 1, [1, 1, 1]]);
  });
});
