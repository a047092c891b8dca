import assert from "node:assert/strict";
import fc from "fast-check";
import { acceptsOrder, countOrders, type OrderPuzzle, proveOrder } from "../../../src/prove/orders/orders";
import { permutations, reading, readings } from "../orders/naive";
import { type Covers, openCovers } from "./cover";
import { drawn, forAll, rarely, verdict } from "./runs";

const most = 6;
const strip = fc.nat(most - 1);

/** Strips with any pairs, most of them forwards so that there is an order at all; texts recur or not. */
const puzzles: fc.Arbitrary<OrderPuzzle> = fc
  .record({
    size: fc.nat(most),
    kinds: fc.constantFrom(2, 3, most, most),
    texts: fc.array(strip, { minLength: most, maxLength: most }),
    pairs: fc.array(fc.tuple(strip, strip, fc.nat(19)), { maxLength: 14, size: "max" }),
    /** Strips that follow each other one by one. */
    chain: rarely(fc.constant(true)),
  })
  .map(({ size, kinds, texts, pairs, chain }) => ({
    texts: texts.slice(0, size).map((text, i) => String.fromCharCode(97 + (kinds === most ? i : text % kinds))),
    before: [
      ...pairs.flatMap(([a, b, odd]): [number, number][] => {
        if (a >= size || b >= size || (a === b && odd > 0)) return [];
        return odd > 0 ? [[Math.min(a, b), Math.max(a, b)]] : [[a, b]];
      }),
      ...(chain ? texts.slice(1, size).map((_, i): [number, number] => [i, i + 1]) : []),
    ],
  }));

/** Each strip at a place of its own: of a pair, the first covers all gaps before it and the second those from it on. */
function ordersBy(covers: Covers, { texts, before }: OrderPuzzle): number[][] {
  // A strip before itself would cover every gap, which is no conflict for one option.
  if (before.some(([a, b]) => a === b)) return [];
  const places = texts.map((_, place) => place);
  const options = places.flatMap((place) =>
    places.map((card) => ({
      data: [place, card] as const,
      primary: [`place ${place}`, `strip ${card}`],
      secondary: before.flatMap(([a, b], pair) => [
        ...(a === card ? places.filter((gap) => gap < place).map((gap) => `${pair}: ${gap}`) : []),
        ...(b === card ? places.filter((gap) => gap >= place).map((gap) => `${pair}: ${gap}`) : []),
      ]),
    })),
  );
  return covers(options).map((cover) => [...cover].sort(([p], [q]) => p - q).map(([, card]) => card));
}

const kinds = ["one", "several", "none", "one, texts recur", "several, texts recur"];

function holds(puzzle: OrderPuzzle, known: ReadonlySet<string>): string[] {
  const { texts } = puzzle;
  const { status, second } = proveOrder(puzzle);
  assert.equal(status, verdict(known.size));
  assert.equal(countOrders(puzzle), BigInt(known.size));
  assert.equal(second !== undefined, known.size > 1);
  if (second) assert.ok(known.has(reading(texts, second)));
  return [status, ...(new Set(texts).size < texts.length ? [`${status}, texts recur`] : [])];
}

describe(`the prover of orders against others (${drawn})`, function () {
  this.timeout(0);

  it("agrees with an exact cover in verdict and number, and shows an order other than the one that is meant", async () => {
    const covers = await openCovers();
    forAll(puzzles, kinds, (puzzle) => {
      const orders = ordersBy(covers, puzzle);
      const known = new Set(orders.map((order) => reading(puzzle.texts, order)));
      for (const order of [orders[0], orders.at(-1)]) {
        if (!order) continue;
        assert.ok(acceptsOrder(puzzle, order));
        const { second } = proveOrder(puzzle, order);
        assert.equal(second !== undefined, known.size > 1);
        if (!second) continue;
        assert.ok(known.has(reading(puzzle.texts, second)));
        assert.notEqual(reading(puzzle.texts, second), reading(puzzle.texts, order));
      }
      return holds(puzzle, known);
    });
  });

  it("agrees with trying every row", () => {
    const rows = new Map(Array.from({ length: most + 1 }, (_, size) => [size, permutations(size)]));
    forAll(fc.tuple(puzzles, fc.nat()), kinds, ([puzzle, pick]) => {
      const known = readings(puzzle);
      const all = rows.get(puzzle.texts.length) ?? [];
      const row = all[pick % all.length] ?? [];
      assert.equal(acceptsOrder(puzzle, row), known.has(reading(puzzle.texts, row)));
      return holds(puzzle, known);
    });
  });
});
