import assert from "node:assert/strict";
import { classesOf, eulerianCircle } from "../../../src/prove/loops/classes";
import { countCircles, isCircle, proveLoop } from "../../../src/prove/loops/loops";
import { below, randomFrom, shuffled } from "../instances";
import { countArrangements } from "./arrangements";
import { cardsByClass, plainByClass } from "./cards";
import { countCirclesByInterlacement } from "./interlacement";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

/** Words of n letters as arcs between words of n − 1: full circles are de Bruijn cycles. */
function deBruijn(letters: number, length: number) {
  const words = upTo(letters ** length);
  return plainByClass(
    words.map((word) => word % letters ** (length - 1)),
    words.map((word) => Math.floor(word / letters)),
  );
}

/** An arc from every vertex to every other. */
function completeDigraph(size: number) {
  const arcs = upTo(size).flatMap((from) => upTo(size).flatMap((to) => (from === to ? [] : [{ from, to }])));
  return plainByClass(
    arcs.map(({ to }) => to),
    arcs.map(({ from }) => from),
  );
}

/** Each vertex of a hypercube, with its neighbours. */
const cube = (dimensions: number) => upTo(2 ** dimensions).map((v) => upTo(dimensions).map((bit) => v ^ (1 << bit)));

const all = { cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY };

describe("counts of full circles", () => {
  // (k!)^(k^(n−1)) / k^n: van Aardenne-Ehrenfest & de Bruijn 1951.
  const bruijn: [number, number, bigint][] = [
    [2, 2, 1n],
    [2, 3, 2n],
    [2, 4, 16n],
    [2, 5, 2048n],
    [2, 6, 67_108_864n],
    [3, 2, 24n],
    [3, 3, 373_248n],
  ];
  for (const [letters, length, count] of bruijn) {
    it(`de Bruijn cycles of ${letters} letters, length ${length}: ${count}`, () => {
      assert.equal(countCircles(deBruijn(letters, length)), count);
      assert.equal(BigInt(proveLoop(deBruijn(letters, length), { cap: 1e9 }).full.count), count);
    });
  }

  // OEIS A007080.
  [1n, 3n, 256n, 972_000n, 247_669_456_896n].forEach((count, i) => {
    it(`Eulerian circuits of the complete digraph on ${i + 2}: ${count}`, () => {
      assert.equal(countCircles(completeDigraph(i + 2)), count);
    });
  });

  // OEIS A066037 (undirected 1, 6, 1344), each in two directions.
  for (const [dimensions, count] of [
    [2, 2],
    [3, 12],
    [4, 2688],
  ] as const) {
    it(`Hamiltonian cycles of the cube of ${dimensions} dimensions, directed: ${count}`, () => {
      assert.equal(proveLoop({ follows: cube(dimensions) }, all).full.count, count);
    });
  }

  it("circles in which every card may follow every other: (n − 1)!", () => {
    for (const [size, count] of [
      [4, 6],
      [5, 24],
      [6, 120],
      [7, 720],
    ] as const) {
      const follows = upTo(size).map((card) => upTo(size).filter((other) => other !== card));
      assert.equal(proveLoop({ follows }, all).full.count, count);
    }
  });

  it("necklaces: cards of two looks in one class", () => {
    // OEIS A047996: necklaces of n beads, k of them black.
    for (const [n, k, count] of [
      [4, 2, 2n],
      [6, 3, 4n],
      [8, 4, 10n],
      [12, 6, 80n],
      [12, 4, 43n],
    ] as const) {
      const follows = upTo(n).map(() => upTo(n));
      assert.equal(countCircles({ follows, look: upTo(n).map((card) => (card < k ? 1 : 0)) }), count);
    }
  });

  it("counts a card that a list names twice once", () => {
    // No class of this relation is asked for as the doubled name would have it: only turns to oneself.
    assert.equal(
      countCircles({
        follows: [
          [0, 1],
          [1, 1],
        ],
      }),
      undefined,
    );
    assert.equal(countCircles({ follows: [[1, 1], [0]] }), 1n);
  });

  it("det(I + A) gives what BEST gives where no class is used more than twice", () => {
    const random = randomFrom(5);
    for (let round = 0; round < 500; round++) {
      const size = 1 + below(random, 16);
      const answers = shuffled(
        random,
        upTo(size).map((i) => Math.floor((i * (1 + random())) / 2)),
      ).filter((text, i, list) => list.slice(0, i).filter((other) => other === text).length < 2);
      const puzzle = plainByClass([...answers.slice(1), answers[0] ?? 0], answers);
      const classes = classesOf(puzzle.follows);
      const circle = classes && eulerianCircle(classes);
      assert.ok(circle && isCircle(puzzle, circle));
      const count = countCirclesByInterlacement(classes, circle);
      assert.equal(count, countCircles(puzzle));
      assert.equal(proveLoop(puzzle).full.status === "one", count === 1n);
    }
    const thrice = classesOf(plainByClass([0, 0, 0], [0, 0, 0]).follows);
    assert.ok(thrice);
    assert.equal(countCirclesByInterlacement(thrice, [0, 1, 2]), undefined);
  });

  it("names no count where answers overlap", () => {
    assert.equal(countCircles({ follows: [[1, 2], [2], [0]] }), undefined);
  });
});

describe("arrangements that match everywhere", () => {
  const count = (size: number, allowed: (card: number, next: number) => boolean) =>
    countArrangements({ follows: upTo(size).map((card) => upTo(size).filter((next) => allowed(card, next))) });

  it("derangements (OEIS A000166)", () => {
    const known = [0n, 1n, 2n, 9n, 44n, 265n, 1854n, 14_833n];
    known.forEach((value, i) => {
      assert.equal(
        count(i + 1, (a, b) => a !== b),
        value,
      );
    });
    assert.equal(
      count(16, (a, b) => a !== b),
      7_697_064_251_745n,
    );
  });

  it("ménage numbers (Touchard 1934; OEIS A000179)", () => {
    [1n, 2n, 13n, 80n, 579n, 4738n].forEach((value, i) => {
      const size = i + 3;
      assert.equal(
        count(size, (a, b) => b !== a && b !== (a + 1) % size),
        value,
      );
    });
  });

  it("by classes ∏ n_v!, however many cards", () => {
    assert.equal(countArrangements(cardsByClass([1, 0, 2, 0, 0], [0, 1, 0, 2, 0])), 6n);
    const twice = upTo(200).map((card) => card >> 1);
    assert.equal(countArrangements(plainByClass(twice, twice)), 2n ** 100n);
    assert.equal(countArrangements(plainByClass([0, 0, 1], [0, 1, 1])), 0n);
  });

  it("block by block; none where a block is too large", () => {
    const blocks = upTo(30).map((card) => upTo(30).filter((next) => next !== card && card % 10 === next % 10));
    // Overlapping, so no classes: ten blocks of three, each with two derangements.
    assert.equal(countArrangements({ follows: blocks }), 2n ** 10n);
    assert.equal(
      count(19, (a, b) => a !== b),
      undefined,
    );
    assert.equal(countArrangements({ follows: [[1, 2], [0], [0]] }), 0n);
  });
});
