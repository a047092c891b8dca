import assert from "node:assert/strict";
import { alignedTo, framesOf, lookOf, turnOf } from "../../../src/prove/assembly";
import {
  type Assembly,
  differences,
  isAssembly,
  sameAssembly,
  type TilePuzzle,
  turned,
} from "../../../src/prove/tiles";
import { below, randomFrom, shuffled } from "../instances";
import { standIn } from "../naive";
import { anySmall } from "../small";

type Face = readonly number[];

/** The texts that each cell shows, row by row: what a learner sees. */
function pictureOf({ tiles }: TilePuzzle, { rows, columns, cells }: Assembly): Face[][] {
  const faces = cells.map(({ tile, turn }) => {
    const edges = [...(tiles[tile] ?? [])];
    for (let i = 0; i < turn; i++) edges.unshift(...edges.splice(3));
    return edges;
  });
  return Array.from({ length: rows }, (_, row) => faces.slice(row * columns, (row + 1) * columns));
}

/** Whether what is seen is a solution, looked at side by side. */
function solves(puzzle: TilePuzzle, assembly: Assembly): boolean {
  const { rows, columns, cells } = assembly;
  const free = puzzle.turn === "free";
  const frame = [rows, columns].join("×");
  const told = [`${puzzle.rows}×${puzzle.columns}`, ...(free ? [`${puzzle.columns}×${puzzle.rows}`] : [])];
  if (!told.includes(frame) && !(puzzle.frameUntold && rows * columns === puzzle.tiles.length)) return false;
  const used = cells.map(({ tile }) => tile).sort((a, b) => a - b);
  if (used.join() !== puzzle.tiles.map((_, tile) => tile).join()) return false;
  if (!free && cells.some(({ turn }) => turn > 0)) return false;
  const picture = pictureOf(puzzle, assembly);
  const steps = [
    [-1, 0],
    [0, 1],
    [1, 0],
    [0, -1],
  ] as const;
  return picture.every((row, r) =>
    row.every((face, c) =>
      steps.every(([down, right], side) => {
        const text = face[side] ?? -1;
        const other = picture[r + down]?.[c + right]?.[(side + 2) % 4];
        if (other === undefined) return puzzle.outer?.includes(text) ?? true;
        return [...(puzzle.partners[text] ?? [])].includes(other) || (puzzle.partners[other] ?? []).includes(text);
      }),
    ),
  );
}

const sizes = [
  [1, 1],
  [1, 3],
  [2, 2],
  [2, 3],
  [3, 2],
] as const;

/** Any arrangement of all tiles, fitting or not. */
function anyArrangement(puzzle: TilePuzzle, random: () => number): Assembly {
  const onItsSide = random() < 0.3;
  const tiles = shuffled(
    random,
    puzzle.tiles.map((_, tile) => tile),
  );
  const cells = tiles.map((tile) => ({ tile, turn: turnOf(below(random, puzzle.turn === "free" ? 4 : 1)) }));
  const [rows, columns] = onItsSide ? [puzzle.columns, puzzle.rows] : [puzzle.rows, puzzle.columns];
  return { rows, columns, cells };
}

describe("an arrangement of tiles", () => {
  it("is told from one that is no assembly as looking at every side tells it", () => {
    const verdicts = { right: 0, wrong: 0 };
    for (let seed = 1; seed <= 400; seed++) {
      const random = randomFrom(seed);
      const small = anySmall(seed, sizes);
      // Of texts that nearly all fit each other, so that many arrangements are right or nearly so.
      const partners = small.partners.map((_, text) =>
        small.partners.map((_, other) => other).filter((other) => other !== text),
      );
      const outer = random() < 0.3 ? small.partners.map((_, text) => text).slice(1) : undefined;
      const { outer: _, ...rest } = small;
      const puzzle: TilePuzzle = { ...rest, partners, ...(outer && { outer }) };
      for (let i = 0; i < 12; i++) {
        const assembly = anyArrangement(puzzle, random);
        const expected = solves(puzzle, assembly);
        assert.equal(isAssembly(puzzle, assembly), expected, JSON.stringify({ puzzle, assembly }));
        verdicts[expected ? "right" : "wrong"]++;
        if (!expected) continue;
        const [first, ...others] = assembly.cells;
        assert.ok(first);
        assert.ok(!isAssembly(puzzle, { ...assembly, cells: others }));
        assert.ok(!isAssembly(puzzle, { ...assembly, rows: assembly.rows + 1 }));
        assert.ok(!isAssembly(puzzle, { ...assembly, cells: [...assembly.cells, first] }));
        if (others.length > 0) assert.ok(!isAssembly(puzzle, { ...assembly, cells: [...others, others[0] ?? first] }));
        assert.ok(!isAssembly({ ...puzzle, tiles: [...puzzle.tiles, [0, 0, 0, 0]] }, assembly));
        assert.ok(!isAssembly({ ...puzzle, outer: [] }, assembly));
      }
    }
    assert.ok(verdicts.right > 300 && verdicts.wrong > 300, JSON.stringify(verdicts));
  });

  it("in a frame of no whole cells, or of none, is none", () => {
    const puzzle: TilePuzzle = {
      rows: 1,
      columns: 1,
      tiles: [[0, 0, 0, 0]],
      partners: [[0]],
      turn: "free",
      frameUntold: true,
    };
    const cells = [{ tile: 0, turn: 0 }] as const;
    assert.ok(isAssembly(puzzle, { rows: 1, columns: 1, cells }));
    for (const [rows, columns] of [
      [0.5, 2],
      [2, 0.5],
      [-1, -1],
    ] as const)
      assert.ok(!isAssembly(puzzle, { rows, columns, cells }), `${rows} × ${columns}`);
    assert.ok(!isAssembly({ ...puzzle, tiles: [], rows: 0 }, { rows: 0, columns: 1, cells: [] }));
    assert.ok(!isAssembly(puzzle, { rows: 1, columns: 1, cells: [{ tile: 7, turn: 0 }] }));
  });

  it("looks the same as another exactly when their pictures do, turned where they may be", () => {
    let same = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed);
      const puzzle = anySmall(seed, sizes);
      const free = puzzle.turn === "free";
      const a = anyArrangement(puzzle, random);
      for (const b of [anyArrangement(puzzle, random), turned(a, turnOf(below(random, 4)))]) {
        const expected = standIn(pictureOf(puzzle, a), free) === standIn(pictureOf(puzzle, b), free);
        assert.equal(sameAssembly(puzzle, a, b), expected);
        assert.equal(lookOf(puzzle, a) === lookOf(puzzle, b), expected);
        if (expected) same++;
      }
    }
    assert.ok(same > 200 && same < 500, `${same}`);
  });

  it("is turned like a sheet of paper, and comes back after four quarters", () => {
    const puzzle = anySmall(3, [[2, 3]]);
    const assembly = anyArrangement({ ...puzzle, rows: 2, columns: 3 }, randomFrom(3));
    const once = turned({ ...assembly, rows: 2, columns: 3 }, 1);
    assert.deepEqual([once.rows, once.columns], [3, 2]);
    // The cell at the bottom left comes to the top left.
    assert.equal(once.cells[0]?.tile, assembly.cells[3]?.tile);
    assert.equal(once.cells[1]?.tile, assembly.cells[0]?.tile);
    assert.equal(once.cells[0]?.turn, turnOf((assembly.cells[3]?.turn ?? 0) + 1));
    assert.deepEqual(turned(turned(once, 1), 2), { ...assembly, rows: 2, columns: 3 });
    assert.throws(() => turned({ rows: 2, columns: 3, cells: [{ tile: 0, turn: 0 }] }, 1), RangeError);
  });

  it("lies as much like another as some turn makes it lie, and differs where it then looks different", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed);
      const puzzle = anySmall(seed, sizes);
      const a = anyArrangement(puzzle, random);
      const b = anyArrangement(puzzle, random);
      const unlike = (x: Assembly, y: Assembly) => {
        const [one, other] = [pictureOf(puzzle, x), pictureOf(puzzle, y)];
        const sameFrame = x.rows === y.rows && x.columns === y.columns;
        return other.flatMap((row, r) => row.map((face, c) => !sameFrame || face.join() !== one[r]?.[c]?.join()));
      };
      const count = (list: readonly boolean[]) => list.filter(Boolean).length;
      const turns = puzzle.turn === "free" ? ([0, 1, 2, 3] as const) : ([0] as const);
      const fewest = Math.min(...turns.map((turn) => count(unlike(a, turned(b, turn)))));
      assert.equal(count(unlike(a, alignedTo(puzzle, a, b))), fewest);
      const shown = differences(puzzle, a, b);
      assert.equal(count(shown), fewest);
      assert.ok(turns.some((turn) => unlike(turned(a, turn), b).join() === shown.join()));
      if (puzzle.turn === "fixed") assert.deepEqual(alignedTo(puzzle, a, b), b);
    }
  });
});

describe("the frames that count", () => {
  const puzzle = (turn: "free" | "fixed", frameUntold: boolean): TilePuzzle => ({
    rows: 4,
    columns: 3,
    tiles: [],
    partners: [],
    turn,
    frameUntold,
  });
  const shapes = (of: TilePuzzle) => framesOf(of).map((frame) => frame.join("×"));

  it("are the told one, or all of its area", () => {
    assert.deepEqual(shapes(puzzle("free", false)), ["4×3"]);
    assert.deepEqual(shapes(puzzle("fixed", false)), ["4×3"]);
    assert.deepEqual(shapes(puzzle("fixed", true)).sort(), ["12×1", "1×12", "2×6", "3×4", "4×3", "6×2"]);
  });

  it("of two that differ by a quarter turn one, the told one where it is told", () => {
    assert.deepEqual(shapes(puzzle("free", true)).sort(), ["1×12", "2×6", "4×3"]);
    assert.deepEqual(shapes({ ...puzzle("free", true), rows: 3, columns: 3 }).sort(), ["1×9", "3×3"]);
  });
});
