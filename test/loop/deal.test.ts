import assert from "node:assert/strict";
import { loop } from "../../src/activities/loop/kind";
import { type DealtLoop, type LoopDeal, signAt, signOfPiece } from "../../src/activities/loop/model";
import { slipStarts, startsFor } from "../../src/activities/loop/papers";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { readUnitText } from "../support/units";
import { counter, loopUnit } from "./unit";

function dealt(text: string): DealtLoop {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request, "nothing to deal from");
  return loop.deal(activity.request);
}

function only(result: DealtLoop): LoopDeal {
  const [deal] = result.deals;
  assert.ok(deal);
  return deal;
}

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

describe("findings of a loop", () => {
  it("says nothing of sound pairs", async () => {
    for (const options of ["", "size: mini", "size: mini\ncards: 6\nblanks: 2", "cards: 1\nversions: 3\ntake: 4"])
      assert.deepEqual((await readUnitText(loopUnit(counter, options))).findings, []);
  });

  it("names the cards of the circle that can close early, and they do fit one another", async () => {
    const pairs = [...counter.slice(0, 6), "a taça = the glass"];
    const text = loopUnit(pairs);
    const { findings } = await readUnitText(text);
    assert.deepEqual(
      findings.map(({ code }) => code),
      ["early-close"],
    );
    const message = findings[0]?.message ?? "";
    const signs = /cards: ([A-Z ]+)\.$/.exec(message)?.[1]?.split(" ") ?? [];
    const deal = only(dealt(text));
    assert.ok(signs.length > 0 && signs.length < 7, message);
    const answers = new Map(pairs.map((pair) => pair.split(" = ")).map(([l, r]) => [l, r?.split(" / ")[0]]));
    signs.forEach((sign, i) => {
      const cardOf = (name: string | undefined) => deal.cards.find((_, place) => signAt(deal, place) === name);
      const next = cardOf(signs[(i + 1) % signs.length]);
      assert.equal(answers.get(cardOf(sign)?.prompt.text), next?.answer.text);
    });
  });

  it("offers to take fewer pairs, and that gives a sound circle", async () => {
    const text = loopUnit([...counter.slice(0, 6), "a taça = the glass"]);
    const [finding] = (await readUnitText(text)).findings;
    assert.ok(finding?.fixes.some(({ title }) => title === "Take 6 of the 7 pairs, none of which clash"));
  });

  it("says where words lead from one circle of the room into another, and how many cards do", async () => {
    const told = async (options: string, pairs = counter) => {
      const { findings } = await readUnitText(loopUnit(pairs, options));
      return findings.map(({ message, fixes }) => [message, ...fixes.map(({ title }) => title)]);
    };
    const message = (cards: string, circles: string): string =>
      `${cards} in ${circles} of one room can be answered in another circle too: only the number in the sign tells the cards apart.`;
    // All twelve words stand in both.
    assert.deepEqual(await told("versions: 2"), [
      [message("24 cards", "two circles"), "Take 6 pairs for each circle", "Lay the circles on tables"],
    ]);
    // Seven of twelve and seven of twelve: two pairs are in both, one card of each circle.
    assert.deepEqual(await told("versions: 2\ntake: 7\ncards: 2"), [
      [message("4 cards", "two circles"), "Take 6 pairs for each circle"],
    ]);
    // Nothing is left that could be shared out.
    assert.deepEqual(await told("versions: 4"), [[message("48 cards", "4 circles"), "Lay the circles on tables"]]);
    // Other words, but one answer for both: it leads astray although no pair is in both circles.
    const same = ["o copo = the glass", "a taça = the glass"];
    const rest = counter.slice(1, 7);
    const [shared] = await told("versions: 2\ntake: 4", [...same, ...rest]);
    assert.match(shared?.[0] ?? "none", /^2 cards in two circles/);
  });

  it("refuses numbers of cards that a size cannot have", async () => {
    const codes = async (options: string) =>
      (await readUnitText(loopUnit(counter, options))).findings.map(({ code }) => code);
    assert.deepEqual(await codes("cards: 4"), ["wrong-option"]);
    assert.deepEqual(await codes("size: mini\ncards: 1"), ["wrong-option"]);
    assert.deepEqual(await codes("size: mini\ncards: 7"), ["wrong-option"]);
  });
});
