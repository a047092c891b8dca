import assert from "node:assert/strict";
import { lookOf, turnOf } from "../../../src/prove/assembly";
import { balanceOf } from "../../../src/prove/balance";
import { Board } from "../../../src/prove/board";
import { Stock } from "../../../src/prove/stock";
import { type Assembly, isAssembly, type TilePuzzle } from "../../../src/prove/tiles";
import { witness } from "../../../src/prove/witness";
import { below, randomFrom } from "../instances";
import { anySmall } from "../small";
import { assemblies, sizes } from "./pieces";

describe("a board", () => {
  it("never loses what an assembly has, and comes back to what it was", () => {
    let back = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = randomFrom(seed);
      const { outer: _, ...puzzle } = anySmall(seed, sizes);
      const found = assemblies(puzzle).filter(
        ({ rows, columns }) => rows === puzzle.rows && columns === puzzle.columns,
      );
      if (found.length === 0) continue;
      const stock = new Stock(puzzle);
      const board = new Board(stock, balanceOf(stock), puzzle.rows, puzzle.columns);
      const statesOf = ({ cells }: Assembly) =>
        cells.map(({ tile, turn }) => {
          const type = stock.typeOf[tile] ?? 0;
          return 4 * type + (turnOf(turn - (stock.turnOf[tile] ?? 0)) % (stock.types[type]?.turns ?? 1));
        });
      const snapshot = () =>
        Array.from({ length: board.cells }, (_, cell) =>
          [board.isLaid(cell), board.size(cell), ...board.states(cell)].join(),
        ).join(";") + stock.types.map((_, type) => board.placesOfLast(type)).join();
      assert.ok(board.open(stock.showing(1, () => 0)));
      for (const assembly of found) {
        const states = statesOf(assembly);
        const mark = board.mark();
        const before = snapshot();
        const order = states.map((_, cell) => cell).sort(() => random() - 0.5);
        for (const cell of order) {
          const state = states[cell] ?? -1;
          assert.ok(board.states(cell).includes(state));
          assert.equal(board.size(cell), board.states(cell).length);
          assert.ok(board.turns(cell, state >> 2) & (1 << (state & 3)));
          if (!board.isLaid(cell)) assert.ok(board.lay(cell, state));
          assert.ok(states.every((other, i) => board.states(i).includes(other)));
        }
        assert.ok(states.every((state, cell) => board.isLaid(cell) && board.states(cell).join() === `${state}`));
        board.undo(mark);
        assert.equal(snapshot(), before);
        // Something that may be wrong leaves nothing behind either.
        const cell = below(random, board.cells);
        const [some = 0] = board.states(cell);
        board.lay(cell, some);
        board.undo(mark);
        assert.equal(snapshot(), before);
        back++;
      }
    }
    assert.ok(back > 200, `${back}`);
  });

  it("lays a tile that has one cell left at once, in the first cell as in the last", () => {
    // 9 fits nothing, so that the first tile must lie at one end and the last at the other; those between may change.
    const across = [
      [0, 0, 0, 9],
      [0, 0, 0, 0],
      [5, 0, 0, 0],
      [0, 9, 0, 0],
    ] as const;
    const down = across.map(([n, e, s, w]) => [w, n, e, s] as const);
    for (const [rows, columns, tiles] of [
      [1, 4, across],
      [4, 1, down],
    ] as const) {
      const stock = new Stock({ rows, columns, tiles, partners: [[0]], turn: "fixed" });
      const board = new Board(stock, balanceOf(stock), rows, columns);
      assert.ok(board.open(stock.showing(1, () => 0)));
      const laid = [0, 1, 2, 3].map((cell) => (board.isLaid(cell) ? board.states(cell).join() : board.size(cell)));
      assert.deepEqual(laid, ["0", 2, 2, "12"]);
    }
  });

  it("says how many cells the last tile of a type may go to", () => {
    // Two tiles alike and one other in a row, nothing told: the other may lie anywhere.
    const tiles = [
      [0, 0, 0, 0],
      [0, 0, 0, 0],
      [0, 1, 0, 1],
    ] as const;
    const puzzle: TilePuzzle = { rows: 1, columns: 3, tiles, partners: [[0, 1]], turn: "fixed" };
    const stock = new Stock(puzzle);
    const board = new Board(stock, balanceOf(stock), 1, 3);
    assert.ok(board.open(stock.showing(1, () => 0)));
    assert.deepEqual([board.placesOfLast(0), board.placesOfLast(1)], [0, 3]);
    assert.ok(board.lay(0, 0));
    // One of the two is laid, so that its last has the two other cells.
    assert.deepEqual([board.placesOfLast(0), board.placesOfLast(1)], [2, 2]);
    assert.ok(board.lay(1, 0));
    // The other follows: nothing else is left for the last cell.
    assert.deepEqual([board.placesOfLast(0), board.placesOfLast(1), board.laid], [0, 0, 3]);
    assert.deepEqual([board.states(2), board.isLaid(2)], [[4], true]);
  });
});

describe("a second assembly near the intended one", () => {
  it("is found exactly where turning one tile or exchanging two makes one", () => {
    const verdicts = { found: 0, none: 0 };
    for (let seed = 1; seed <= 300; seed++) {
      const puzzle = anySmall(seed, sizes);
      const stock = new Stock(puzzle);
      const outer = stock.showing(1, (text) => (puzzle.outer?.includes(stock.texts[text] ?? -1) === false ? -1 : 0));
      for (const intended of assemblies(puzzle).slice(0, 2)) {
        const look = lookOf(puzzle, intended);
        const turns = puzzle.turn === "free" ? ([0, 1, 2, 3] as const) : ([0] as const);
        const near: Assembly[] = [];
        intended.cells.forEach(({ tile }, a) => {
          for (const turn of turns) near.push({ ...intended, cells: intended.cells.with(a, { tile, turn }) });
          intended.cells.slice(0, a).forEach(({ tile: other }, b) => {
            for (const turnA of turns)
              for (const turnB of turns) {
                const cells = intended.cells.with(a, { tile: other, turn: turnA }).with(b, { tile, turn: turnB });
                near.push({ ...intended, cells });
              }
          });
        });
        const others = near.filter((assembly) => isAssembly(puzzle, assembly) && lookOf(puzzle, assembly) !== look);
        const found = witness(puzzle, stock, outer, intended);
        assert.equal(found !== undefined, others.length > 0, `seed ${seed}`);
        verdicts[found ? "found" : "none"]++;
        if (found) assert.ok(others.some((other) => lookOf(puzzle, other) === lookOf(puzzle, found)));
      }
    }
    assert.ok(verdicts.found > 50 && verdicts.none > 50, JSON.stringify(verdicts));
  });
});
