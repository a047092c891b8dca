import assert from "node:assert/strict";
import fc from "fast-check";
import { Random } from "../../../src/base/seed";
import {
  addsNothing,
  buildable,
  countStrings,
  dealtOrder,
  longestAscending,
  otherSentences,
  type Sentence,
} from "../../../src/prove/orders/orders";
import { credit } from "./credit";
import { permutations, reading } from "./naive";

/** A sentence from how it reads; other orders by part indices. */
function sentence(text: string, ...others: number[][]): Sentence {
  const parts = text.split(" ");
  return { parts, accepted: [parts.map((_, i) => i), ...others] };
}

const someTexts = fc.array(fc.constantFrom("a", "b", "c"), { maxLength: 6 });

describe("sentences", () => {
  it("have n! / ∏ c! rows that read differently", () => {
    assert.equal(countStrings([..."MISSISSIPPI"]), 34_650n);
    fc.assert(
      fc.property(someTexts, (parts) => {
        const rows = new Set(permutations(parts.length).map((order) => reading(parts, order)));
        assert.equal(countStrings(parts), BigInt(rows.size));
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  it("name accepted orders that add nothing", () => {
    const twice = sentence("o gato e o cão", [3, 1, 2, 0, 4], [0, 4, 2, 3, 1], [3, 4, 2, 0, 1]);
    assert.deepEqual(addsNothing(twice), [
      { order: 1, like: 0 },
      { order: 3, like: 2 },
    ]);
    assert.deepEqual(addsNothing(sentence("a b", [1, 0])), []);
  });

  it("can be built from each other's cards only with enough of every text", () => {
    const sentences = [sentence("o copo"), sentence("o pai e o copo"), sentence("o o copo"), sentence("copo o")];
    assert.deepEqual(buildable(sentences), [
      { sentence: 0, from: 1, leftOver: 3 },
      { sentence: 0, from: 2, leftOver: 1 },
      { sentence: 0, from: 3, leftOver: 0 },
      { sentence: 2, from: 1, leftOver: 2 },
      { sentence: 3, from: 0, leftOver: 0 },
      { sentence: 3, from: 1, leftOver: 3 },
      { sentence: 3, from: 2, leftOver: 1 },
    ]);
  });
});

describe("the cards of several sentences in one heap", () => {
  it("make other sentences too, or do not", () => {
    const four = ["eu como pão", "tu bebes leite", "eu bebes pão", "tu como leite"].map((text) => sentence(text));
    const other = otherSentences(four);
    assert.ok(Array.isArray(other));
    assert.deepEqual([...other].sort(), [0, 0, 2, 2]);
    assert.equal(otherSentences(four.slice(0, 3)), undefined);
    assert.equal(otherSentences([]), undefined);
    assert.equal(otherSentences([sentence("a b"), sentence("a b")]), undefined);
    assert.deepEqual(otherSentences([sentence("a b"), sentence("b a")]), [2, 0]);
    assert.equal(otherSentences(four, 2), "unsettled");
    // Without an order that is accepted each stands for itself.
    const unread = ["pão e leite", "leite e pão"].map((text): Sentence => ({ parts: text.split(" "), accepted: [] }));
    assert.deepEqual(otherSentences(unread), [2, 0]);
  });

  it("try a sentence no more often than there are cards for it", () => {
    // Once or not at all: the start and two ends.
    assert.equal(otherSentences([sentence("a a a a")], 3), undefined);
    assert.equal(otherSentences([sentence("a a a a")], 2), "unsettled");
  });

  it("agree with trying all", () => {
    const few = fc.array(fc.array(fc.constantFrom("a", "b", "c"), { minLength: 1, maxLength: 3 }), { maxLength: 4 });
    fc.assert(
      fc.property(few, (rows) => {
        const distinct = [...new Set(rows.map((row) => row.join(" ")))];
        const heap = distinct.join(" ").replaceAll(" ", "");
        const sorted = (text: string) => [...text].sort().join("");
        let others = 0;
        const tryAll = (times: readonly number[]) => {
          if (times.length === distinct.length) {
            const cards = distinct.map((text, i) => text.replaceAll(" ", "").repeat(times[i] ?? 0)).join("");
            if (sorted(cards) === sorted(heap) && times.some((n) => n !== 1)) others++;
            return;
          }
          for (let n = 0; n <= heap.length && n <= 6; n++) tryAll([...times, n]);
        };
        tryAll([]);
        const found = otherSentences(distinct.map((text) => sentence(text)));
        assert.equal(found !== undefined, others > 0);
      }),
      { numRuns: 300, seed: 2 },
    );
  });
});

describe("a dealt row", () => {
  it("never reads like an accepted one, and is there iff one can be", () => {
    fc.assert(
      fc.property(someTexts, fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), fc.string(), (parts, picks, seed) => {
        const rows = permutations(parts.length);
        const accepted = picks.map((pick) => rows[pick % rows.length] ?? []);
        const known = new Set(accepted.map((order) => reading(parts, order)));
        const possible = new Set(rows.map((order) => reading(parts, order)));
        const dealt = dealtOrder(new Random(seed), parts, accepted);
        assert.equal(dealt === undefined, possible.size === known.size);
        if (!dealt) return;
        assert.deepEqual(
          [...dealt].sort(),
          parts.map((_, i) => i),
        );
        assert.ok(!known.has(reading(parts, dealt)));
      }),
      { numRuns: 2000, seed: 4 },
    );
  });

  it("may be any of the others, about equally often", () => {
    const parts = [..."aabc"];
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 4400; seed++) {
      const dealt = dealtOrder(new Random(`row ${seed}`), parts, [[0, 1, 2, 3]]);
      assert.ok(dealt);
      counts.set(reading(parts, dealt), (counts.get(reading(parts, dealt)) ?? 0) + 1);
    }
    assert.equal(counts.size, 11);
    // 400 each; six standard deviations.
    for (const count of counts.values()) assert.ok(Math.abs(count - 400) < 6 * 19.1, `${count}`);
  });

  it("of many parts needs no luck", () => {
    const parts = Array.from({ length: 40 }, (_, i) => `${i % 3}`);
    const dealt = dealtOrder(new Random("many"), parts, [parts.map((_, i) => i)]);
    assert.equal(new Set(dealt).size, 40);
    assert.equal(dealtOrder(new Random("alike"), ["x", "x"], [[0, 1]]), undefined);
    assert.deepEqual(dealtOrder(new Random("two"), ["x", "y"], [[0, 1]]), [1, 0]);
    assert.throws(() => dealtOrder(new Random("bad"), ["x", "y"], [[0]]), RangeError);
    assert.throws(() => dealtOrder(new Random("bad"), ["x", "y"], [[0, 0]]), RangeError);
  });
});

describe("partial credit", () => {
  // Amma 2022, IntechOpen 81608.
  it("is the longest ascending run of kept items", () => {
    assert.equal(longestAscending([1, 2, 3, 4, 5]), 5);
    assert.equal(longestAscending([2, 1, 3, 4, 5]), 4);
    assert.equal(longestAscending([5, 4, 3, 2, 1]), 1);
    assert.equal(longestAscending([]), 0);
  });

  it("agrees with trying all choices of items", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(5), { maxLength: 9 }), (places) => {
        let best = 0;
        for (let choice = 0; choice < 2 ** places.length; choice++) {
          const kept = places.filter((_, i) => (choice >> i) & 1);
          if (kept.every((place, i) => i === 0 || place >= (kept[i - 1] ?? 0))) best = Math.max(best, kept.length);
        }
        assert.equal(longestAscending(places), best);
      }),
      { numRuns: 500, seed: 5 },
    );
  });

  it("takes the accepted order that is nearest, texts that print alike being the same", () => {
    const parts = ["o", "pai", "come", "o", "pão"];
    assert.equal(credit(parts, [3, 1, 2, 0, 4], [[0, 1, 2, 3, 4]]), 5);
    assert.equal(credit(parts, [2, 0, 1, 3, 4], [[0, 1, 2, 3, 4]]), 4);
    assert.equal(
      credit(
        parts,
        [2, 0, 1, 3, 4],
        [
          [0, 1, 2, 3, 4],
          [2, 3, 1, 0, 4],
        ],
      ),
      5,
    );
    assert.equal(credit(parts, [4, 2, 1, 0, 3], []), 0);
  });

  it("of a whole row without repeats is its longest ascending run", () => {
    const texts = [..."abcdef"];
    for (const order of permutations(6).filter((_, i) => i % 7 === 0))
      assert.equal(credit(texts, order, [[0, 1, 2, 3, 4, 5]]), longestAscending(order));
  });
});
