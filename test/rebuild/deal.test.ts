import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import { rebuild } from "../../src/activities/rebuild/kind";
import { flowRows } from "../../src/activities/rebuild/layout";
import type { DealtRebuild } from "../../src/activities/rebuild/model";
import { readUnit } from "../../src/unit/read";
import { readUnitText } from "../support/units";
import { ordering, sentenceUnit } from "./unit";

function dealt(text: string): DealtRebuild {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request);
  return rebuild.deal(activity.request);
}

/** Accepted readings of the sample's sentences, as the cards print them, written out by hand. */
const accepted = [
  ["queria|um disco|por favor", "por favor|queria|um disco"],
  ["A|Inês|bebe|um|disco|com|o|pai."],
  ["O|pai|come|uma|mochila|e|a|Inês|come|um|bolo."],
  ["O|senhor|tem|sumo|de|laranja?"],
  ["Quanto|custa|a|mochila?"],
  ["Inês|não|gosta|de|leite."],
];

describe("dealing rebuild", () => {
  it("a packet a sentence, and no sentence can be read where its cards lie", () => {
    for (let seed = 1; seed <= 150; seed++) {
      const result = dealt(sentenceUnit(ordering, `seed: ${seed}`));
      const [deal] = result.deals;
      assert.ok(deal);
      assert.deepEqual(
        result.packets.map(({ number, sentences }) => [number, ...sentences]),
        accepted.map((_, i) => [i + 1, i]),
      );
      accepted.forEach((readings, sentence) => {
        const lying = deal.dealt.filter((card) => card.sentence === sentence).map(({ text }) => text);
        assert.deepEqual([...lying].sort(), [...(readings[0] ?? "").split("|")].sort());
        assert.ok(!readings.includes(lying.join("|")), lying.join("|"));
      });
      // Packets follow each other on the sheets.
      const order = deal.dealt.map((card) => card.sentence);
      assert.deepEqual(
        [...order].sort((a, b) => a - b),
        order,
      );
    }
  });

  it("mixed packets: cards of their sentences among each other, each in no accepted order", () => {
    let mixed = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const result = dealt(sentenceUnit(ordering, `seed: ${seed}\npacket: 4`));
      const [deal] = result.deals;
      assert.ok(deal);
      assert.deepEqual(
        result.packets.map(({ sentences }) => sentences),
        [
          [0, 1, 2, 3],
          [4, 5],
        ],
      );
      accepted.forEach((readings, sentence) => {
        const lying = deal.dealt.filter((card) => card.sentence === sentence).map(({ text }) => text);
        assert.ok(!readings.includes(lying.join("|")), lying.join("|"));
      });
      const order = deal.dealt.map((card) => card.sentence);
      mixed += order.filter((sentence, i) => i > 0 && order[i - 1] !== sentence).length > 6 ? 1 : 0;
    }
    assert.equal(mixed, 60);
  });

  it("two cards lie the other way round, also beside a sentence that has no wrong order", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { deals } = dealt(
        sentenceUnit(["- bom | dia = good day", "- chá | chá = tea tea"], `seed: ${seed}\npacket: 2`),
      );
      const own = deals[0]?.dealt.filter(({ sentence }) => sentence === 0).map(({ text }) => text);
      assert.deepEqual(own, ["dia", "bom"]);
      assert.deepEqual(deals[0]?.inOrder, [1]);
    }
  });

  it("counts accepted orders; equal cards make none", () => {
    const [one] = dealt(sentenceUnit(["- o pai e o filho = a"])).deals;
    assert.deepEqual([one?.proof.status, one?.proof.count], ["one", 1]);
    const [alike] = dealt(sentenceUnit(["- mais | é | mais = a", "  - Mais | é | mais"])).deals;
    assert.deepEqual([alike?.proof.status, alike?.proof.count, alike?.proof.second], ["one", 1, undefined]);
    const [several] = dealt(sentenceUnit([...ordering, "- a | b | c = d", "  - b | a | c", "  - c | a | b"])).deals;
    assert.deepEqual([several?.proof.status, several?.proof.count, several?.proof.capped], ["several", 6, false]);
    assert.deepEqual(several?.proof.second?.[0], [2, 0, 1]);
    assert.deepEqual(several?.proof.second?.[1], [0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it("mending a word moves no card and changes the code", () => {
    const places = (text: string): unknown =>
      dealt(text).deals[0]?.dealt.map(({ sentence, part }) => `${sentence}.${part}`);
    const mended = ordering.map((line) => line.replace("mochila e a", "tosta e a"));
    assert.deepEqual(places(sentenceUnit(mended)), places(sentenceUnit(ordering)));
    assert.notEqual(dealt(sentenceUnit(mended)).deals[0]?.code, dealt(sentenceUnit(ordering)).deals[0]?.code);
  });

  it("another version deals each packet in another order", () => {
    const { deals } = dealt(sentenceUnit(ordering, "versions: 4"));
    for (const sentence of [1, 2, 3, 4, 5]) {
      const orders = deals.map((deal) =>
        deal.dealt
          .filter((card) => card.sentence === sentence)
          .map(({ part }) => part)
          .join(),
      );
      assert.equal(new Set(orders).size, 4);
    }
  });

  it("prints so many sets that each group has a packet and one is left to change to", () => {
    const copies = (front: string, options = ""): unknown =>
      dealt(sentenceUnit(ordering, options, `teaches: pt\n${front}`)).deals[0]?.copies;
    // 27 learners: 13 groups, and 6 packets a set.
    assert.equal(copies("classes: [21, 27]\n"), 3);
    assert.equal(copies("classes: [10]\n"), 1);
    assert.equal(copies("classes: [12]\n"), 2);
    assert.equal(copies("classes: [27]\n", "copies: 5"), 5);
    assert.equal(copies(""), 1);
  });

  it("labels packets with their number, cards and translation, or leaves that to the key", () => {
    const result = dealt(sentenceUnit(ordering, "packet: 2"));
    const [deal] = result.deals;
    assert.ok(deal);
    const [set, first] = rebuild.labels(result, deal);
    assert.deepEqual(set, { contents: "3 packets, 37 cards" });
    assert.equal(first?.packet, "1");
    assert.equal(first?.contents, "11 cards, 2 sentences");
    assert.equal(
      first?.translation?.map(({ text }) => text).join(""),
      "A: I'd like a milky coffee, please.   B: Inês drinks a milky coffee with her father.",
    );
    const test = dealt(sentenceUnit(ordering, "translation: key"));
    assert.ok(rebuild.labels(test, deal).every(({ translation }) => translation === undefined));
  });

  it("has directions in five languages", () => {
    for (const options of ["", "packet: 2", "slip: sentences", "translation: key"]) {
      const result = dealt(sentenceUnit(ordering, options));
      const counts = ["en", "es", "fr", "de", "pt"].map((lang) => rebuild.directions(result, lang)?.length);
      assert.equal(new Set(counts).size, 1);
      assert.equal(rebuild.directions(result, "fi"), undefined);
    }
  });
});

describe("rows of cards", () => {
  it("keep the order, fill the width, and share edges", () => {
    const box = { x: 10, y: 16, w: 100, h: 45 };
    const { pages, places } = flowRows(box, [40, 40, 40, 60, 30, 30, 30, 30, 30, 20], 20);
    assert.equal(pages, 2);
    assert.deepEqual(
      places.map(({ page, y }) => [page, y]),
      [
        [0, 16],
        [0, 16],
        [0, 36],
        [0, 36],
        [1, 16],
        [1, 16],
        [1, 16],
        [1, 36],
        [1, 36],
        [1, 36],
      ],
    );
    for (const first of [0, 2, 4]) {
      const row = places.filter((place) => place.page === places[first]?.page && place.y === places[first]?.y);
      assert.equal(row[0]?.x, 10);
      row.slice(1).forEach((place, i) => {
        assert.ok(Math.abs(place.x - ((row[i]?.x ?? 0) + (row[i]?.w ?? 0))) < 1e-9);
      });
      const last = row.at(-1);
      assert.ok(Math.abs((last?.x ?? 0) + (last?.w ?? 0) - 110) < 1e-9);
    }
    assert.equal(places.at(-1)?.w, 20);
  });
});

describe("findings of rebuild", () => {
  const found = async (text: string): Promise<string[]> => (await readUnitText(text)).findings.map(({ code }) => code);

  it("says nothing of sound sentences", async () => {
    assert.deepEqual(await found(sentenceUnit(ordering, "levels: [gentle, hard]\nversions: 2\npacket: 2")), []);
  });

  it("equal cards in different packets matter only where all are the same", async () => {
    const lines = ["- o pai | vê | a mãe = one", "- a mãe | vê | o pai | bem = two"];
    assert.deepEqual(await found(sentenceUnit(lines)), []);
    assert.deepEqual(await found(sentenceUnit(lines, "packet: 2")), ["same-cards"]);
    assert.deepEqual(await found(sentenceUnit(["- O pai | vê | a mãe. = one", "- A mãe | vê | o pai? = two"])), [
      "same-cards",
    ]);
  });

  it("equal cards are told as they are printed, and by what keeps them apart", async () => {
    const said = async (lines: readonly string[], options = ""): Promise<string> => {
      const { findings } = await readUnitText(sentenceUnit(lines, options));
      return findings.flatMap(({ code, message }) => (code === "same-cards" ? [message] : [])).join("\n");
    };
    const lent = ["- a roda | gira | bem = one", "- gira | a roda = two"];
    assert.equal(
      await said(lent, "packet: 2"),
      "“gira a roda” has only cards that are also in “a roda gira bem”: only the letters on the cards tell whose they are.",
    );
    const hides = ["- Gira | hoje. = one", "- Hoje | gira | a roda. = two"];
    assert.match(await said(hides, "packet: 2"), /also in “Hoje gira a roda\.”, but for capitals and marks: only/u);
    assert.doesNotMatch(await said(hides, "packet: 2\nlevels: [gentle, hard]"), /capitals/u);
    assert.equal(
      await said(["- o sino | ouve | a roda = one", "- a roda | ouve | o sino = two"]),
      "“a roda ouve o sino” has the same cards as “o sino ouve a roda” (packet 1): one can be laid for the other, and only the translation tells which is meant.",
    );
    // Each of two equal cards needs one of its own.
    assert.match(await said(["- Bem | bem | gira = one", "- gira | bem | bem = two"]), /but for capitals and marks/u);
  });

  it("a sentence that stands twice is one finding, and not this kind's", async () => {
    assert.deepEqual(await found(sentenceUnit(["- a | b | c = one", "- a | b | c = two"])), ["duplicate-answer"]);
  });
});
