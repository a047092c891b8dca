import assert from "node:assert/strict";
import {
  type Assembly,
  differences,
  isAssembly,
  proveTiles,
  sameAssembly,
  type TileProof,
  type TilePuzzle,
  TileSearch,
  turned,
} from "../../src/prove/tiles";
import { dealt, type Recipe } from "./instances";
import { countNaively, standIn } from "./naive";
import { anySmall } from "./small";
import { byLogicSolver, exactCover } from "./solvers";

const everything = { cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY };
const sizes = [
  [1, 1],
  [1, 2],
  [2, 1],
  [1, 3],
  [1, 4],
  [2, 2],
  [2, 2],
  [2, 3],
  [3, 2],
  [1, 5],
] as const;

function statusOf(count: number): TileProof["status"] {
  return count === 0 ? "none" : count === 1 ? "one" : "several";
}

function allOf(puzzle: TilePuzzle): Assembly[] {
  const all: Assembly[] = [];
  proveTiles(puzzle, { ...everything, found: (assembly) => all.push(assembly) });
  return all;
}

describe("the tile prover", function () {
  this.timeout(300_000);

  it("counts what laying everything everywhere counts", () => {
    const verdicts = new Set<string>();
    for (let seed = 1; seed <= 300; seed++) {
      const puzzle = anySmall(seed, sizes);
      const count = countNaively(puzzle);
      const proof = proveTiles(puzzle, everything);
      const where = `seed ${seed}: ${JSON.stringify(puzzle)}`;
      assert.deepEqual([proof.count, proof.status, proof.capped], [count, statusOf(count), false], where);
      assert.equal(proveTiles(puzzle).status, statusOf(count), where);
      verdicts.add(`${proof.status} by ${proof.by}, ${puzzle.turn}${puzzle.frameUntold ? ", untold" : ""}`);
    }
    // The draw must reach every kind of verdict, or it would say little.
    for (const way of ["free", "fixed", "free, untold", "fixed, untold"]) {
      for (const verdict of ["one by certificate", "one by search", "none by search", "several by search"]) {
        assert.ok(verdicts.has(`${verdict}, ${way}`), `${verdict}, ${way}`);
      }
    }
  });

  it("counts 3 × 3 grids, some with a tile turned in the middle only", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { puzzle } = dealt({
        rows: 3,
        columns: 3,
        seed,
        repeat: 3 + (seed % 4),
        hits: seed % 5,
        blank: seed % 2 === 0,
      });
      const proof = proveTiles(puzzle, everything);
      assert.equal(proof.count, countNaively(puzzle), `seed ${seed}`);
    }
  });

  it("agrees with an exact cover and a satisfiability solver", async () => {
    const byExactCover = await exactCover();
    for (let seed = 1001; seed <= 1300; seed++) {
      const puzzle = {
        ...anySmall(seed, [
          [2, 2],
          [1, 4],
          [2, 3],
          [3, 2],
        ]),
        frameUntold: false,
      };
      const free = puzzle.turn === "free";
      const looks = (grids: ReturnType<typeof byLogicSolver>) => new Set(grids.map((grid) => standIn(grid, free))).size;
      const count = proveTiles(puzzle, everything).count;
      const cover = byExactCover(puzzle, Number.MAX_SAFE_INTEGER);
      assert.equal(count, looks(cover), `exact cover, seed ${seed}: ${JSON.stringify(puzzle)}`);
      // The other hands out one at a time, each found anew: long lists of exchanged twins are left to the first.
      if (cover.length <= 64) assert.equal(count, looks(byLogicSolver(puzzle, 65)), `satisfiability, seed ${seed}`);
    }
  });

  it("shows a second assembly that is one and looks different, turned to lie as the intended one", () => {
    let shown = 0;
    for (let seed = 1; seed <= 250; seed++) {
      const puzzle = anySmall(seed, sizes);
      const all = allOf(puzzle);
      for (const intended of all.slice(0, 3).map((assembly) => turned(assembly, puzzle.turn === "free" ? 1 : 0))) {
        const proof = proveTiles(puzzle, { intended });
        assert.equal(proof.status, statusOf(all.length));
        assert.equal(proof.second !== undefined, all.length > 1, `seed ${seed}`);
        if (!proof.second) continue;
        shown++;
        assert.ok(isAssembly(puzzle, proof.second), `seed ${seed}`);
        assert.ok(!sameAssembly(puzzle, intended, proof.second), `seed ${seed}`);
        assert.ok(differences(puzzle, intended, proof.second).includes(true));
        assert.equal(proveTiles(puzzle, { ...everything, intended }).count, all.length);
      }
    }
    assert.ok(shown > 100);
  });

  it("comes to the same proof in slices of any size", () => {
    const recipes: Recipe[] = [1, 2, 3, 4].flatMap((seed) => [
      { rows: 6, columns: 6, seed, repeat: 8, hits: 4 },
      { rows: 4, columns: 4, seed, repeat: 8, hits: 8 },
      { rows: 3, columns: 4, seed, repeat: 4, hits: 0, frameUntold: true },
    ]);
    for (const recipe of recipes) {
      const { puzzle, intended } = dealt(recipe);
      for (const budget of [50, 5000]) {
        const whole = proveTiles(puzzle, { intended, budget, cap: 50 });
        for (const slice of [1, 7, 1000]) {
          const search = new TileSearch(puzzle, { intended, budget, cap: 50 });
          while (!search.advance(slice)) assert.ok(search.proof.status === "unsettled" || search.proof.capped);
          assert.deepEqual(search.proof, whole, JSON.stringify({ recipe, budget, slice }));
        }
      }
    }
  });

  it("certifies unique pairs without a search, the frame told or not, decoys or blanks round them", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const frame = { rows: 2 + (seed % 4), columns: 3 + (seed % 3) };
      const turn = seed % 3 === 0 ? "fixed" : "free";
      const recipe = { ...frame, turn, seed, repeat: 1, blank: seed % 2 === 0, frameUntold: seed % 5 < 2 } as const;
      const { puzzle, intended } = dealt(recipe);
      const proof = proveTiles(puzzle, { intended });
      assert.deepEqual([proof.status, proof.by, proof.nodes], ["one", "certificate", 0]);
      assert.equal(proveTiles({ ...puzzle, outer: [] }).status, "none");
    }
  });

  it("does not certify mates that may lie apart", () => {
    // Each side has one mate, but 1 and 2 are twice on the same two tiles: a ring of two, which a row has no room for.
    const tiles = [[8, 0, 8, 2] as const, [8, 3, 8, 1] as const];
    const ring: TilePuzzle = { rows: 1, columns: 2, tiles, partners: [[1], [], [3]], turn: "fixed" };
    assert.deepEqual([proveTiles(ring).status, countNaively(ring)], ["several", 2]);
  });

  it("settles large grids with every pair used many times", () => {
    for (const [side, repeat, hits] of [
      [8, 8, 4],
      [12, 8, 4],
      [12, 4, 0],
    ] as const) {
      for (let seed = 1; seed <= 3; seed++) {
        const { puzzle, intended } = dealt({ rows: side, columns: side, seed, repeat, hits });
        assert.equal(proveTiles(puzzle, { intended, budget: 20_000 }).status, "one");
      }
    }
  });

  it("stops at the cap and at the budget, and says so", () => {
    const tiles = Array.from({ length: 6 }, (_, i) => [0, i + 1, 0, i + 7] as const);
    const open: TilePuzzle = { rows: 6, columns: 1, tiles, partners: [[0]], turn: "fixed" };
    assert.deepEqual([proveTiles(open, everything).count, proveTiles(open, everything).capped], [720, false]);
    assert.deepEqual([proveTiles(open).count, proveTiles(open).capped], [2, true]);
    const five = proveTiles(open, { cap: 5 });
    assert.deepEqual([five.status, five.count, five.capped], ["several", 5, true]);
    const broke = proveTiles(open, { budget: 3 });
    assert.deepEqual([broke.status, broke.count, broke.capped], ["unsettled", 0, false]);
    const part = proveTiles(open, { ...everything, budget: 100 });
    assert.ok(part.status === "several" && part.capped && part.count < 720);
  });

  it("refuses a puzzle whose tiles do not fill the frame", () => {
    assert.throws(() => proveTiles({ rows: 2, columns: 2, tiles: [], partners: [], turn: "free" }), RangeError);
  });
});

describe("assemblies", () => {
  const puzzle: TilePuzzle = {
    rows: 1,
    columns: 3,
    tiles: [
      [9, 0, 9, 9],
      [9, 2, 9, 1],
      [9, 9, 9, 3],
    ],
    partners: [[1], [], [3], []],
    turn: "free",
  };
  const row = (...cells: [number, 0 | 1 | 2 | 3][]): Assembly => ({
    rows: 1,
    columns: cells.length,
    cells: cells.map(([tile, turn]) => ({ tile, turn })),
  });
  const right = row([0, 0], [1, 0], [2, 0]);

  it("are told from what is none", () => {
    assert.ok(isAssembly(puzzle, right));
    assert.ok(isAssembly(puzzle, turned(right, 1)) && isAssembly(puzzle, turned(right, 2)));
    assert.ok(!isAssembly({ ...puzzle, turn: "fixed" }, turned(right, 2)));
    assert.ok(!isAssembly(puzzle, row([0, 1], [1, 0], [2, 0])));
    assert.ok(!isAssembly(puzzle, row([0, 0], [1, 0], [1, 0])));
    assert.ok(!isAssembly(puzzle, row([0, 0], [1, 0])));
    assert.ok(!isAssembly({ ...puzzle, outer: [9, 0] }, row([0, 0], [1, 0], [2, 1])));
    assert.ok(isAssembly({ ...puzzle, outer: [9] }, right) && !isAssembly({ ...puzzle, outer: [0] }, right));
    const square = { ...puzzle, rows: 2, columns: 2, tiles: [...puzzle.tiles, [9, 9, 9, 9] as const] };
    assert.ok(!isAssembly(square, row([0, 0], [1, 0], [2, 0], [3, 0])));
  });

  it("are the same when the grid is turned, and differ cell by cell otherwise", () => {
    assert.ok(sameAssembly(puzzle, right, turned(right, 3)));
    assert.deepEqual(differences(puzzle, right, turned(right, 3)), [false, false, false]);
    const other = row([0, 0], [1, 2], [2, 0]);
    assert.ok(!sameAssembly(puzzle, right, other));
    assert.deepEqual(differences(puzzle, right, other), [false, true, false]);
    assert.deepEqual(differences(puzzle, right, turned(other, 1)), [false, true, false]);
    assert.ok(!sameAssembly({ ...puzzle, turn: "fixed" }, right, turned(right, 2)));
  });
});
