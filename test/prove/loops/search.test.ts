import assert from "node:assert/strict";
import { circleKey, stretch } from "../../../src/prove/loops/circle";
import { CircleSearch } from "../../../src/prove/loops/circle-search";
import { coreOf, possibleArcs } from "../../../src/prove/loops/core";
import { type Circle, isCircle, proveLoop, sameCircle } from "../../../src/prove/loops/loops";
import { below, randomFrom } from "../instances";
import { permutations } from "../orders/naive";
import { fullCircles } from "./naive";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

/** Any relation among a few cards; no card follows itself. */
function anyRelation(seed: number, most = 7): number[][] {
  const random = randomFrom(seed);
  const size = 2 + below(random, most - 1);
  const density = 0.2 + 0.8 * random();
  const circle = random() < 0.7;
  return upTo(size).map((card) =>
    upTo(size).filter((next) => next !== card && ((circle && next === (card + 1) % size) || random() < density)),
  );
}

function everyCircle(follows: readonly (readonly number[])[], look: readonly number[]) {
  const search = new CircleSearch(follows, look);
  const circles: Circle[] = [];
  for (let result = search.step(); result !== "end"; result = search.step()) if (result) circles.push(result);
  return { circles, nodes: search.nodes };
}

/** A circle from its card 0 on. */
const fromFirst = (circle: Circle) =>
  [...circle.slice(circle.indexOf(0)), ...circle.slice(0, circle.indexOf(0))].join();

describe("the search for circles", () => {
  it("meets every circle once where all cards are told apart", () => {
    let nodes = 0;
    let met = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const follows = anyRelation(seed);
      const found = everyCircle(follows, upTo(follows.length));
      assert.ok(found.circles.every((circle) => isCircle({ follows }, circle)));
      assert.deepEqual(found.circles.map(fromFirst).sort(), [...fullCircles({ follows })].sort());
      nodes += found.nodes;
      met += found.circles.length;
    }
    assert.ok(met > 10_000);
    // As measured; choices that are made well lower it.
    assert.ok(nodes <= 22_218, `${nodes}`);
  });

  it("meets every look where cards print alike, and seldom twice", () => {
    let met = 0;
    let looks = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed);
      // A few sorts of cards; cards of one sort have equal lists and stand in the same ones.
      const sorts = anyRelation(seed, 4).map((list, sort) => (random() < 0.5 ? [...list, sort] : list));
      const look = upTo(3 + below(random, 5)).map((card) => (card < sorts.length ? card : below(random, sorts.length)));
      const follows = look.map((sort, card) =>
        look.flatMap((other, next) => (next !== card && sorts[sort]?.includes(other) ? [next] : [])),
      );
      const { circles } = everyCircle(follows, look);
      const known = fullCircles({ follows, look });
      assert.deepEqual(new Set(circles.map((circle) => circleKey(look, circle))).size, known.size);
      assert.ok(circles.every((circle) => isCircle({ follows }, circle)));
      met += circles.length;
      looks += known.size;
    }
    assert.ok(looks > 300 && met <= 943, `${met} for ${looks}`);
  });

  it("needs no choice where everything follows", () => {
    const forced = upTo(9).map((card) => [(card + 4) % 9]);
    assert.deepEqual(everyCircle(forced, upTo(9)).nodes, 0);
    assert.deepEqual(everyCircle([[1], [0], [3], [2]], upTo(4)), { circles: [], nodes: 0 });
    assert.deepEqual(everyCircle([[], [0]], upTo(2)), { circles: [], nodes: 0 });
    // All alike: one look, which one row of choices meets.
    const alike = upTo(7).map((card) => upTo(7).filter((next) => next !== card));
    const { circles, nodes } = everyCircle(
      alike,
      upTo(7).map(() => 0),
    );
    assert.equal(circles.length, 1);
    assert.ok(nodes <= 7, `${nodes}`);
  });

  it("sees at once that two heaps of cards do not hang together", () => {
    const heaps = upTo(12).map((card) => upTo(12).filter((next) => next !== card && next % 2 === card % 2));
    assert.deepEqual(everyCircle(heaps, upTo(12)), { circles: [], nodes: 0 });
    // A way over, but none back.
    const oneWay = heaps.map((list, card) => (card === 0 ? [...list, 1] : list));
    assert.deepEqual(everyCircle(oneWay, upTo(12)), { circles: [], nodes: 0 });
    const back = oneWay.map((list, card) => (card === 7 ? [...list, 6] : list));
    // From 0 over to 1, through all odd cards to 7, back to 6, through all even ones: 4! ways on each side.
    assert.equal(everyCircle(back, upTo(12)).circles.length, 24 * 24);
  });
});

describe("what every full circle has", () => {
  it("an arc is kept iff some arrangement of all cards takes it", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const follows = anyRelation(seed, 5);
      const rows = permutations(follows.length).filter((row) =>
        row.every((next, card) => follows[card]?.includes(next)),
      );
      const possible = possibleArcs(follows, seed % 2 === 0 ? rows[0] : undefined);
      assert.equal(possible !== undefined, rows.length > 0);
      if (!possible) continue;
      const taken = follows.map((list, card) => list.filter((next) => rows.some((row) => row[card] === next)));
      assert.deepEqual(possible.follows, taken);
      // Cards of two blocks never compete for an answer.
      upTo(follows.length).forEach((a) => {
        upTo(follows.length).forEach((b) => {
          if (possible.block[a] !== possible.block[b]) assert.ok(taken[a]?.every((next) => !taken[b]?.includes(next)));
        });
      });
    }
  });

  it("is laid in stretches, which make the same circles", () => {
    let shorter = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const follows = anyRelation(seed);
      const known = [...fullCircles({ follows })].sort();
      const intended = known[0]?.split(",").map(Number);
      for (const meant of [undefined, intended]) {
        const core = coreOf(follows, meant);
        if (!core) {
          assert.deepEqual(known, []);
          continue;
        }
        const { stretches } = core;
        assert.deepEqual(
          stretches.flat().sort((a, b) => a - b),
          upTo(follows.length),
        );
        if (stretches.length === 1) {
          assert.deepEqual(stretches.map(fromFirst), known);
          continue;
        }
        shorter += follows.length - stretches.length;
        assert.ok(core.follows.every((list, i) => !list.includes(i)));
        const circles = [...fullCircles({ follows: core.follows })].map((circle) =>
          circle.split(",").flatMap((i) => stretches[Number(i)] ?? []),
        );
        assert.deepEqual(circles.map(fromFirst).sort(), known);
        // Nothing is forced any more.
        assert.ok(core.follows.every((list) => list.length > 1));
      }
    }
    assert.ok(shorter > 100);
  });

  it("of a relation with one circle is mostly that circle, without a search", () => {
    let searched = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const follows = anyRelation(seed);
      if (fullCircles({ follows }).size !== 1) continue;
      const { full } = proveLoop({ follows });
      assert.equal(full.status, "one");
      if (full.by === "search") searched++;
    }
    assert.ok(searched < 10, `${searched}`);
  });
});

describe("how circles look", () => {
  it("is read from the turn that is first in order, wherever they start", () => {
    for (let seed = 1; seed <= 500; seed++) {
      const random = randomFrom(seed);
      const size = 1 + below(random, 9);
      const sorts = 1 + below(random, 3);
      const word = upTo(size).map(() => below(random, sorts) + (random() < 0.1 ? 10 : 0));
      const turns = upTo(size).map((start) => [...word.slice(start), ...word.slice(0, start)]);
      const isBefore = (a: readonly number[], b: readonly number[]) => {
        const at = a.findIndex((value, i) => value !== b[i]);
        return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
      };
      const first = turns.find((turn) => turns.every((other) => !isBefore(other, turn)));
      for (const start of upTo(size)) {
        const circle = upTo(size).map((i) => (i + start) % size);
        assert.equal(circleKey(word, circle), first?.join());
        assert.ok(sameCircle(word, circle, upTo(size)));
      }
    }
    assert.ok(!sameCircle([0, 1, 2], [0, 1, 2], [0, 2, 1]));
  });

  it("a stretch goes on from one place to before another, once round at most", () => {
    assert.deepEqual(stretch([5, 6, 7, 8], 1, 3), [6, 7]);
    assert.deepEqual(stretch([5, 6, 7, 8], 3, 1), [8, 5]);
    assert.deepEqual(stretch([5, 6, 7, 8], 2, 2), [7, 8, 5, 6]);
    assert.deepEqual(stretch([5], 0, 0), [5]);
  });
});

/** Two rings of n cards, one of them by steps of two, and the rungs between them; every way may be gone in both directions. */
function petersen(n: number): number[][] {
  const follows: number[][] = upTo(2 * n).map(() => []);
  const join = (a: number, b: number) => {
    follows[a]?.push(b);
    follows[b]?.push(a);
  };
  for (const i of upTo(n)) {
    join(i, (i + 1) % n);
    join(i, n + i);
    join(n + i, n + ((i + 2) % n));
  }
  return follows;
}

describe("a search that goes astray", () => {
  it("begins anew and still meets every circle once", () => {
    // Schwenk 1989 (J. Combin. Theory B 47, 53–59): n circles where n leaves 1 by 6, three where it leaves 3, none where 5.
    for (const [n, circles] of [
      [7, 7],
      [9, 3],
      [11, 0],
      [13, 13],
      [15, 3],
      [17, 0],
    ] as const) {
      const found = everyCircle(petersen(n), upTo(2 * n));
      assert.equal(new Set(found.circles.map(fromFirst)).size, 2 * circles, `${n}`);
      assert.equal(found.circles.length, 2 * circles, `${n}`);
    }
  });

  it("needs few choices where going back one by one would take very many", () => {
    const cards = 1000;
    for (const seed of [240, 588, 689, 988, 1222]) {
      const random = randomFrom(seed);
      const follows = upTo(cards).map((card) => [(card + 1) % cards]);
      for (let i = 0; i < 2000; i++) {
        const before = (below(random, cards) + cards - 1) % cards;
        const next = below(random, cards);
        if (!follows[before]?.includes(next)) follows[before]?.push(next);
      }
      const { status, second = [], nodes } = proveLoop({ follows }).full;
      assert.equal(status, "several");
      assert.ok(isCircle({ follows }, second));
      assert.ok(nodes <= 722, `${seed}: ${nodes}`);
    }
  });

  it("does not take the circle that is told for a way out", () => {
    for (const [seed, size] of [
      [57343, 165],
      [68767, 142],
    ] as const) {
      // Cards whose prompts are answered by one of the next three pairs' answers too, three times as many as there are cards.
      const random = randomFrom(seed);
      assert.equal(12 + below(random, 300), size);
      const order = upTo(size);
      for (let i = size - 1; i > 0; i--) {
        const j = below(random, i + 1);
        [order[i], order[j]] = [order[j] ?? 0, order[i] ?? 0];
      }
      const answers = upTo(size).map((pair) => new Set([pair]));
      for (let k = 0; k < 3 * size; k++) {
        const pair = below(random, size);
        answers[pair]?.add((pair + 1 + below(random, 3)) % size);
      }
      const holder = new Map(order.map((pair, card) => [pair, (card + 1) % size]));
      const follows = order.map((pair) =>
        [...(answers[pair] ?? [])].map((next) => holder.get(next) ?? -1).sort((a, b) => a - b),
      );
      const { status, second = [], nodes } = proveLoop({ follows }, { intended: upTo(size), budget: 20_000 }).full;
      assert.equal(status, "several", `${seed}`);
      assert.ok(isCircle({ follows }, second) && !sameCircle(upTo(size), upTo(size), second));
      assert.ok(nodes <= 635, `${nodes}`);
    }
  });
});
