import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import { strips } from "../../src/activities/strips/kind";
import { type DealtStrips, signOf } from "../../src/activities/strips/model";
import { tellsStory } from "../../src/activities/strips/proof";
import { placesOf, writePlaces } from "../../src/activities/strips/story";
import { readUnit } from "../../src/unit/read";
import { readUnitText } from "../support/units";
import { morning, storyUnit } from "./unit";

function dealt(text: string): DealtStrips {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request);
  return strips.deal(activity.request);
}

/** All orders of 0 … n − 1. */
function orders(n: number): number[][] {
  if (n === 0) return [[]];
  return orders(n - 1).flatMap((order) =>
    Array.from({ length: n }, (_, at) => [...order.slice(0, at), n - 1, ...order.slice(at)]),
  );
}

describe("dealing strips", () => {
  it("takes every event, bullets included, and never deals an order that tells the story", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const result = dealt(storyUnit(morning, `seed: ${seed}`));
      const [deal] = result.deals;
      assert.ok(deal);
      assert.deepEqual(
        [...deal.dealt].sort((a, b) => a - b),
        [0, 1, 2, 3, 4, 5, 6],
      );
      const texts = deal.dealt.map((i) => result.events[i]?.text);
      // Written out by hand: the two orders that the unit accepts.
      for (const free of [
        ["um disco", "uma mochila"],
        ["uma mochila", "um disco"],
      ]) {
        const right = [
          "A Inês entra no café.",
          "Ela mede:",
          ...free,
          "Uma gaivota entra.",
          "A gaivota leva a mochila.",
          "Ela paga.",
        ];
        assert.notDeepEqual(texts, right);
      }
      assert.ok(!deal.inOrder);
      const rows = deal.dealt.filter(
        (event, i) => i > 1 && deal.dealt[i - 1] === event - 1 && deal.dealt[i - 2] === event - 2,
      );
      assert.equal(rows.length, 0, "three strips lie as they belong");
    }
  });

  it("finds a wrong order where most are right", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const three = dealt(storyUnit(["1. a", "2. b", "3. c"], `seed: ${seed}`)).deals[0];
      assert.notDeepEqual(three?.dealt, [0, 1, 2]);
      // The first of three stands first in every order but these.
      const free = dealt(storyUnit(["1. a", "   - b", "   - c"], `seed: ${seed}\nversions: 4`));
      for (const deal of free.deals) assert.notEqual(deal.dealt[0], 0);
      assert.equal(new Set(free.deals.map((deal) => deal.dealt.join(" "))).size, 4);
    }
  });

  it("counts the orders that are right as brute force does, and shows a second one that is", () => {
    const stories = [
      ["1. a", "2. b", "3. c"],
      ["1. a", "   - b", "   - c", "   - d", "2. e"],
      ["1. a", "   - b", "   - b", "   - c", "2. d"],
      ["1. a", "2. b", "3. a", "4. c"],
      ["1. a", "   - b", "   - c", "2. d", "   - b", "   - e"],
    ];
    for (const story of stories) {
      const { events, deals } = dealt(storyUnit(story));
      const proof = deals[0]?.proof;
      assert.ok(proof);
      const right = new Set(
        orders(events.length)
          .filter((order) =>
            order.every((event, i) =>
              order.slice(0, i).every((e) => (events[e]?.rank ?? 0) <= (events[event]?.rank ?? 0)),
            ),
          )
          .map((order) => order.map((event) => events[event]?.key).join(" ")),
      );
      assert.equal(proof.count, right.size, story.join(" "));
      assert.equal(proof.status, right.size === 1 ? "one" : "several");
      assert.equal(proof.second !== undefined, right.size > 1);
      if (proof.second) {
        assert.ok(right.has(proof.second.map((event) => events[event]?.key).join(" ")));
        assert.notEqual(
          proof.second.map((event) => events[event]?.key).join(" "),
          events.map(({ key }) => key).join(" "),
        );
      }
      for (const order of orders(events.length))
        assert.equal(tellsStory(events, order), right.has(order.map((event) => events[event]?.key).join(" ")));
    }
  });

  it("mending a word moves no strip and changes the code", () => {
    const [before] = dealt(storyUnit(morning)).deals;
    const [after] = dealt(storyUnit(morning.map((line) => line.replace("gaivota leva", "gaivota rouba")))).deals;
    assert.deepEqual(after?.dealt, before?.dealt);
    assert.notEqual(after?.code, before?.code);
  });

  it("gives each version an order of its own", () => {
    const { deals } = dealt(storyUnit(morning, "versions: 26"));
    assert.equal(new Set(deals.map((deal) => deal.dealt.join(" "))).size, 26);
    assert.equal(new Set(deals.map(({ code }) => code)).size, 26);
  });

  it("takes some of the events, in their order, and the others for the next version as far as there are", () => {
    const { events, deals } = dealt(storyUnit(morning, "take: 4\nversions: 2"));
    assert.equal(events.length, 7);
    assert.ok(events.every((event, i) => i === 0 || event.source.start > (events[i - 1]?.source.start ?? 0)));
    assert.deepEqual(
      deals.map((deal) => deal.events.length),
      [4, 4],
    );
  });

  it("prints a set for each group of the largest class, or for each desk", () => {
    const front = "teaches: pt\nclasses: [21, 27, 24]\n";
    // 27 learners in pairs: 12 pairs and a trio.
    assert.equal(dealt(storyUnit(morning, "", front)).deals[0]?.copies, 13);
    const desks = dealt(storyUnit(morning, "desks: 8", front)).deals;
    assert.deepEqual(
      desks.map(({ desk, copies }) => [desk, copies]),
      [1, 2, 3, 4, 5, 6, 7, 8].map((desk) => [desk, 1]),
    );
    assert.deepEqual(
      new Set(dealt(storyUnit(morning, "desks: 4\ncopies: 12", front)).deals.map((each) => each.copies)),
      new Set([3]),
    );
    assert.equal(dealt(storyUnit(morning, "copies: by copier", front)).deals[0]?.copies, "by copier");
  });

  it("makes blank strips alone where the learners write the story", () => {
    const result = dealt(storyUnit([], "blanks: 8"));
    assert.equal(result.deals.length, 1);
    assert.equal(result.summary, "8 blank strips");
    assert.equal(dealt(storyUnit([], "blanks: 2")).deals.length, 0);
  });

  it("takes 29 minutes for eight desks", () => {
    // 120 s to explain, 8 × 180 s, 7 × 20 s between: 1700 s.
    const result = dealt(storyUnit(morning, "desks: 8"));
    assert.equal(strips.guide(result, undefined as never).minutes, 29);
  });

  it("has directions in five languages, and none in others", () => {
    for (const options of ["", "blanks: 2", "desks: 4", "backs: numbers", "slip: none"]) {
      const result = dealt(storyUnit(morning, options));
      const counts = ["en", "es", "fr", "de", "pt"].map((lang) => strips.directions(result, lang)?.length);
      assert.equal(new Set(counts).size, 1);
      assert.ok((counts[0] ?? 0) >= 3);
      assert.equal(strips.directions(result, "fi"), undefined);
    }
  });
});

describe("places in a story", () => {
  it("gives free events all places of their set, and equal texts each other's", () => {
    const { events } = dealt(storyUnit(["1. a", "   - b", "   - c", "2. d", "3. a"]));
    assert.deepEqual(
      events.map((event) => writePlaces(placesOf(events, event))),
      ["1, 5", "2–3", "2–3", "4", "1, 5"],
    );
  });

  it("names strips by letters without I and O", () => {
    assert.equal(Array.from({ length: 24 }, (_, i) => signOf(i)).join(""), "ABCDEFGHJKLMNPQRSTUVWXYZ");
    assert.deepEqual([24, 25, 47, 48].map(signOf), ["AA", "AB", "AZ", "BA"]);
    assert.equal(new Set(Array.from({ length: 400 }, (_, i) => signOf(i))).size, 400);
  });
});

describe("findings of strips", () => {
  const codes = async (text: string): Promise<string[]> => (await readUnitText(text)).findings.map(({ code }) => code);

  it("says nothing of a sound story", async () => {
    assert.deepEqual(await codes(storyUnit(morning, "blanks: 2\nbacks: numbers\nversions: 3")), []);
    assert.deepEqual(await codes(storyUnit([], "blanks: 8")), []);
  });

  it("one cause, one finding: a story of one text has no wrong order, and that is all", async () => {
    assert.deepEqual(await codes(storyUnit(["1. a b", "2. a b", "3. a b"])), ["strips-any-order"]);
  });

  it("offers the events of another section", async () => {
    const text = `${storyUnit([])}\n## Other\n\n1. a\n2. b\n3. c\n`;
    const [finding] = (await readUnitText(text)).findings;
    assert.equal(finding?.code, "too-few-events");
    assert.deepEqual(
      finding?.fixes.map(({ title }) => title),
      ["Take the events of “Other”"],
    );
  });

  it("does not offer to take out an event that others hang under", async () => {
    const { findings } = await readUnitText(storyUnit(["1. a", "2. b", "3. a", "   - c", "4. d"]));
    assert.deepEqual(
      findings.map(({ code, fixes }) => [code, fixes.length]),
      [["repeated-event", 0]],
    );
  });
});
