import assert from "node:assert/strict";
import { mispair, surelyWrong } from "../../src/activities/sort/mispair";
import type { DealtSort, SortCard } from "../../src/activities/sort/model";
import { pileNames } from "../../src/activities/sort/model";
import { pairsOf } from "../../src/activities/supply";
import type { Reading } from "../../src/make/workshop";
import { Relation } from "../../src/match/relation";
import { readUnit } from "../../src/unit/read";
import { story } from "../calls/unit";
import { readUnitText } from "../support/units";
import { articles, crockery, meals, sortUnit } from "./unit";

function isSort(dealt: unknown): dealt is DealtSort {
  return typeof dealt === "object" && dealt !== null && "piles" in dealt && "cards" in dealt;
}

function sortOf(reading: Reading): DealtSort {
  const checked: unknown = "checked" in reading ? reading.checked : undefined;
  assert.ok(Array.isArray(checked));
  const dealt: unknown = checked[0]?.dealt;
  assert.ok(isSort(dealt));
  return dealt;
}

async function dealt(...args: Parameters<typeof sortUnit>): Promise<DealtSort> {
  return sortOf(await readUnitText(sortUnit(...args)));
}

const piled = (sort: DealtSort): Record<string, string[]> =>
  Object.fromEntries(sort.cards.map((card) => [card.text, pileNames(sort, card)]));

describe("sort by headings", () => {
  it("makes one card of each text, which belongs to each pile that it stands in", async () => {
    const sort = await dealt(meals, "overlap: true");
    assert.deepEqual(piled(sort), {
      disco: ["Breakfast"],
      mochila: ["Breakfast"],
      mel: ["Breakfast"],
      pão: ["Breakfast", "Lunch", "Supper"],
      fruta: ["Breakfast", "Lunch"],
      sopa: ["Lunch", "Supper"],
      arroz: ["Lunch"],
      peixe: ["Lunch"],
      queijo: ["Supper"],
      ovos: ["Supper"],
    });
    assert.equal(sort.deals[0]?.proof.status, "one");
  });

  it("takes the piles that are named, with one pile for headings of one name", async () => {
    const twice = [...articles, "", "### o", "", "- garfo"];
    const sort = await dealt(twice, "piles: [a, o]\noverlap: true");
    assert.deepEqual(
      sort.piles.map(({ name }) => name),
      ["a", "o"],
    );
    assert.deepEqual(piled(sort)["garfo"], ["o"]);
    assert.deepEqual(piled(sort)["pianista"], ["a", "o"]);
  });

  it("deals mixed cards, each version in another order, and keeps the order when a word is mended", async () => {
    const sort = await dealt(articles, "overlap: true\nversions: 3");
    assert.equal(new Set(sort.deals.map(({ order }) => order.join(" "))).size, 3);
    for (const { order } of sort.deals) {
      assert.deepEqual(
        [...order].sort((a, b) => a - b),
        sort.cards.map((_, i) => i),
      );
      const zones = order.map((i) => sort.cards[i]?.piles.join());
      assert.ok(zones.filter((zone, i) => i > 0 && zone !== zones[i - 1]).length >= sort.cards.length / 2);
    }
    const mended = await dealt(
      articles.map((line) => line.replace("gaivota", "gaivotinha")),
      "overlap: true\nversions: 3",
    );
    assert.deepEqual(
      mended.deals.map(({ order }) => order),
      sort.deals.map(({ order }) => order),
    );
    sort.deals.forEach(({ code }, i) => void assert.notEqual(code, mended.deals[i]?.code));
  });

  it("shows the side of a pair that is asked for, or both", async () => {
    const lines = [
      "### o",
      "- o copo = the glass",
      "- o garfo = the fork",
      "### a",
      "- a faca = the knife",
      "- a colher = the spoon",
    ];
    assert.deepEqual((await dealt(lines)).cards.map(({ text }) => text)[0], "o copo");
    assert.deepEqual((await dealt(lines, "show: right")).cards[0], {
      ...(await dealt(lines, "show: right")).cards[0],
      text: "the glass",
      lang: "en",
    });
    assert.equal((await dealt(lines, "show: both")).cards[0]?.text, "o copo = the glass");
  });
});

describe("sort by truth", () => {
  it("shows half of the pairs with a partner that is surely wrong and of the same shape", async () => {
    for (let seed = 0; seed < 40; seed++) {
      const sort = await dealt(crockery, `seed: ${seed}`);
      const wrong = sort.cards.filter(({ piles }) => piles[0] === 1);
      assert.equal(sort.cards.length, 8);
      assert.equal(wrong.length, 4);
      for (const card of wrong) {
        assert.ok(!crockery.some((line) => line === `- ${card.text}`), card.text);
        // A cup is a mug here, and a tankard is a mug: none of the three may stand for another's word.
        assert.doesNotMatch(card.text, /^a (tigela|chávena) = the (mug|tankard|cup)$/);
        const right = card.correction?.runs.find(({ bold }) => bold)?.text;
        assert.ok(right && crockery.some((line) => line.includes(right)));
      }
      const shown = wrong.map(({ text }) => text.split(" = ")[1]);
      assert.equal(new Set(shown).size, shown.length, "a wrong side is used once");
    }
  });

  it("keeps verbs with verbs, and forms with forms of the same verb", () => {
    const unit = readUnit(
      `## A\n\n${crockery.join("\n")}\n\n## B\n\n|   | ir | ser | ter |\n|---|---|---|---|\n| eu | vou | sou | tenho |\n| tu | vais | és | tens |\n| ele | vai | é | tem |\n`,
    );
    const relation = new Relation(unit.sections.flatMap(pairsOf));
    const [a = [], b = []] = unit.sections.map(pairsOf);
    for (let seed = 0; seed < 30; seed++) {
      for (const [i, answer] of mispair(a, 4, relation, `${seed}`)) {
        const own = a[i]?.right.answers[0].text ?? "";
        assert.equal(own.startsWith("to "), answer.text.startsWith("to "), `${own} / ${answer.text}`);
      }
      for (const [i, answer] of mispair(b, 4, relation, `${seed}`)) {
        const column = [
          ["vou", "vais", "vai"],
          ["sou", "és", "é"],
          ["tenho", "tens", "tem"],
        ].find((forms) => forms.includes(b[i]?.right.answers[0].text ?? ""));
        assert.ok(column?.includes(answer.text));
      }
    }
  });

  it("never makes a wrong pair of words that may be right, however many are asked for", () => {
    // Three words for “boss”, chained by synonyms, and one that has nothing to do with them.
    const unit = readUnit(
      "## A\n\n- jefe = boss / chief\n- dueño = owner / boss\n- amo = master / owner\n- pan = bread\n",
    );
    const pairs = unit.sections.flatMap(pairsOf);
    const relation = new Relation(pairs);
    const wrong = (i: number, j: number): boolean => {
      const [one, two] = [pairs[i], pairs[j]];
      return one !== undefined && two !== undefined && surelyWrong(one, two, relation);
    };
    assert.equal(wrong(0, 1), false);
    assert.equal(wrong(1, 2), false);
    assert.equal(wrong(0, 3), true);
    assert.equal(wrong(3, 0), true);
    for (let seed = 0; seed < 20; seed++) {
      const made = mispair(pairs, 4, relation, `${seed}`);
      for (const [i, answer] of made) {
        const key = pairs.findIndex(({ right }) => right.answers[0] === answer);
        assert.ok(wrong(i, key));
      }
    }
  });

  it("sorts statements with their twins and shows who wrote them", async () => {
    const sort = await dealt(story, "twins: 3\nnames: [Aconteceu, Não]");
    assert.deepEqual(
      sort.piles.map(({ name }) => name),
      ["Aconteceu", "Não"],
    );
    const twins: readonly SortCard[] = sort.cards.filter(({ twin }) => twin);
    assert.equal(twins.length, 3);
    assert.ok(twins.every(({ piles, correction }) => piles[0] === 1 && correction));
    assert.equal(sort.cards.find(({ text }) => text.startsWith("O gato"))?.by, "K7");
    assert.deepEqual(
      (await dealt(story)).piles.map(({ name }) => name),
      ["Verdadeiro", "Falso"],
    );
  });

  it("takes as many cards as asked for, statements and pairs", async () => {
    const both = await dealt([...story, "", ...crockery], "take: 10\nmispair: 3\npiles: truth");
    assert.equal(both.cards.length, 10);
    assert.equal(both.cards.filter(({ text }) => text.includes(" = ")).length, 5);
    assert.equal((await dealt(crockery, "take: 6")).cards.length, 6);
    assert.equal((await dealt(meals, "take: 6\noverlap: true")).cards.length, 6);
  });
});
