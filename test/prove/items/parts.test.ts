import assert from "node:assert/strict";
import { Random } from "../../../src/base/seed";
import { drawBelow } from "../../../src/prove/items/draw";
import {
  alternates,
  balancedOrder,
  countKeys,
  drawKeys,
  isAssignment,
  isRegular,
  proveAssignment,
  runs,
  runsDistribution,
  runsLimits,
} from "../../../src/prove/items/items";
import { maximumMatching, shortageIn } from "../../../src/prove/items/matching";
import { below, randomFrom, shuffled } from "../instances";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

describe("clues and targets", () => {
  // Parts of a bicycle: each clue names where it sits.
  const puzzle = { targets: 4, fits: [[0], [0, 1], [1, 2]] };

  it("are given out once each, all of them, and to what they fit", () => {
    const given = [[0, 1, 2], [0, 1], [0, 1, 2, 3], [0, 1, 1], [0, 0, 1], [1, 0, 2], [0, 1, 3], []];
    assert.deepEqual(
      given.map((row) => isAssignment(puzzle, row)),
      [true, false, false, false, false, false, false, false],
    );
  });

  it("say what settled it", () => {
    const known = { capped: false, nodes: 0, by: "certificate" };
    assert.deepEqual(proveAssignment(puzzle), { ...known, status: "one", count: 1 });
    assert.deepEqual(proveAssignment({ targets: 3, fits: [[0], [0]] }), { ...known, status: "none", count: 0 });
    const several = { status: "several", count: 2, capped: true, nodes: 0, by: "witness" };
    // One may take what is left over; or two change.
    assert.deepEqual(proveAssignment({ targets: 2, fits: [[0, 1]] }, [0]), { ...several, second: [1] });
    assert.deepEqual(
      proveAssignment(
        {
          targets: 2,
          fits: [
            [0, 1],
            [1, 0],
          ],
        },
        [1, 0],
      ),
      { ...several, second: [0, 1] },
    );
    // What gives nobody anything is not meant, and does no harm.
    assert.deepEqual(proveAssignment(puzzle, [2, 1, 0]), { ...known, status: "one", count: 1 });
    for (const wrong of [-1, 4, 0.5]) assert.throws(() => proveAssignment({ targets: 4, fits: [[wrong]] }), RangeError);
  });
});

describe("matchings of many", () => {
  it("follow long exchanges", () => {
    // Each wants its own place and the next one's; the last place is wanted from the front, so that all must move on.
    const size = 2_000;
    const fits = upTo(size).map((i) => (i === size - 1 ? [0] : [i, i + 1]));
    const { ofLeft, ofRight, size: found } = maximumMatching(fits, size);
    assert.equal(found, size);
    assert.deepEqual([...ofLeft], [...upTo(size - 1).map((i) => i + 1), 0]);
    assert.ok(ofLeft.every((right, left) => ofRight[right] === left));
    assert.equal(shortageIn(fits, size), undefined);
  });

  it("find the hidden full one, whatever they start from", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = randomFrom(seed);
      const size = 60;
      const hidden = shuffled(random, upTo(size));
      const fits = hidden.map((right) => shuffled(random, [right, below(random, size), below(random, size / 4)]));
      const start = hidden.map((right, left) => (left % 3 === 0 ? right : -1));
      for (const from of [undefined, start]) assert.equal(maximumMatching(fits, size, from).size, size);
      // One more than there are places: all that take part in the shortage are named, in order.
      const shortage = shortageIn([...fits, fits[0] ?? []], size);
      assert.ok(shortage);
      assert.equal(shortage.lefts.length, shortage.rights.length + 1);
      assert.deepEqual(
        shortage.lefts,
        [...shortage.lefts].sort((a, b) => a - b),
      );
      assert.deepEqual(
        shortage.rights,
        [...new Set(shortage.lefts.flatMap((left) => [...fits, fits[0] ?? []][left] ?? []))].sort((a, b) => a - b),
      );
    }
  });
});

describe("rows of keys", () => {
  it("alternate only when there are three at least and each is another than the last", () => {
    const rows = [
      [],
      [true],
      [true, false],
      [true, false, true],
      [false, true, false, true],
      [true, true, false],
      [true, false, false],
    ];
    assert.deepEqual(rows.map(alternates), [false, false, false, true, true, false, false]);
  });

  it("with no run at all are only the empty one", () => {
    const rule = { longest: 0, regular: false };
    assert.equal(countKeys({ ...rule, trues: 1, falses: 2 }), 0n);
    assert.equal(countKeys({ ...rule, trues: 0, falses: 0 }), 1n);
  });

  it("keep to the run that is asked for where that can be, and else to the least that can", () => {
    for (let seed = 0; seed < 200; seed++) {
      const random = randomFrom(seed);
      const [trues, falses] = [below(random, 8), below(random, 8)];
      const wanted = 1 + below(random, 3);
      const { keys, longest } = drawKeys(new Random(`${seed}`), trues, falses, wanted);
      assert.deepEqual([keys.filter((key) => key).length, keys.length], [trues, trues + falses]);
      assert.ok(Math.max(0, ...runs(keys)) <= longest);
      assert.equal(longest, Math.max(wanted, Math.ceil(Math.max(trues, falses) / (Math.min(trues, falses) + 1))));
      if (countKeys({ trues, falses, longest, regular: false }) > 0n) assert.ok(!isRegular(keys));
    }
  });

  it("put items into a mixed order with runs of three at most, unless told otherwise", () => {
    const keys = upTo(16).map((i) => i % 2 === 0);
    const orders = upTo(60).map((seed) => balancedOrder(new Random(`order ${seed}`), keys));
    assert.equal(new Set(orders.map((order) => order.join())).size, 60);
    const longest = (rows: readonly (readonly number[])[]) =>
      Math.max(...rows.map((order) => Math.max(...runs(order.map((item) => keys[item])))));
    assert.equal(longest(orders), 3);
    assert.equal(longest(upTo(60).map((seed) => balancedOrder(new Random(`order ${seed}`), keys, 2))), 2);
    // Every item comes first now and then, not only those at one end of its kind.
    assert.ok(new Set(orders.map(([first]) => first)).size > 10);
  });
});

describe("the runs test for uneven rows", () => {
  it("has the limits that the distribution gives", () => {
    for (let a = 0; a <= 7; a++)
      for (let b = 0; b <= 7; b++)
        for (const tail of [undefined, 4, 10, 20]) {
          const rows = runsDistribution(a, b).map(Number);
          const all = rows.reduce((sum, n) => sum + n, 0);
          const share = (from: number, to: number) => rows.slice(from, to + 1).reduce((sum, n) => sum + n, 0) / all;
          const rare = (part: number) => part > 0 && part <= 1 / (tail ?? 40) + 1e-12;
          const few = upTo(rows.length)
            .filter((n) => n > 0 && rare(share(0, n)))
            .at(-1);
          const many = upTo(rows.length).find((n) => n > 0 && rare(share(n, rows.length)));
          const expected = { ...(few !== undefined && { few }), ...(many !== undefined && { many }) };
          assert.deepEqual(tail ? runsLimits(a, b, tail) : runsLimits(a, b), expected, `${a}, ${b}, ${tail}`);
        }
  });
});

describe("draws below a bound", () => {
  it("are even where the bound takes an odd part of a word, or of two", () => {
    for (const unit of [2n ** 30n, 2n ** 62n]) {
      const random = new Random(`three quarters ${unit}`);
      const counts = [0, 0, 0];
      for (let i = 0; i < 900; i++) {
        const third = Number(drawBelow(random, 3n * unit) / unit);
        counts[third] = (counts[third] ?? 0) + 1;
      }
      // 300 each; 14 is the standard deviation.
      assert.ok(counts.length === 3 && counts.every((count) => Math.abs(count - 300) < 85), counts.join());
    }
    const random = new Random("low");
    const low = upTo(400).map(() => drawBelow(random, 2n ** 40n) % 16n);
    assert.equal(new Set(low).size, 16);
    const high = upTo(400).map(() => drawBelow(random, 2n ** 40n) >> 36n);
    assert.equal(new Set(high).size, 16);
  });
});

describe("a draw that would favour some", () => {
  /** Gives words that a test says. */
  class Told extends Random {
    constructor(private readonly words: number[]) {
      super("");
    }

    override below(): number {
      return this.words.shift() ?? 0;
    }
  }

  it("is taken again", () => {
    // 2^32 = 3 · 1,431,655,765 + 1: the last word is one too many.
    assert.equal(drawBelow(new Told([2 ** 32 - 1, 4]), 3n), 1n);
    assert.equal(drawBelow(new Told([2 ** 32 - 2, 4]), 3n), 2n);
    assert.equal(drawBelow(new Told([2 ** 32 - 1]), 2n ** 32n), 2n ** 32n - 1n);
    // One more than a word takes two, the first of them the higher.
    assert.equal(drawBelow(new Told([1, 7]), 2n ** 33n), 2n ** 32n + 7n);
    assert.equal(drawBelow(new Told([5]), 1n), 0n);
  });
});
