import assert from "node:assert/strict";
import { type Balance, balanceOf } from "../../../src/prove/balance";
import { Stock } from "../../../src/prove/stock";
import type { Assembly, TilePuzzle } from "../../../src/prove/tiles";
import { dealt } from "../instances";
import { anySmall } from "../small";
import { assemblies, mayMeet, shows, sizes } from "./pieces";

/** What shows on the outside of an assembly. */
function outerTexts(puzzle: TilePuzzle, { rows, columns, cells }: Assembly): number[] {
  return cells.flatMap(({ tile, turn }, cell) => {
    const [row, column] = [Math.floor(cell / columns), cell % columns];
    const outside = [row === 0, column === columns - 1, row === rows - 1, column === 0];
    return outside.flatMap((isOutside, side) => (isOutside ? [shows(puzzle, tile, turn, side)] : []));
  });
}

function setHolds(set: Int32Array, from: number, state: number): boolean {
  return (((set[from + (state >> 5)] ?? 0) >>> (state & 31)) & 1) === 1;
}

/** Many tiles, so that sets take several words: 60 tiles are up to 60 types of four states. */
const large = (turn: "free" | "fixed") => dealt({ rows: 6, columns: 10, repeat: 3, hits: 5, seed: 2, turn }).puzzle;

describe("the stock of tiles", () => {
  it("takes tiles that print alike for one type and knows each tile's turn", () => {
    for (let seed = 1; seed <= 150; seed++) {
      const puzzle = seed > 148 ? large(seed === 149 ? "free" : "fixed") : anySmall(seed, sizes);
      const stock = new Stock(puzzle);
      const turns = puzzle.turn === "free" ? [0, 1, 2, 3] : [0];
      const faces = (tile: number) =>
        turns.map((turn) => [0, 1, 2, 3].map((side) => shows(puzzle, tile, turn, side)).join());
      puzzle.tiles.forEach((_, tile) => {
        const type = stock.typeOf[tile] ?? -1;
        assert.deepEqual(
          stock.types[type]?.tiles.filter((known) => known.tile === tile),
          [{ tile, turn: stock.turnOf[tile] }],
        );
        assert.equal(stock.types[type]?.turns, new Set(faces(tile)).size);
        puzzle.tiles.forEach((_, other) => {
          assert.equal(
            stock.typeOf[other] === type,
            [...faces(other)].sort().join(";") === [...faces(tile)].sort().join(";"),
          );
        });
        // A tile turned by its own turn and a state's looks as the state says.
        for (let turn = 0; turn < turns.length; turn++)
          for (let side = 0; side < 4; side++) {
            const text = stock.texts[stock.textAt[4 * (4 * type + turn) + side] ?? -1];
            assert.equal(text, shows(puzzle, tile, (stock.turnOf[tile] ?? 0) + turn, side));
          }
      });
      const counts = stock.sides();
      stock.texts.forEach((text, number) => {
        assert.equal(counts[number], puzzle.tiles.flat().filter((other) => other === text).length);
      });
    }
  });

  it("says which states can lie against a text, and which show a group of texts", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const puzzle = seed > 58 ? large(seed === 59 ? "free" : "fixed") : anySmall(seed, sizes);
      const stock = new Stock(puzzle);
      assert.ok(stock.words >= stock.types.length / 8);
      const groups = stock.showing(2, (text) => (text % 3) - 1);
      stock.types.forEach(({ turns }, type) => {
        for (let turn = 0; turn < 4; turn++) {
          const state = 4 * type + turn;
          assert.equal(setHolds(stock.all, 0, state), turn < turns);
          for (let side = 0; side < 4; side++) {
            const number = stock.textAt[4 * state + side] ?? -1;
            const text = stock.texts[number] ?? -1;
            stock.texts.forEach((other, n) => {
              const expected = turn < turns && mayMeet(puzzle, text, other);
              assert.equal(setHolds(stock.fitting, stock.against(side, n), state), expected);
              assert.equal(
                stock.partners[number]?.filter((partner) => partner === n).length,
                mayMeet(puzzle, text, other) ? 1 : 0,
              );
            });
            for (const group of [0, 1])
              assert.equal(
                setHolds(groups, (4 * group + side) * stock.words, state),
                turn < turns && (number % 3) - 1 === group,
              );
          }
        }
      });
    }
  });
});

describe("what must face out", () => {
  /** For each set of the balance its texts, as printed. */
  const sets = (stock: Stock, { half, surplus }: Balance) =>
    [...surplus].map((_, set) =>
      stock.texts.flatMap((_, number) => ((half[number] ?? -1) >> 1 === set ? [number] : [])),
    );

  it("is counted right for every assembly that there is", () => {
    let halved = 0;
    let odd = 0;
    for (let seed = 1; seed <= 250; seed++) {
      const { outer: _, ...puzzle } = anySmall(seed, sizes);
      const stock = new Stock(puzzle);
      const balance = balanceOf(stock);
      for (const assembly of assemblies(puzzle)) {
        const outer = outerTexts(puzzle, assembly).map((text) => stock.texts.indexOf(text));
        const alone = outer.filter((text) => balance.half[text] === -1).length;
        assert.equal(
          alone,
          puzzle.tiles.flat().filter((text) => puzzle.tiles.flat().every((other) => !mayMeet(puzzle, text, other)))
            .length,
        );
        balance.surplus.forEach((surplus, set) => {
          const first = outer.filter((text) => balance.half[text] === 2 * set).length;
          const second = outer.filter((text) => balance.half[text] === 2 * set + 1).length;
          if (balance.odd[set] === 1) {
            assert.deepEqual([first % 2, second], [surplus, 0]);
            odd++;
          } else {
            assert.equal(first - second, surplus);
            halved++;
          }
        });
        const bound = alone + balance.surplus.reduce((sum, surplus) => sum + Math.abs(surplus), 0);
        assert.equal(balance.bound, bound);
        assert.ok(bound <= outer.length);
      }
    }
    assert.ok(halved > 200 && odd > 200, `${halved}, ${odd}`);
  });

  it("is bound by sets of linked texts in two halves, or in none", () => {
    for (let seed = 1; seed <= 250; seed++) {
      const puzzle = anySmall(seed, sizes);
      const stock = new Stock(puzzle);
      const balance = balanceOf(stock);
      assert.equal(balance.halves, 2 * balance.surplus.length);
      assert.equal(balance.odd.length, balance.surplus.length);
      const printed = (number: number) => stock.texts[number] ?? -1;
      const numbers = stock.texts.map((_, number) => number);
      for (const a of numbers)
        for (const b of numbers) {
          if (!mayMeet(puzzle, printed(a), printed(b))) continue;
          const [halfA = -1, halfB = -1] = [balance.half[a], balance.half[b]];
          assert.ok(halfA >= 0 && halfA >> 1 === halfB >> 1);
          assert.equal(halfA === halfB, balance.odd[halfA >> 1] === 1);
        }
      for (const [set, members] of sets(stock, balance).entries()) {
        assert.ok(members.length > 0);
        const links = members.flatMap((a) =>
          members.filter((b) => mayMeet(puzzle, printed(a), printed(b))).map((b) => [a, b]),
        );
        const parts = Array.from({ length: 2 ** members.length }, (_, choice) =>
          links.every(([a = 0, b = 0]) => ((choice >> members.indexOf(a)) ^ (choice >> members.indexOf(b))) & 1),
        );
        assert.equal(balance.odd[set] === 0, parts.some(Boolean));
      }
    }
  });

  it("in a bicycle shop's grid: eight blanks, and one half once more than the other", () => {
    // 0 fits 1 and 2; 3 fits itself; 9 nothing.
    const tiles = [
      [9, 0, 9, 9],
      [3, 9, 9, 1],
      [9, 9, 3, 0],
      [9, 9, 2, 0],
    ] as const;
    const puzzle: TilePuzzle = { rows: 2, columns: 2, tiles, partners: [[1, 2], [], [], [3]], turn: "free" };
    const balance = balanceOf(new Stock(puzzle));
    assert.deepEqual([balance.bound, [...balance.surplus].map(Math.abs), [...balance.odd]], [9 + 1, [1, 0], [0, 1]]);
  });
});
