import assert from "node:assert/strict";
import { determinant } from "../../../src/prove/loops/best";
import { classesOf, eulerianCircle, placesOf, visitsOf } from "../../../src/prove/loops/classes";
import { otherCircle } from "../../../src/prove/loops/exchange";
import { isCircle, type LoopPuzzle, proveLoop, sameCircle } from "../../../src/prove/loops/loops";
import { readPuzzle } from "../../../src/prove/loops/read-puzzle";
import { shortestCircle } from "../../../src/prove/loops/shortest";
import { below, randomFrom, shuffled } from "../instances";
import { permutations } from "../orders/naive";
import { anyCards, cardsByClass, plainByClass, puzzleOf } from "./cards";
import { fullCircles } from "./naive";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

describe("determinants", () => {
  /** As Leibniz writes it: a signed product for each permutation. */
  const byLeibniz = (matrix: readonly (readonly bigint[])[]) =>
    permutations(matrix.length).reduce((sum, columns) => {
      const swaps = columns.flatMap((c, i) => columns.slice(0, i).filter((earlier) => earlier > c)).length;
      const product = columns.reduce((value, c, row) => value * (matrix[row]?.[c] ?? 0n), 1n);
      return sum + (swaps % 2 === 0 ? product : -product);
    }, 0n);

  it("are exact, with zeros in the way, of any sign", () => {
    const signs = new Set<string>();
    for (let seed = 1; seed <= 400; seed++) {
      const random = randomFrom(seed);
      const size = below(random, 6);
      const entry = () => (random() < 0.4 ? 0n : BigInt(below(random, 9) - 4));
      const matrix = upTo(size).map(() => upTo(size).map(entry));
      const expected = byLeibniz(matrix);
      assert.equal(determinant(matrix.map((row) => [...row])), expected, JSON.stringify(matrix.map(String)));
      signs.add(expected === 0n ? "0" : expected > 0n ? "+" : "-");
    }
    assert.equal(signs.size, 3);
    // Hilbert-like, far beyond what a double holds: det of the Vandermonde matrix of 1, 10, 100, …
    const nodes = [1n, 10n, 100n, 1000n, 10_000n];
    const vandermonde = nodes.map((x) => nodes.map((_, i) => x ** BigInt(i)));
    const differences = nodes.flatMap((x, i) => nodes.slice(0, i).map((y) => x - y));
    assert.equal(
      determinant(vandermonde),
      differences.reduce((a, b) => a * b, 1n),
    );
  });
});

describe("classes of answers", () => {
  it("are there iff two prompts have the same answers or none in common", () => {
    const verdicts = { classes: 0, none: 0 };
    for (let seed = 1; seed <= 500; seed++) {
      const { follows } = puzzleOf(anyCards(seed, 7, seed % 3));
      // The same lists, shared or each its own, in any order.
      const own = follows.map((list, card) => (card % 2 === 0 ? [...list].reverse() : [...list]));
      const overlap = follows.some((a) =>
        follows.some((b) => a.some((next) => b.includes(next)) && [...a].sort().join() !== [...b].sort().join()),
      );
      for (const lists of [follows, own]) {
        const classes = classesOf(lists);
        assert.equal(classes === undefined, overlap);
        verdicts[classes ? "classes" : "none"]++;
        if (!classes) continue;
        const { asks, answers } = classes;
        lists.forEach((list, card) => {
          assert.equal(asks[card] === -1, list.length === 0);
          upTo(lists.length).forEach((next) => {
            assert.equal(list.includes(next), list.length > 0 && asks[card] === answers[next]);
          });
        });
        assert.equal(classes.count, new Set([...asks, ...answers].filter((number) => number >= 0)).size);
        const times = (numbers: Int32Array, number: number) => numbers.filter((other) => other === number).length;
        const even = upTo(classes.count).every((number) => times(asks, number) === times(answers, number));
        const visits = visitsOf(classes);
        assert.equal(visits !== undefined, even && !asks.includes(-1) && !answers.includes(-1));
        visits?.forEach((n, number) => {
          assert.equal(n, times(asks, number));
        });
        const circle = eulerianCircle(classes);
        assert.equal(circle !== undefined, fullCircles({ follows: lists }).size > 0);
        if (!circle) continue;
        assert.ok(isCircle({ follows: lists }, circle));
        const places = placesOf(classes, circle);
        places.forEach((stops, number) => {
          assert.deepEqual(
            stops,
            upTo(circle.length).filter((place) => answers[circle[place] ?? -1] === number),
          );
        });
        // Another circle by exchange, iff there is one.
        const plain = upTo(lists.length);
        const other = otherCircle(circle, classes, plain);
        assert.equal(other !== undefined, fullCircles({ follows: lists }).size > 1);
        if (other) assert.ok(isCircle({ follows: lists }, other) && !sameCircle(plain, other, circle));
      }
    }
    assert.ok(verdicts.classes > 100 && verdicts.none > 100, JSON.stringify(verdicts));
  });
});

describe("another circle by exchange where cards print alike", () => {
  it("is found iff there is one that looks different", () => {
    const verdicts = { found: 0, none: 0 };
    for (let seed = 1; seed <= 500; seed++) {
      const random = randomFrom(seed);
      const often = upTo(1 + below(random, 3)).map(() => below(random, 3));
      const answers = [often, often, random() < 0.5 ? often : [], upTo(below(random, 3)).map(() => below(random, 3))]
        .flat()
        .slice(0, 8);
      const puzzle = cardsByClass([...answers.slice(1), ...answers.slice(0, 1)], answers);
      const odd = random() < 0.4 ? below(random, answers.length) : -1;
      const look = puzzle.look.map((number, card) => (card === odd ? 99 : number));
      const classes = classesOf(puzzle.follows);
      assert.ok(classes);
      const start = below(random, answers.length);
      const circle = upTo(answers.length).map((i) => (i + start) % answers.length);
      const other = otherCircle(circle, classes, look);
      assert.equal(other !== undefined, fullCircles({ ...puzzle, look }).size > 1, JSON.stringify({ answers, look }));
      verdicts[other ? "found" : "none"]++;
      if (other) assert.ok(isCircle(puzzle, other) && !sameCircle(look, other, circle));
    }
    assert.ok(verdicts.found > 100 && verdicts.none > 50, JSON.stringify(verdicts));
  });
});

describe("a loop as read", () => {
  it("has lists without repeats, shared where they were, and a look for every card", () => {
    const shared = [1, 2, 1];
    const { follows, look } = readPuzzle({ follows: [shared, shared, [0, 0]] });
    assert.deepEqual(
      [follows, look],
      [
        [[1, 2], [1, 2], [0]],
        [0, 1, 2],
      ],
    );
    assert.equal(follows[0], follows[1]);
    for (const wrong of [-1, 2, 0.5, Number.NaN])
      assert.throws(() => readPuzzle({ follows: [[1], [0, wrong]] }), RangeError);
    assert.throws(() => readPuzzle({ follows: [[1], [0]], look: [0, 1, 2] }), RangeError);
    assert.deepEqual(
      readPuzzle({
        follows: [
          [0, 1],
          [1, 0],
        ],
        look: [7, 7],
      }).look,
      [7, 7],
    );
  });
});

describe("the verdict on a loop", () => {
  const round = (answers: readonly number[]): LoopPuzzle =>
    plainByClass([...answers.slice(1), ...answers.slice(0, 1)], answers);

  it("says what settled it and what it cost", () => {
    const meant = upTo(8);
    const verdict = (puzzle: LoopPuzzle, options = {}) => {
      const { status, count, capped, nodes, by } = proveLoop(puzzle, options).full;
      return { status, count, capped, nodes, by };
    };
    // Every answer once: the circle is forced.
    const one = { status: "one", count: 1, capped: false, nodes: 0, by: "certificate" };
    assert.deepEqual(verdict(round(meant)), one);
    assert.deepEqual(verdict(round(meant), { intended: meant }), one);
    // By classes, a second circle at once.
    const several = { status: "several", count: 2, capped: true, nodes: 0, by: "witness" };
    assert.deepEqual(verdict(round([0, 1, 2, 0, 3, 4, 0, 5]), { intended: meant, cap: 2 }), several);
    // No circle takes all cards: two that are asked for by one prompt each, and a card apart.
    assert.deepEqual(verdict({ follows: [[1], [0], [2]] }), { ...one, status: "none", count: 0 });
    // Two neighbouring stretches of a meant circle exchanged, in a relation without classes.
    const near = upTo(8).map((card) => [
      (card + 1) % 8,
      ...(card === 0 ? [3] : card === 4 ? [1] : card === 2 ? [5] : []),
    ]);
    assert.deepEqual(verdict({ follows: near }, { intended: meant }).by, "witness");
    const { second } = proveLoop({ follows: near }, { intended: meant }).full;
    assert.ok(second && sameCircle(meant, second, [3, 4, 1, 2, 5, 6, 7, 0]));
  });

  it("does not hang on how the cards are numbered", () => {
    let settled = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const { follows } = puzzleOf(anyCards(seed, 7, 2));
      const circle = upTo(follows.length);
      if (!isCircle({ follows }, circle)) continue;
      // Card i becomes card numbers[i].
      const numbers = shuffled(randomFrom(seed), circle);
      const renamed = numbers.map((_, card) =>
        (follows[numbers.indexOf(card)] ?? []).map((next) => numbers[next] ?? -1),
      );
      const { full, smaller } = proveLoop({ follows: renamed }, { intended: numbers, budget: 10_000 });
      const plain = proveLoop({ follows }, { intended: circle });
      assert.equal(full.status, plain.full.status);
      assert.equal(smaller?.length, plain.smaller?.length);
      assert.equal(full.status === "one", fullCircles({ follows }).size === 1);
      const { second } = full;
      if (!second) continue;
      assert.ok(isCircle({ follows: renamed }, second) && !sameCircle(circle, second, numbers));
      // Near the intended one a second circle is found without a search.
      assert.equal(full.by, plain.full.by);
      settled++;
    }
    assert.ok(settled > 50, `${settled}`);
  });

  it("tells a search that ended from one that was broken off", () => {
    // Every card may follow every other but one: no classes, and nothing is forced.
    const follows = upTo(6).map((card) => upTo(6).filter((next) => next !== card && next !== (card + 3) % 6));
    const count = fullCircles({ follows }).size;
    const { full } = proveLoop({ follows }, { cap: Number.POSITIVE_INFINITY });
    assert.deepEqual([full.status, full.count, full.capped, full.by], ["several", count, false, "search"]);
    assert.ok(full.nodes > 0);
    const broken = { status: "unsettled", count: 0, capped: false, nodes: 0, by: "search" };
    assert.deepEqual(proveLoop({ follows }, { budget: 0 }).full, broken);
    const capped = proveLoop({ follows }, { cap: 4 }).full;
    assert.deepEqual([capped.status, capped.count, capped.capped, capped.by], ["several", 4, true, "search"]);
  });

  it("shows the shortest early close, wherever in the circle it lies", () => {
    // 0 … 9 in a circle; the answer of 2 is that of 6, that of 8 is that of 1: closes of 4 and of 3 (8, 9, 0).
    const { smaller } = proveLoop(round([0, 1, 2, 3, 4, 5, 2, 7, 1, 9]), { intended: upTo(10) });
    assert.deepEqual(smaller, [8, 9, 0]);
    const overlapping = upTo(10).map((card) => [(card + 1) % 10, ...(card === 5 ? [2] : card === 1 ? [9, 6] : [])]);
    assert.deepEqual(proveLoop({ follows: overlapping }, { intended: upTo(10) }).smaller, [9, 0, 1]);
  });

  it("shows a shorter early close that takes several wrong cards", () => {
    // From a to b and from b to a are cards of their own; wherever one wrong card closes, it is with three or more.
    const [a, b, x, y, z, w] = [0, 1, 2, 3, 4, 5];
    const wrongs = round([a, b, x, y, b, a, z, w]);
    assert.deepEqual(proveLoop(wrongs, { intended: upTo(8) }).smaller, [4, 0]);
    // The same where a further answer overlaps.
    const overlapping = wrongs.follows.map((list, card) => (card === 2 ? [...list, 6] : list));
    assert.deepEqual(proveLoop({ follows: overlapping }, { intended: upTo(8) }).smaller, [4, 0]);
  });

  it("looks for a shorter early close no longer than it may", () => {
    const follows = [[1, 2], [2], [3], [0, 1]];
    assert.deepEqual(shortestCircle(follows, 5), [2, 3, 0]);
    assert.equal(shortestCircle(follows, 3), undefined);
    for (const steps of [0, 1]) assert.equal(shortestCircle(follows, 5, steps), undefined);
    // Two circles without another way on.
    assert.deepEqual(shortestCircle([[1], [2], [0], [4], [3]], 6), [4, 3]);
  });

  it("names the cards that ask for too much, and nothing where none do", () => {
    // 0, 1 and 2 all want 3 or 4.
    const short = proveLoop({ follows: [[3, 4], [4], [3], [0, 1, 2], [0, 1]] });
    assert.deepEqual([short.full.status, short.shortage], ["none", { asking: [0, 1, 2], answering: [3, 4] }]);
    assert.equal(proveLoop({ follows: [[1], [0], [3], [2]] }).shortage, undefined);
    // A card that answers itself is no answer to it, but alone.
    assert.deepEqual(proveLoop({ follows: [[0], [0]] }).shortage?.asking, [0]);
    assert.equal(proveLoop({ follows: [[0]] }).shortage, undefined);
  });
});
