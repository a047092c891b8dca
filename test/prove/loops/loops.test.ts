import assert from "node:assert/strict";
import fc from "fast-check";
import {
  countCircles,
  isCircle,
  type LoopPuzzle,
  LoopSearch,
  proveLoop,
  sameCircle,
} from "../../../src/prove/loops/loops";
import { swappedCircle } from "../../../src/prove/loops/swap";
import { countArrangements } from "./arrangements";
import { anyCards, cardsByClass, longByClass, plainByClass, puzzleOf } from "./cards";
import { arrangements, fewestEarly, fullCircles } from "./naive";

/** Says nothing, or what is wrong with a proof. Knows nothing of how it came about. */
function objections(puzzle: LoopPuzzle, intended?: readonly number[]): string[] {
  const options = intended ? { intended } : {};
  const { full, smaller, shortage } = proveLoop(puzzle, { ...options, budget: Number.POSITIVE_INFINITY });
  const all = proveLoop(puzzle, { ...options, cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY }).full;
  const known = fullCircles(puzzle);
  const wrong: string[] = [];
  const expect = (holds: boolean, what: string) => {
    if (!holds) wrong.push(what);
  };
  const status = known.size === 0 ? "none" : known.size === 1 ? "one" : "several";
  expect(full.status === status, `${full.status}, but there are ${known.size}`);
  expect(all.status === status && all.count === known.size && !all.capped, `counted ${all.count} of ${known.size}`);
  expect((full.second !== undefined) === known.size > 1, "second");
  const { second } = full;
  if (second) {
    const followsAll = second.every((card, i) => puzzle.follows[card]?.includes(second[(i + 1) % second.length] ?? -1));
    const complete = [...second].sort((a, b) => a - b).every((card, i) => card === i);
    expect(followsAll && complete && second.length === puzzle.follows.length, `${second} is no circle`);
    if (intended) {
      const shown = (circle: readonly number[]) => circle.map((card) => puzzle.look?.[card] ?? card);
      const word = shown(intended).join();
      const readings = second.map((_, i) => shown([...second.slice(i), ...second.slice(0, i)]).join());
      expect(!readings.includes(word), `${second} looks like the intended circle`);
    }
  }
  const fewest = fewestEarly(puzzle);
  expect(smaller?.length === fewest, `early close: ${smaller}, of ${fewest} at least`);
  if (smaller) {
    expect(smaller.length > 0 && smaller.length < puzzle.follows.length, `${smaller} leaves no card over`);
    expect(new Set(smaller).size === smaller.length, `${smaller} takes a card twice`);
    const closes = smaller.every((card, i) => puzzle.follows[card]?.includes(smaller[(i + 1) % smaller.length] ?? -1));
    expect(closes, `${smaller} does not close`);
  }
  const alone = puzzle.follows.length === 1;
  const others = puzzle.follows.map((list, card) => list.filter((next) => alone || next !== card));
  expect((shortage !== undefined) === (arrangements({ follows: others }) === 0), "shortage");
  if (shortage) {
    const { asking, answering } = shortage;
    expect(asking.length > answering.length, `${asking} have ${answering}`);
    expect(
      asking.every((card) => others[card]?.every((next) => answering.includes(next))),
      `not all that ${asking} have`,
    );
  }
  expect(Number(countArrangements(puzzle)) === arrangements(puzzle), "arrangements");
  const circles = countCircles(puzzle);
  expect(circles === undefined || circles === BigInt(known.size), `BEST counts ${circles}`);
  return wrong;
}

/** What the cards were made from, where that is a circle. */
function intendedOf(puzzle: LoopPuzzle): number[] | undefined {
  const order = puzzle.follows.map((_, card) => card);
  const holds = order.every((card) => puzzle.follows[card]?.includes((card + 1) % order.length));
  return holds ? order : undefined;
}

describe("full circles and early closes", () => {
  const sorts: [string, number][] = [
    ["classes", 0],
    ["some answers shared", 1],
    ["many answers shared", 3],
  ];
  for (const [what, overlap] of sorts)
    it(`agrees with trying everything (${what})`, () => {
      fc.assert(
        fc.property(fc.nat(), fc.boolean(), (seed, told) => {
          const puzzle = puzzleOf(anyCards(seed, 7, overlap));
          assert.deepEqual(objections(puzzle, told ? intendedOf(puzzle) : undefined), []);
        }),
        { numRuns: 500, seed: 7 + overlap },
      );
    });

  it("agrees with trying everything where all cards are told apart", () => {
    fc.assert(
      fc.property(fc.nat(), fc.constantFrom(0, 1, 2), (seed, overlap) => {
        const { follows } = puzzleOf(anyCards(seed, 7, overlap));
        assert.deepEqual(objections({ follows }, intendedOf({ follows })), []);
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it("agrees where many cards print alike", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(2), { minLength: 1, maxLength: 8 }), (answers) => {
        const puzzle = cardsByClass([...answers.slice(1), ...answers.slice(0, 1)], answers);
        assert.deepEqual(objections(puzzle, intendedOf(puzzle)), []);
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it("finds a second circle by exchanging two stretches iff that makes one", () => {
    let found = 0;
    for (let seed = 0; seed < 300; seed++) {
      const { follows } = puzzleOf(anyCards(seed, 8, 1));
      const circle = intendedOf({ follows });
      if (!circle) continue;
      const size = circle.length;
      const others = circle.flatMap((p) =>
        circle.flatMap((q) =>
          circle
            .filter((r) => p < q && q < r)
            .map((r) => [...circle.slice(0, p), ...circle.slice(q, r), ...circle.slice(p, q), ...circle.slice(r, size)])
            .concat(p < q ? [[...circle.slice(0, p), ...circle.slice(q), ...circle.slice(p, q)]] : []),
        ),
      );
      const known = others.filter((other) => isCircle({ follows }, other) && other.join() !== circle.join());
      const different = known.filter((other) => !sameCircle(circle, other, circle));
      const other = swappedCircle(follows, circle);
      assert.equal(other !== undefined, different.length > 0);
      if (!other) continue;
      found++;
      assert.ok(isCircle({ follows }, other) && !sameCircle(circle, other, circle));
    }
    assert.ok(found > 50);
  });

  it("agrees where many cards print alike and answers are shared", () => {
    const texts = fc.array(fc.nat(3), { minLength: 4, maxLength: 8 });
    const more = fc.array(fc.tuple(fc.nat(3), fc.nat(3)), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(texts, more, (answers, extra) => {
        const answered = [0, 1, 2, 3].map((text) => [text, ...extra.flatMap(([a, b]) => (a === text ? [b] : []))]);
        const puzzle = puzzleOf({ prompts: [...answers.slice(1), ...answers.slice(0, 1)], answers, answered });
        assert.deepEqual(objections(puzzle, intendedOf(puzzle)), []);
      }),
      { numRuns: 400, seed: 17 },
    );
  });

  it("says one for longer loops by classes iff BEST counts one", () => {
    const verdicts = new Map<string, number>();
    for (let seed = 0; seed < 6000; seed++) {
      const puzzle = longByClass(seed);
      const { full } = proveLoop(puzzle, { intended: puzzle.follows.map((_, card) => card) });
      assert.equal(full.status === "one", countCircles(puzzle) === 1n, JSON.stringify(puzzle));
      verdicts.set(full.status, (verdicts.get(full.status) ?? 0) + 1);
    }
    for (const status of ["one", "several"]) assert.ok((verdicts.get(status) ?? 0) > 1000);
  });

  it("counts up to the cap, and says whether there may be more", () => {
    // Four cards of one class: six circles.
    const follows = [0, 1, 2, 3].map(() => [0, 1, 2, 3]);
    const counted = (cap: number) => {
      const { count, capped } = proveLoop({ follows }, { cap }).full;
      return [count, capped];
    };
    assert.deepEqual([0, 2, 5, 6, 7].map(counted), [
      [2, true],
      [2, true],
      [5, true],
      [6, false],
      [6, false],
    ]);
  });

  it("gives the same proof however it is sliced", () => {
    for (let seed = 0; seed < 200; seed++) {
      const puzzle = puzzleOf(anyCards(seed, 9, 3));
      for (const budget of [3, 1000]) {
        const whole = proveLoop(puzzle, { budget, cap: 5 });
        const search = new LoopSearch(puzzle, { budget, cap: 5 });
        while (!search.advance(1)) assert.equal(search.proof.full.status === "none", false);
        assert.deepEqual(search.proof, whole);
      }
    }
  });

  it("says so when the budget ran out", () => {
    // Every card may follow every other: far too many circles to count.
    const cards = Array.from({ length: 12 }, (_, i) => i);
    const follows = cards.map((card) => cards.filter((other) => other !== card && other !== (card + 5) % 12));
    const none = proveLoop({ follows }, { budget: 1 }).full;
    assert.deepEqual([none.status, none.count, none.capped], ["unsettled", 0, false]);
    const some = proveLoop({ follows }, { cap: 1e9, budget: 100 }).full;
    assert.equal(some.status, "several");
    assert.ok(some.capped && some.count > 1 && some.count < 100 && some.nodes <= 100);
  });

  it("refuses cards that are not there and cards that print alike but do not match alike", () => {
    assert.throws(() => proveLoop({ follows: [[1], [2]] }), RangeError);
    assert.throws(() => proveLoop({ follows: [[1], [0]], look: [4] }), RangeError);
    assert.throws(() => proveLoop({ follows: [[1], [2], [0]], look: [4, 4, 5] }), RangeError);
    assert.throws(() => proveLoop({ follows: [[1, 2], [0], [0, 1]], look: [0, 1, 1] }), RangeError);
    assert.throws(() => proveLoop({ follows: [[1, 2], [0, 1, 2], [0]], look: [0, 1, 1] }), RangeError);
    assert.throws(() => proveLoop({ follows: [[1, 2], [0], [0, 1, 2]], look: [0, 1, 1] }), RangeError);
    assert.doesNotThrow(() =>
      proveLoop({
        follows: [
          [1, 2],
          [0, 1, 2],
          [2, 1, 0, 0],
        ],
        look: [0, 1, 1],
      }),
    );
  });
});

describe("loops whose verdict can be seen", () => {
  it("one answer used exactly twice: one full circle, but an early close", () => {
    const { full, smaller } = proveLoop(plainByClass([1, 0, 2, 3, 0], [0, 1, 0, 2, 3]), { intended: [0, 1, 2, 3, 4] });
    assert.deepEqual([full.status, full.by, smaller], ["one", "certificate", [0, 1]]);
  });

  it("a class used three times: a second circle", () => {
    const puzzle = plainByClass([1, 0, 2, 0, 3, 0], [0, 1, 0, 2, 0, 3]);
    const { full } = proveLoop(puzzle, { intended: [0, 1, 2, 3, 4, 5] });
    assert.deepEqual([full.status, full.by], ["several", "witness"]);
    assert.equal(countCircles(puzzle), 2n);
  });

  it("two classes that interlace: a second circle; nested: none", () => {
    const round = (classes: readonly number[]) => plainByClass([...classes.slice(1), classes[0] ?? 0], classes);
    assert.equal(proveLoop(round([0, 2, 1, 3, 0, 4, 1, 5])).full.status, "several");
    assert.equal(proveLoop(round([0, 2, 1, 3, 1, 4, 0, 5])).full.status, "one");
  });

  it("a circle takes every card once, each after one that it answers", () => {
    const puzzle = { follows: [[1, 2], [2], [0, 1]] };
    const circles = [[0, 1, 2], [1, 2, 0], [0, 2, 1], [0, 1], [0, 1, 2, 1], [0, 2, 0], [0, 1, 3], []];
    assert.deepEqual(
      circles.map((circle) => isCircle(puzzle, circle)),
      [true, true, false, false, false, false, false, false],
    );
    assert.equal(isCircle({ follows: [] }, []), false);
    // What is no circle is no intended one either.
    assert.deepEqual(proveLoop(puzzle, { intended: [0, 2, 1] }), proveLoop(puzzle));
  });

  it("overlapping sets {1,2}, {2,3}, {3,1} are no classes", () => {
    const follows = [
      [1, 2],
      [2, 0],
      [0, 1],
    ];
    assert.equal(countCircles({ follows }), undefined);
    assert.equal(proveLoop({ follows }, { cap: 9 }).full.count, 2);
  });

  it("a card that answers itself is an early close of one card, and a full circle only when alone", () => {
    assert.deepEqual(proveLoop({ follows: [[0]] }).full.status, "one");
    assert.equal(proveLoop({ follows: [[0]] }).smaller, undefined);
    assert.deepEqual(proveLoop({ follows: [[1], [0, 1]] }).smaller, [1]);
    assert.equal(proveLoop({ follows: [[]] }).full.status, "none");
    assert.equal(proveLoop({ follows: [] }).full.status, "none");
  });
});
