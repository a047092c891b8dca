import assert from "node:assert/strict";
import { type Assembly, difficultyOf, proveTiles, type TileEdges, type TilePuzzle } from "../../src/prove/tiles";
import { dealt, randomFrom, shuffled } from "./instances";
import { difficultyNaively } from "./naive-difficulty";
import { anySmall } from "./small";

const lying = (rows: number, columns: number): Assembly => ({
  rows,
  columns,
  cells: Array.from({ length: rows * columns }, (_, tile) => ({ tile, turn: 0 })),
});

describe("the difficulty of tiles", function () {
  this.timeout(300_000);

  /** Four corners; 0 and 1, 2 and 3, 4 and 5, 6 and 7 are pairs, 8 is blank. */
  const corners: TilePuzzle = {
    rows: 2,
    columns: 2,
    tiles: [
      [8, 0, 4, 8],
      [8, 8, 6, 1],
      [5, 2, 8, 8],
      [7, 8, 8, 3],
    ],
    partners: [[1], [], [3], [], [5], [], [7], [], []],
    turn: "free",
  };
  const also = (a: number, b: number): TilePuzzle => ({
    ...corners,
    partners: corners.partners.map((others, text) => (text === a ? [...others, b] : others)),
  });
  const measured = (puzzle: TilePuzzle): number[] => {
    const { wrongNeighbours, survives, detour } = difficultyOf(puzzle, { intended: lying(2, 2) });
    return [wrongNeighbours, survives, detour];
  };

  it("is nothing where each edge fits one other", () => {
    assert.deepEqual(difficultyOf(corners, { intended: lying(2, 2) }), {
      wrongNeighbours: 0,
      survives: 0,
      detour: 0,
      capped: false,
      nodes: 0,
    });
  });

  it("is what laying the tiles by hand shows", () => {
    // 0 | 3 puts a top rim and a bottom rim into one row: nothing more has room.
    assert.deepEqual(measured(also(0, 3)), [1, 0, 1]);
    // 0 | 2 uses up tile 2, whose 5 is the only partner of the 4 below tile 0.
    assert.deepEqual(measured(also(0, 2)), [1, 0, 1]);
    // 0 | 7: tile 2 goes below tile 0 (4 | 5); beside it and below tile 3 nothing fits 2 and 3 at once.
    assert.deepEqual(measured(also(0, 7)), [1, 1, 2]);
    assert.equal(difficultyOf(also(0, 7), { intended: lying(2, 2) }).nodes, 2);
    // Each wrong neighbour counts, but one that both edges name counts once. 2 | 7 has no room, as 0 | 3.
    const both = also(0, 7).partners.map((others, text) => (text === 7 ? [0, 2] : others));
    assert.deepEqual(measured({ ...corners, partners: both }), [2, 1, 3]);
    // Tiles that keep their turn have no 0 (east) against a 7 (north).
    assert.deepEqual(measured({ ...also(0, 7), turn: "fixed" }), [0, 0, 0]);
    assert.deepEqual(measured({ ...also(0, 3), turn: "fixed" }), [1, 0, 1]);
    // Two edges of one tile never meet.
    assert.deepEqual(measured(also(0, 4)), [0, 0, 0]);
  });

  it("is what looking at every two edges and laying tiles on a map gives", () => {
    const seen = new Set<string>();
    for (let seed = 1; seed <= 700; seed++) {
      const puzzle = anySmall(seed, [
        [2, 2],
        [2, 3],
        [3, 2],
        [1, 4],
        [1, 3],
      ]);
      const all: Assembly[] = [];
      proveTiles(puzzle, { cap: 3, found: (assembly) => all.push(assembly) });
      const [intended] = all;
      if (!intended) continue;
      const blank = seed % 2 ? undefined : puzzle.tiles.flat()[seed % 7];
      const options = { intended, ...(blank === undefined ? {} : { blank }), budget: 5000 };
      const { capped, wrongNeighbours, survives, detour } = difficultyOf(puzzle, options);
      const naive = capped ? undefined : difficultyNaively(puzzle, intended, blank);
      if (!naive) continue;
      assert.deepEqual({ wrongNeighbours, survives, detour }, naive, `seed ${seed}: ${JSON.stringify(puzzle)}`);
      seen.add(`${puzzle.turn}, ${puzzle.frameUntold ? "untold" : "told"}, ${survives > 0 ? "survives" : "fails"}`);
    }
    assert.equal(seen.size, 8, [...seen].join("; "));
  });

  it("is the same for classroom puzzles, up to 4 × 4", () => {
    let most = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const side = 3 + (seed % 2);
      const { puzzle, intended } = dealt({ rows: side, columns: side, seed, repeat: 2 + (seed % 3), blank: true });
      const { capped, nodes, ...measure } = difficultyOf(puzzle, { intended, budget: 50_000 });
      assert.ok(!capped && nodes >= measure.survives);
      assert.deepEqual(measure, difficultyNaively(puzzle, intended, undefined), `seed ${seed}`);
      most = Math.max(most, measure.survives);
    }
    assert.ok(most >= 3);
  });

  it("does not hang on how words outside, tiles and texts are named", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const recipe = { rows: 3, columns: 4, seed, repeat: 3 };
      const { puzzle, intended } = dealt({ ...recipe, blank: true });
      const measure = difficultyOf(puzzle, { intended });
      const decoys = dealt({ ...recipe, blank: false });
      assert.notDeepEqual(decoys.puzzle.tiles, puzzle.tiles);
      assert.deepEqual(difficultyOf(decoys.puzzle, { intended: decoys.intended }), measure);
      const names = shuffled(randomFrom(seed), puzzle.partners.map((_, text) => text).concat(puzzle.partners.length));
      const name = (text: number): number => names[text] ?? -1;
      const partners: number[][] = names.map(() => []);
      puzzle.partners.forEach((others, text) => {
        partners[name(text)] = others.map(name);
      });
      const tiles = puzzle.tiles.map(([n, e, s, w]): TileEdges => [name(n), name(e), name(s), name(w)]);
      const { wrongNeighbours } = difficultyOf({ ...puzzle, tiles, partners }, { intended });
      assert.equal(wrongNeighbours, measure.wrongNeighbours);
    }
  });

  it("takes no blank edge for a wrong neighbour, but lets blank lie against blank", () => {
    // A row of three, joined by blank edges only.
    const blank = 9;
    const tiles: TileEdges[] = [
      [7, blank, 8, 8],
      [6, blank, 8, blank],
      [8, 8, 8, blank],
    ];
    const puzzle: TilePuzzle = { rows: 1, columns: 3, tiles, partners: [], turn: "free" };
    const fitting = { ...puzzle, partners: Array.from({ length: 10 }, (_, text) => (text === blank ? [blank] : [])) };
    const options = { intended: lying(1, 3) };
    assert.ok(difficultyOf(fitting, options).wrongNeighbours > 0);
    assert.equal(difficultyOf(fitting, { ...options, blank }).wrongNeighbours, 0);
  });

  it("stops at its budget, says so, and shares it among the starts", () => {
    const { puzzle, intended } = dealt({ rows: 6, columns: 6, seed: 3, repeat: 20, blank: true });
    const long = difficultyOf(puzzle, { intended, budget: 3000 });
    assert.ok(long.capped && long.nodes <= 3000 && long.survives > 0);
    for (const budget of [0, 1, 50, 700]) {
      const short = difficultyOf(puzzle, { intended, budget });
      assert.ok(short.capped && short.nodes <= budget);
      assert.equal(short.wrongNeighbours, long.wrongNeighbours);
      assert.ok(
        short.survives <= long.survives && short.detour <= long.detour && short.detour >= short.wrongNeighbours,
      );
    }
    // Shared among all starts, or among a few where it does not suffice, the work lets many of them get somewhere.
    const { detour, wrongNeighbours } = difficultyOf(puzzle, { intended, budget: 2 * long.wrongNeighbours });
    assert.ok(2 * detour > 3 * wrongNeighbours, `${detour} of ${wrongNeighbours}`);
    assert.ok(difficultyOf(puzzle, { intended, budget: 50 }).detour > wrongNeighbours);
  });

  it("tries starts evenly spread in their list where it cannot try all", () => {
    const measured = [3, 4, 5].map((seed) => {
      const { puzzle, intended } = dealt({ rows: 6, columns: 6, seed, repeat: 20, blank: true });
      return [100, 200].map((budget) => difficultyOf(puzzle, { intended, budget }).detour);
    });
    // As measured: the first ones of the list, or others that stand closer together, give other sums.
    assert.deepEqual(measured, [
      [1129, 1200],
      [1140, 1231],
      [1167, 1219],
    ]);
  });
});
