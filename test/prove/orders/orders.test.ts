import assert from "node:assert/strict";
import fc from "fast-check";
import {
  acceptsOrder,
  countOrders,
  OrderCount,
  type OrderPuzzle,
  proveOrder,
  storyOf,
} from "../../../src/prove/orders/orders";
import { below, randomFrom } from "../instances";
import { anyOrder, keeps, permutations, reading, readings } from "./naive";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);
const told = (size: number) => upTo(size).map((strip) => `strip ${strip}`);

/** Strips named by anything, in an order that a test says. */
function puzzleFrom<T>(items: readonly T[], isBefore: (a: T, b: T) => boolean): OrderPuzzle {
  const before = items.flatMap((a, i) => items.flatMap((b, j): [number, number][] => (isBefore(a, b) ? [[i, j]] : [])));
  return { texts: told(items.length), before };
}

const grid = (rows: number, columns: number) =>
  puzzleFrom(
    upTo(rows * columns).map((i) => [Math.floor(i / columns), i % columns] as const),
    ([r, c], [s, d]) => r <= s && c <= d && (r < s || c < d),
  );

describe("accepted orders", () => {
  it("agree with trying all", () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const puzzle = anyOrder(seed);
        const known = readings(puzzle);
        const { status, second } = proveOrder(puzzle);
        assert.equal(status, known.size === 0 ? "none" : known.size === 1 ? "one" : "several");
        assert.equal(countOrders(puzzle), BigInt(known.size));
        assert.equal(second !== undefined, known.size > 1);
        if (second) assert.ok(keeps(puzzle, second) && second.length === puzzle.texts.length);
        const rows = permutations(puzzle.texts.length);
        for (const row of [rows[seed % rows.length] ?? [], rows.find((order) => keeps(puzzle, order)) ?? []]) {
          if (row.length !== puzzle.texts.length) continue;
          assert.equal(acceptsOrder(puzzle, row), known.has(reading(puzzle.texts, row)));
          if (!keeps(puzzle, row)) continue;
          const other = proveOrder(puzzle, row).second;
          if (other) assert.notEqual(reading(puzzle.texts, other), reading(puzzle.texts, row));
        }
      }),
      { numRuns: 2000, seed: 3 },
    );
  });

  it("count the same however the work is sliced, and say so when the budget runs out", () => {
    for (let seed = 0; seed < 200; seed++) {
      const puzzle = anyOrder(seed);
      const count = new OrderCount(puzzle);
      while (!count.advance(1)) assert.equal(count.count, undefined);
      assert.equal(count.count, countOrders(puzzle));
    }
    assert.equal(countOrders(grid(4, 4), 10), undefined);
    assert.equal(countOrders(grid(4, 4)), 24_024n);
  });

  it("refuse strips that are not there and rows that are not whole", () => {
    assert.throws(() => proveOrder({ texts: ["a"], before: [[0, 1]] }), RangeError);
    const puzzle = storyOf([0, 1], ["a", "b"]);
    assert.deepEqual(
      [[0, 1], [1, 0], [0], [0, 0], [0, 1, 1]].map((row) => acceptsOrder(puzzle, row)),
      [true, false, false, false, false],
    );
  });
});

/** A few strips in steps of one or several; texts recur or not. */
function anyStory(seed: number): OrderPuzzle {
  const random = randomFrom(seed);
  const size = below(random, 7);
  const kinds = 1 + below(random, 4);
  const texts = upTo(size).map((strip) => (random() < 0.5 ? `${strip}` : `${below(random, kinds)}`));
  const steps: number[][] = [];
  for (const strip of upTo(size)) {
    const last = steps.at(-1);
    if (last && random() < 0.5) last.push(strip);
    else steps.push([strip]);
  }
  return storyOf(steps, texts);
}

describe("orders of a story in steps", () => {
  it("agree with trying all, and with the prover of any orders", () => {
    for (let seed = 0; seed < 1500; seed++) {
      const story = anyStory(seed);
      const any: OrderPuzzle = { texts: story.texts, before: story.before };
      assert.ok(story.steps && !any.steps);
      const known = readings(any);
      const row = permutations(story.texts.length)[seed % 720] ?? upTo(story.texts.length);
      for (const intended of [undefined, row]) {
        const [proof, other] = [proveOrder(story, intended), proveOrder(any, intended)];
        assert.equal(proof.status, other.status);
        assert.equal(proof.status, known.size === 1 ? "one" : "several");
        assert.equal(proof.second !== undefined, known.size > 1);
        if (!proof.second) continue;
        assert.ok(keeps(any, proof.second) || known.has(reading(story.texts, proof.second)));
        assert.notEqual(reading(story.texts, proof.second), reading(story.texts, intended ?? upTo(story.texts.length)));
      }
      assert.equal(countOrders(story), BigInt(known.size));
      assert.equal(countOrders(any), BigInt(known.size));
      assert.equal(acceptsOrder(story, row), known.has(reading(story.texts, row)));
    }
  });

  it("refuse rows with strips that are not there, or not once each", () => {
    const story = storyOf([[0, 1], 2], ["a", "a", "b"]);
    const rows = [
      [1, 0, 2],
      [0, 1, 2],
      [0, 0, 2],
      [0, 3, 2],
      [0, 1, 2, 2],
      [0, 1],
      [2, 0, 1],
    ];
    assert.deepEqual(
      rows.map((row) => acceptsOrder(story, row)),
      [true, true, false, false, false, false, false],
    );
    assert.ok(!acceptsOrder(storyOf([0], [""]), [1]));
  });

  it("are proven as soon, for each strip, where there are thousands", () => {
    const size = 20_000;
    const chain = storyOf(upTo(size), told(size));
    assert.equal(proveOrder(chain).status, "one");
    assert.ok(acceptsOrder(chain, upTo(size)));
    assert.ok(!acceptsOrder(chain, [1, 0, ...upTo(size).slice(2)]));
    const free = storyOf([upTo(200), ...upTo(size - 200).map((strip) => strip + 200)], told(size));
    assert.equal(proveOrder(free).status, "several");
    assert.equal(
      countOrders(free),
      upTo(200).reduce((product, i) => product * BigInt(i + 1), 1n),
    );
  });
});

describe("linear extensions", () => {
  // OEIS A000108, A005789.
  it("of 2 × n and 3 × n", () => {
    assert.deepEqual(
      upTo(6).map((n) => countOrders(grid(2, n + 1))),
      [1n, 2n, 5n, 14n, 42n, 132n],
    );
    assert.deepEqual(
      upTo(5).map((n) => countOrders(grid(3, n + 1))),
      [1n, 5n, 42n, 462n, 6006n],
    );
  });

  // OEIS A000111.
  it("of the fence", () => {
    const fence = (size: number) =>
      puzzleFrom(upTo(size), (a, b) => Math.abs(a - b) === 1 && a % 2 === 0 && b % 2 === 1);
    assert.deepEqual(
      upTo(8).map((n) => countOrders(fence(n))),
      [1n, 1n, 1n, 2n, 5n, 16n, 61n, 272n],
    );
    assert.equal(countOrders(fence(8)), 1385n);
  });

  // OEIS A046873.
  it("of the Boolean lattice", () => {
    const lattice = (bits: number) => puzzleFrom(upTo(2 ** bits), (a, b) => a !== b && (a & b) === a);
    assert.deepEqual(
      upTo(5).map((n) => countOrders(lattice(n))),
      [1n, 1n, 2n, 48n, 1_680_384n],
    );
  });

  it("of series and parallel, however many strips", () => {
    const groups = upTo(20).map((i) => [5 * i, 5 * i + 1, 5 * i + 2, 5 * i + 3, 5 * i + 4]);
    assert.equal(countOrders(storyOf(groups, told(100)), 0), 120n ** 20n);
    // Two chains of 30 side by side: 60 choose 30.
    const chains = puzzleFrom(upTo(60), (a, b) => b === a + 1 && b !== 30);
    assert.equal(countOrders(chains, 0), 118_264_581_564_861_424n);
  });
});

describe("stories", () => {
  const texts = ["comes in", "orders", "pays", "sits down", "leaves"];

  it("with steps that follow each other have one order", () => {
    const puzzle = storyOf([0, 1, [2], 3, 4], texts);
    assert.deepEqual(proveOrder(puzzle), { status: "one", count: 1, capped: false, nodes: 5, by: "certificate" });
  });

  it("with a free group have several; the second reads differently from the intended one", () => {
    const puzzle = storyOf([0, [1, 3], [], 2, 4], texts);
    for (const intended of [
      [0, 1, 3, 2, 4],
      [0, 3, 1, 2, 4],
    ]) {
      const { status, second } = proveOrder(puzzle, intended);
      assert.equal(status, "several");
      assert.ok(second && keeps(puzzle, second));
      assert.notDeepEqual(second, intended);
    }
    assert.equal(countOrders(puzzle), 2n);
  });

  it("with strips that print alike: exchanging them is no other order", () => {
    assert.equal(proveOrder(storyOf([0, [1, 2], 3], ["a", "b", "b", "c"])).status, "one");
    assert.equal(proveOrder(storyOf([0, 1, 2], ["a", "b", "a"])).status, "one");
    assert.ok(acceptsOrder(storyOf([0, 1, 2], ["a", "b", "a"]), [2, 1, 0]));
    // The second "b" comes after "c" or before it.
    assert.equal(proveOrder({ texts: ["b", "b", "c"], before: [[0, 2]] }).status, "several");
    assert.equal(countOrders({ texts: ["b", "b", "c"], before: [[0, 2]] }), 2n);
    // Alike, not exchangeable, and yet it can only read "a a b b".
    const puzzle: OrderPuzzle = {
      texts: ["a", "a", "b", "b"],
      before: [
        [0, 2],
        [1, 2],
        [0, 3],
        [1, 3],
      ],
    };
    assert.equal(proveOrder(puzzle).status, "one");
  });

  it("MISSISSIPPI has 34,650 orders", () => {
    assert.equal(countOrders({ texts: [..."MISSISSIPPI"], before: [] }), 34_650n);
  });
});
