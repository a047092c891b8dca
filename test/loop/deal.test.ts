import assert from "node:assert/strict";
import { loop } from "../../src/activities/loop/kind";
import { type LoopDeal, signAt, signOfPiece } from "../../src/activities/loop/model";
import { slipStarts, startsFor } from "../../src/activities/loop/papers";
import { counter, dealt, loopUnit, only } from "./unit";

/** Whether two places of a circle are neighbours. */
function neighbours(a: number, b: number, count: number): boolean {
  return [1, count - 1].includes((a - b + count) % count);
}

/** All full circles and all smaller ones, by trying every way on from card 0 or any card; by hand from the printed texts. */
function byHand(deal: LoopDeal, fits: (prompt: string, answer: string) => boolean): { full: number; smaller: boolean } {
  const { cards } = deal;
  const follow = cards.map(({ prompt }) =>
    cards.flatMap(({ answer }, i) => (fits(prompt.text, answer.text) ? [i] : [])),
  );
  let full = 0;
  let smaller = false;
  const walk = (path: readonly number[]): void => {
    for (const next of follow[path.at(-1) ?? 0] ?? []) {
      if (next === path[0]) {
        if (path.length === cards.length) full += path[0] === 0 ? 1 : 0;
        else smaller = true;
      } else if (!path.includes(next)) walk([...path, next]);
    }
  };
  cards.forEach((_, start) => {
    walk([start]);
  });
  return { full, smaller };
}

describe("dealing a loop", () => {
  it("asks and answers each pair once, in a circle, for any seed", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const deal = only(dealt(loopUnit(counter, `seed: ${seed}`)));
      const { cards } = deal;
      assert.equal(cards.length, 12);
      cards.forEach((card, i) => {
        const next = cards[(i + 1) % cards.length];
        const line = `${card.prompt.text} = ${next?.answer.text}`;
        assert.ok(
          counter.some((pair) => pair === line || pair.startsWith(`${line} /`)),
          line,
        );
      });
      assert.equal(new Set(cards.map(({ prompt }) => prompt.text)).size, 12);
      assert.equal(deal.proof.status, "one");
      assert.equal(deal.smaller, undefined);
      assert.equal(deal.attempt, 0);
    }
  });

  it("deals and posts no two neighbours of the circle beside each other, first and last included", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const deal = only(dealt(loopUnit(counter, `seed: ${seed}`)));
      assert.deepEqual(
        [...deal.dealt].sort((a, b) => a - b),
        counter.map((_, i) => i),
      );
      assert.deepEqual(
        [...deal.posting].sort((a, b) => a - b),
        counter.map((_, i) => i),
      );
      const posted = deal.posting.map((piece) => deal.dealt[piece] ?? -1);
      for (const order of [deal.dealt, posted]) {
        order.forEach((place, i) => {
          assert.ok(!neighbours(place, order[(i + 1) % order.length] ?? 0, order.length), order.join(" "));
        });
      }
    }
  });

  it("has no circle dealt as it lies even with four cards", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { dealt: order } = only(dealt(loopUnit(counter.slice(0, 4), `seed: ${seed}`)));
      const steps = order.filter((place, i) => (order[(i + 1) % 4] ?? 0) === (place + 1) % 4);
      assert.ok(steps.length < 3, order.join(" "));
    }
  });

  it("mending a word moves no card and changes the code", () => {
    const before = only(dealt(loopUnit(counter)));
    const after = only(dealt(loopUnit(counter.map((pair) => pair.replace("the fork", "a fork")))));
    const shape = (deal: LoopDeal): unknown => [
      deal.dealt,
      deal.posting,
      deal.cards.map((c) => c.prompt.text),
      deal.attempt,
    ];
    assert.deepEqual(shape(after), shape(before));
    assert.notEqual(after.code, before.code);
  });

  it("passes over pairs that clash as long as others are left", () => {
    const pairs = [...counter, "o bichano = the glass", "a taça = the glass", "a jarra = the bottle"];
    for (let seed = 1; seed <= 40; seed++) {
      const deal = only(dealt(loopUnit(pairs, `take: 12\nseed: ${seed}`)));
      assert.equal(deal.cards.length, 12);
      assert.equal(deal.smaller, undefined);
      assert.equal(deal.proof.status, "one");
    }
    assert.ok(only(dealt(loopUnit(pairs, "take: 13"))).smaller);
  });

  it("proves what trying every way by hand proves", () => {
    const sets = [
      ["a = p", "b = p", "c = q", "d = r"],
      ["a = p", "b = p", "c = p", "d = r", "e = s"],
      ["a = p", "b = p", "c = q", "d = q", "e = s"],
      ["a = p / q", "b = q", "c = r", "d = s / p"],
      ["a = p / q", "b = q / r", "c = r / p", "d = s"],
      ["a = p", "b = q", "a = r", "d = s", "e = t"],
      ["a = p", "b = q", "c = r", "d = s"],
    ];
    for (const pairs of sets) {
      const table = new Set(
        pairs.flatMap((pair) => {
          const [left = "", right = ""] = pair.split(" = ");
          return right.split(" / ").map((answer) => `${left}=${answer}`);
        }),
      );
      for (let seed = 1; seed <= 10; seed++) {
        const deal = only(dealt(loopUnit(pairs, `seed: ${seed}`)));
        const hand = byHand(deal, (prompt, answer) => table.has(`${prompt}=${answer}`));
        assert.equal(deal.proof.status === "one", hand.full === 1, pairs.join(", "));
        assert.equal(deal.smaller !== undefined, hand.smaller, pairs.join(", "));
      }
    }
  });

  it("takes an order with one full circle where one pair of answers is shared", () => {
    const pairs = [...counter.slice(0, 8), "a taça = the glass", "a jarra = the bottle"];
    for (let seed = 1; seed <= 40; seed++)
      assert.equal(only(dealt(loopUnit(pairs, `seed: ${seed}`))).proof.status, "one");
  });

  it("gives further versions other circles and pairs not used before, with signs of their own", () => {
    const { deals, used } = dealt(loopUnit(counter, "take: 6\nversions: 2"));
    const [first, second] = deals;
    assert.ok(first && second);
    const prompts = (deal: LoopDeal): string[] => deal.cards.map(({ prompt }) => prompt.text);
    assert.equal(new Set([...prompts(first), ...prompts(second)]).size, 12);
    assert.equal(used.length, 12);
    assert.equal(signOfPiece(first, 1), "B1");
    assert.equal(signOfPiece(only(dealt(loopUnit(counter))), 1), "B");
    assert.equal(signOfPiece(second, 1), "B2");
    const many = dealt(loopUnit(counter.slice(0, 5), "versions: 20"));
    const circles = many.deals.map((deal) => {
      const order = prompts(deal);
      const start = order.indexOf([...order].sort()[0] ?? "");
      return [...order.slice(start), ...order.slice(0, start)].join();
    });
    assert.equal(new Set(circles).size, 20);
  });

  it("prints one set for the room, and a set for each group of the largest class for tables", () => {
    const front = "teaches: pt\nclasses: [21, 27, 24]\n";
    assert.equal(only(dealt(loopUnit(counter, "", front))).copies, 1);
    assert.equal(only(dealt(loopUnit(counter, "size: mini", front))).copies, 13);
    assert.equal(only(dealt(loopUnit(counter, "copies: 3", front))).copies, 3);
  });

  it("spreads starts evenly round the circle", () => {
    const deal = only(dealt(loopUnit(counter)));
    assert.deepEqual(
      startsFor(deal, 4),
      [0, 3, 6, 9].map((place) => signAt(deal, place)),
    );
    assert.equal(new Set(startsFor(deal, 12)).size, 12);
    const counts = new Map<string, number>();
    for (const sign of startsFor(deal, 30)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
    assert.ok([...counts.values()].every((count) => count === 2 || count === 3));
    // Pairs of 5 and of 8 learners: 2 + 4 slips, or 4 that are wiped.
    const slips = (options: string): number => {
      const result = dealt(loopUnit(counter, options, "teaches: pt\nclasses: [5, 8]\n"));
      return slipStarts(result, only(result)).length;
    };
    assert.equal(slips(""), 6);
    assert.equal(slips("reuse: sleeve"), 4);
    assert.equal(slips("size: mini\nslip: visits"), 6);
  });

  it("tells circles of one room apart in the directions of each language, and only there", () => {
    const lines = (options: string): (readonly string[])[] =>
      ["en", "es", "fr", "de", "pt"].map((lang) => loop.directions(dealt(loopUnit(counter, options)), lang) ?? []);
    const [plain, two, noSlip, tables] = ["", "versions: 2", "versions: 2\nslip: none", "versions: 2\nsize: mini"].map(
      lines,
    );
    const words = /several circles|varios círculos|plusieurs cercles|mehrere Kreise|vários círculos/i;
    const slip = /your slip says|vuestra hoja|votre fiche f|eurem Zettel steht|vossa ficha indica/;
    two?.forEach((each) => {
      assert.equal(each.filter((line) => words.test(line) && slip.test(line)).length, 1, each.join(" "));
    });
    noSlip?.forEach((each) => {
      assert.equal(each.filter((line) => words.test(line) && !slip.test(line)).length, 1, each.join(" "));
    });
    for (const each of [...(plain ?? []), ...(tables ?? [])]) assert.ok(!each.some((line) => words.test(line)));
    // Levels hang in one room too, and none of them is for those who finish first.
    const levels = lines("levels: [gentle, hard]\ntake: 8");
    for (const each of levels) assert.ok(each.some((line) => words.test(line)));
    assert.ok(!levels[0]?.some((line) => line.includes("finish first")));
  });

  it("has directions in five languages, as many steps in each, and none in others", () => {
    for (const options of ["", "slip: none", "size: mini", "size: mini\nslip: visits", "versions: 2"]) {
      const result = dealt(loopUnit(counter, options));
      const counts = ["en", "es", "fr", "de", "pt"].map((lang) => loop.directions(result, lang)?.length);
      assert.equal(new Set(counts).size, 1);
      assert.ok((counts[0] ?? 0) >= 5);
      assert.equal(loop.directions(result, "fi"), undefined);
    }
  });

  it("is made of forms tables too", () => {
    const text =
      "---\nteaches: pt\n---\n\n## Verbs\n\n|      | medir   | trazer  |\n| ---- | ------- | ------- |\n| eu   | meço    | trago   |\n| nós  | medimos | trazemos |\n\n```activity\nmake: loop\nsize: mini\n```\n";
    const deal = only(dealt(text));
    assert.equal(deal.cards.length, 4);
    const card = deal.cards.findIndex(({ prompt }) => prompt.text === "medir, nós");
    assert.equal(deal.cards[(card + 1) % 4]?.answer.text, "medimos");
  });
});
