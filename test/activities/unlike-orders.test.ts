import assert from "node:assert/strict";
import { board } from "../../src/activities/board/kind";
import { calls } from "../../src/activities/calls/kind";
import { planUnit } from "../../src/activities/plan";
import { EarlierOrders, madeUnlike } from "../../src/activities/unlike-orders";
import { Random, upTo } from "../../src/base/seed";
import { readUnit } from "../../src/unit/read";
import { type ShapeName, shapes, workshopUnit } from "./material";

/* Orders of several class hours, looked at two by two. */

function inCommon(one: readonly number[], two: readonly number[]): { places: number; couples: number } {
  const couples = (order: readonly number[]): Set<string> =>
    new Set(order.slice(1).map((item, i) => [item, order[i] ?? -1].sort((a, b) => a - b).join(" ")));
  const known = couples(one);
  return {
    places: one.filter((item, place) => two[place] === item).length,
    couples: [...couples(two)].filter((each) => known.has(each)).length,
  };
}

function listsOf(
  kind: "board" | "calls",
  about: ShapeName,
  options: string,
  classes: number,
  from: string = shapes[about].from,
): readonly number[][] {
  const unit = workshopUnit(kind, about, options, `classes: [${upTo(classes).map(() => 20)}]\n`).replace(
    `from: ${shapes[about].from}`,
    `from: ${from}`,
  );
  const [activity] = planUnit(readUnit(unit)).activities;
  assert.ok(activity?.request);
  return kind === "board"
    ? board.deal(activity.request).lists.map((list) => [...list])
    : calls.deal(activity.request).deals.map(({ order }) => [...order]);
}

function most(lists: readonly (readonly number[])[]): { places: number; couples: number } {
  const two = lists.flatMap((one, i) => lists.slice(i + 1).map((other) => inCommon(one, other)));
  return {
    places: Math.max(0, ...two.map(({ places }) => places)),
    couples: Math.max(0, ...two.map(({ couples }) => couples)),
  };
}

describe("orders of several hours", () => {
  it("are weighed by places and by couples of neighbours, whichever comes first", () => {
    const before = new EarlierOrders([[0, 1, 2, 3]]);
    assert.equal(before.likeness([0, 1, 2, 3]), 4 * 2 + 3);
    assert.equal(before.likeness([3, 2, 1, 0]), 3);
    assert.equal(before.likeness([1, 3, 0, 2]), 0);
    assert.equal(new EarlierOrders([]).likeness([0, 1]), 0);
  });

  it("are mended by exchanges that are allowed, and left alone where there is nothing to mend", () => {
    const order = [1, 3, 0, 2];
    assert.equal(
      madeUnlike(order, [[0, 1, 2, 3]], () => true),
      order,
    );
    assert.equal(
      madeUnlike(order, [], () => true),
      order,
    );
    const same = [0, 1, 2, 3];
    assert.deepEqual(
      madeUnlike(same, [same], () => false),
      same,
    );
    // Odd and even may not mix: their places stay theirs, and each pair of them changes places.
    assert.deepEqual(
      madeUnlike(same, [same], (a, b) => a % 2 === b % 2),
      [2, 3, 0, 1],
    );
    for (let seed = 0; seed < 50; seed++) {
      const random = new Random(`unlike/${seed}`);
      const [one, two] = [random.shuffle(upTo(8)), random.shuffle(upTo(8))];
      const made = madeUnlike(two, [one], () => true);
      assert.deepEqual([...made].sort(), upTo(8));
      assert.equal(inCommon(one, made).places, 0);
    }
  });

  it("never make another fault for it", () => {
    const same = upTo(6);
    const cost = (order: readonly number[]): number => (order[0] === 0 ? 0 : 1);
    const made = madeUnlike(same, [same], () => true, cost);
    assert.equal(made[0], 0);
    assert.equal(inCommon(same, made).places, 1);
  });

  it("share no place and hardly a couple: statements that are called", () => {
    for (let seed = 1; seed <= 25; seed++) {
      const ten = most(listsOf("calls", "statements", `twins: none\nseed: ${seed}`, 2, "Before"));
      assert.equal(ten.places, 0, `ten, seed ${seed}`);
      assert.ok(ten.couples <= 2, `ten, seed ${seed}: ${ten.couples} couples`);
      const all = most(listsOf("calls", "statements", `seed: ${seed}`, 3));
      assert.equal(all.places, 0, `seed ${seed}`);
      assert.ok(all.couples <= 2, `seed ${seed}: ${all.couples} couples`);
    }
  });

  it("share no place and hardly a couple: words that are called, few or many", () => {
    for (let seed = 1; seed <= 25; seed++) {
      const six = most(listsOf("board", "words", `grid: 2 x 3\nseed: ${seed}`, 2));
      assert.equal(six.places, 0, `six, seed ${seed}`);
      assert.ok(six.couples <= 2, `six, seed ${seed}: ${six.couples} couples`);
      const many = most(listsOf("board", "words", `grid: 4 x 4\nseed: ${seed}`, 5));
      assert.equal(many.places, 0, `seed ${seed}`);
      assert.ok(many.couples <= 2, `seed ${seed}: ${many.couples} couples`);
    }
  });
});
