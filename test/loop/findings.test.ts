import assert from "node:assert/strict";
import { signAt } from "../../src/activities/loop/model";
import { readUnitText } from "../support/units";
import { counter, dealt, loopUnit, only } from "./unit";

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
