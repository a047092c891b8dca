import assert from "node:assert/strict";
import {
  acceptsOrder,
  buildable,
  countOrders,
  OrderCount,
  type OrderPuzzle,
  otherSentences,
  proveOrder,
  type Sentence,
  storyOf,
} from "../../../src/prove/orders/orders";
import { bit, members, partialOrderOf, sources, withAlikeInOrder } from "../../../src/prove/orders/partial-order";
import { anyOrder, keeps, permutations, readings } from "./naive";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

/** Chains of two strips each, all with one text. */
const alikeChains = (count: number): OrderPuzzle => ({
  texts: upTo(2 * count).map(() => "limpa a corrente"),
  before: upTo(count).map((i) => [2 * i, 2 * i + 1]),
});

describe("partial orders", () => {
  it("know all that comes before and after, or that strips wait for each other", () => {
    for (let seed = 0; seed < 400; seed++) {
      const puzzle = anyOrder(seed);
      const size = puzzle.texts.length;
      const later = upTo(size).map((strip) => {
        const found = new Set(puzzle.before.flatMap(([a, b]) => (a === strip ? [b] : [])));
        for (const other of found) for (const [a, b] of puzzle.before) if (a === other) found.add(b);
        return found;
      });
      const order = partialOrderOf(puzzle);
      assert.equal(
        order === undefined,
        later.some((found, strip) => found.has(strip)),
      );
      if (!order) continue;
      assert.equal(order.size, size);
      for (const a of upTo(size)) {
        assert.deepEqual(
          members(order.later[a] ?? -1n),
          upTo(size).filter((b) => later[a]?.has(b)),
        );
        assert.deepEqual(
          members(order.earlier[a] ?? -1n),
          upTo(size).filter((b) => later[b]?.has(a)),
        );
        for (const b of upTo(size)) assert.equal(order.look[a] === order.look[b], puzzle.texts[a] === puzzle.texts[b]);
      }
      // What may come next: not laid, and nothing before it that is not.
      for (let laid = 0n; laid < bit(size); laid++)
        assert.deepEqual(
          sources(order, laid),
          upTo(size).filter(
            (a) => (laid & bit(a)) === 0n && members(order.earlier[a] ?? 0n).every((b) => laid & bit(b)),
          ),
        );
      // Alike strips that could be exchanged stand in order now; how orders read is as before.
      const inOrder = withAlikeInOrder(order);
      const before = upTo(size).flatMap((a) => members(inOrder.later[a] ?? 0n).map((b): [number, number] => [a, b]));
      assert.deepEqual(readings({ ...puzzle, before }), readings(puzzle));
      for (const a of upTo(size))
        for (const b of upTo(a)) {
          const exchangeable = ["look", "earlier", "later"] as const;
          if (exchangeable.every((key) => order[key][a] === order[key][b]))
            assert.ok((inOrder.later[b] ?? 0n) & bit(a));
        }
    }
    assert.deepEqual(members(0b1_0110n), [1, 2, 4]);
    assert.throws(() => partialOrderOf({ texts: ["a"], before: [[1, 0]] }), RangeError);
  });
});

describe("the verdict on an order", () => {
  it("says what settled it and what it cost", () => {
    const chain: OrderPuzzle = storyOf([0, 1, 2], ["abre", "arranja", "fecha"]);
    assert.deepEqual(proveOrder(chain), { status: "one", count: 1, capped: false, nodes: 3, by: "certificate" });
    const circle: OrderPuzzle = {
      texts: chain.texts,
      before: [
        [0, 1],
        [1, 2],
        [2, 0],
      ],
    };
    assert.deepEqual(proveOrder(circle), { status: "none", count: 0, capped: false, nodes: 0, by: "certificate" });
    assert.equal(acceptsOrder(circle, [0, 1, 2]), false);
    const free = storyOf([0, [1, 2]], ["abre", "arranja", "fecha"]);
    const several = { status: "several", count: 2, capped: true, nodes: 2, by: "witness" };
    assert.deepEqual(proveOrder(free), { ...several, second: [0, 2, 1] });
    assert.deepEqual(proveOrder(free, [0, 1, 2]), { ...several, second: [0, 2, 1] });
    assert.deepEqual(proveOrder(free, [0, 2, 1]), { ...several, second: [0, 1, 2] });
    // What is not accepted is not meant.
    assert.deepEqual(proveOrder(free, [2, 1, 0]), { ...several, second: [0, 2, 1] });
  });

  it("is given up where too many strips print alike", () => {
    // So many sets can be laid half way: the middle trinomial coefficients 8,953 and 25,653 (OEIS A002426).
    const ten = proveOrder(alikeChains(10));
    assert.deepEqual([ten.status, ten.count], ["one", 1]);
    // One set at the start, all but the last of 3^10 on the way.
    assert.equal(ten.nodes, 3 ** 10 - 1);
    const eleven = proveOrder(alikeChains(11));
    assert.deepEqual([eleven.status, eleven.count, eleven.capped, eleven.by], ["unsettled", 0, false, "search"]);
  });
});

describe("counting orders", () => {
  it("spends one node for each set, and stops at the budget", () => {
    // The letter N of four strips falls apart into nothing smaller: 5 orders, 8 sets that can have been laid.
    const n: OrderPuzzle = {
      texts: ["a", "b", "c", "d"],
      before: [
        [0, 2],
        [1, 2],
        [1, 3],
      ],
    };
    const count = new OrderCount(n);
    assert.equal(count.count, undefined);
    while (!count.advance(2));
    assert.equal(count.count, BigInt(permutations(4).filter((order) => keeps(n, order)).length));
    assert.equal(count.nodes, 8);
    assert.equal(countOrders(n, 8), 5n);
    assert.equal(countOrders(n, 7), undefined);
    assert.equal(countOrders(n, 0), undefined);
  });

  it("multiplies what falls apart", () => {
    // Two letters N side by side, after one strip: 8! / (4! 4!) · 5 · 5.
    const one = [
      [1, 3],
      [2, 3],
      [2, 4],
    ] as const;
    const before = [
      ...one,
      ...one.map(([a, b]) => [a + 4, b + 4] as const),
      ...upTo(8).map((i) => [0, i + 1] as const),
    ];
    const puzzle = { texts: upTo(9).map((i) => `passo ${i}`), before };
    assert.equal(countOrders(puzzle), 70n * 25n);
    const count = new OrderCount(puzzle);
    while (!count.advance(Number.POSITIVE_INFINITY));
    assert.equal(count.nodes, 16);
    assert.equal(
      countOrders({
        texts: ["a", "b"],
        before: [
          [0, 1],
          [1, 0],
        ],
      }),
      0n,
    );
    assert.equal(countOrders({ texts: [], before: [] }), 1n);
    assert.equal(countOrders(alikeChains(6)), 1n);
  });
});

describe("sentences from one heap", () => {
  const sentence = (text: string, ...others: number[][]): Sentence => {
    const parts = text === "" ? [] : text.split(" ");
    return { parts, accepted: [upTo(parts.length), ...others] };
  };

  it("that read the same are put down to the first, in whatever order they are accepted", () => {
    // "hoje chove" and "chove hoje" both accept both: two of one sentence, and no other choice.
    assert.equal(otherSentences([sentence("hoje chove", [1, 0]), sentence("chove hoje", [1, 0])]), undefined);
    assert.deepEqual(otherSentences([sentence("hoje chove"), sentence("chove hoje", [1, 0])]), [2, 0]);
    // Sentences without cards, or without an order, are laid as they are.
    assert.equal(otherSentences([sentence(""), sentence("o pneu")]), undefined);
    assert.equal(otherSentences([{ parts: ["o"], accepted: [] }, sentence("pneu")]), undefined);
  });

  it("are searched within the budget", () => {
    const words = ["eu", "tu"].flatMap((who) => ["vejo", "vês"].map((verb) => sentence(`${who} ${verb}`)));
    assert.deepEqual(otherSentences(words.slice(0, 3)), undefined);
    // Nodes to the first other choice: one for each sentence and one for the end.
    assert.deepEqual(otherSentences(words, 5), [2, 0, 0, 2]);
    assert.equal(otherSentences(words, 4), "unsettled");
  });

  it("can be laid with another's cards, whose rest is counted", () => {
    assert.deepEqual(buildable([sentence("o pneu novo"), sentence("o pneu")]), [{ sentence: 1, from: 0, leftOver: 1 }]);
    assert.deepEqual(buildable([sentence("o pneu"), sentence("o aro")]), []);
  });
});
