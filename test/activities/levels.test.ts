import assert from "node:assert/strict";
import fc from "fast-check";
import type { DealtBoard } from "../../src/activities/board/model";
import { type CallsDeal, calledIn, type DealtCalls } from "../../src/activities/calls/model";
import type { Deal, Dealt, KindName } from "../../src/activities/contract";
import { cardAt, type DealtLoop } from "../../src/activities/loop/model";
import type { DealtRebuild } from "../../src/activities/rebuild/model";
import type { DealtSort, SortDeal } from "../../src/activities/sort/model";
import { fineShare, trueShare } from "../../src/activities/statements";
import { strips } from "../../src/activities/strips/kind";
import type { DealtStrips } from "../../src/activities/strips/model";
import { readUnitText } from "../support/units";
import { dealtOf, type ShapeName, shapes, workshopUnit } from "./material";

/*
 * Laws of levels and versions, for every kind and whatever the seed: each deal has a code of its own and one solution; levels of
 * a version have the same items; versions have others as far as there are; and what a level adds is there.
 */

const isBoard = (dealt: Dealt<Deal>): dealt is DealtBoard => "targets" in dealt;
const isCalls = (dealt: Dealt<Deal>): dealt is DealtCalls => "reserve" in dealt && "hands" in dealt;
const isLoop = (dealt: Dealt<Deal>): dealt is DealtLoop => "missingDecoys" in dealt;
const isRebuild = (dealt: Dealt<Deal>): dealt is DealtRebuild => "whole" in dealt;
const isSort = (dealt: Dealt<Deal>): dealt is DealtSort => "missingMispairs" in dealt;
const isStrips = (dealt: Dealt<Deal>): dealt is DealtStrips => "events" in dealt;

const seeds = fc.integer({ min: 0, max: 999_999 });
const runs = { numRuns: 40 };

const both = "levels: [gentle, hard]";

/** All pairs of level and version once, each with a code of its own and a proof without a second solution. */
function eachOnce(dealt: Dealt<Deal>, versions: number, levels: readonly string[] = ["gentle", "hard"]): void {
  const wanted = levels.flatMap((level) => Array.from({ length: versions }, (_, i) => `${level} ${i + 1}`));
  assert.deepEqual(
    dealt.deals.map(({ level, version }) => `${level} ${version}`),
    wanted,
  );
  assert.equal(new Set(dealt.deals.map(({ code }) => code)).size, wanted.length);
  for (const { proof } of dealt.deals) assert.ok(proof.status === "one" || proof.accepted, proof.status);
}

const sorted = (texts: readonly (string | undefined)[]): string[] => texts.map((text) => text ?? "?").sort();

/** Items of each deal by version; levels of a version must have the same. */
function byVersion<D extends Deal>(deals: readonly D[], itemsOf: (deal: D) => readonly string[]): string[][] {
  const versions = new Map<number, string[]>();
  for (const deal of deals) {
    const items = sorted(itemsOf(deal));
    assert.deepEqual(items, versions.get(deal.version) ?? items, "levels of a version have the same items");
    versions.set(deal.version, items);
  }
  return [...versions.values()];
}

/** Nothing of a version stands in another one. */
function apart(versions: readonly (readonly string[])[]): void {
  const all = versions.flat();
  assert.equal(new Set(all).size, all.length, `versions share ${all.filter((item, i) => all.indexOf(item) !== i)}`);
}

describe("levels and versions of strips", () => {
  it("have so many events of the sections, others in each version, and gentle ones tell two places", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const text = workshopUnit("strips", "events", `${both}\nversions: 2\ntake: 5\nseed: ${seed}`);
        const strips = dealtOf(text, isStrips);
        eachOnce(strips, 2);
        const versions = byVersion(strips.deals, ({ events }) => events.map((event) => event.text));
        for (const own of versions) {
          assert.equal(own.length, 5);
          assert.ok(own.every((event) => shapes.events.text.includes(event)));
          // A bullet without the event that it stands under says nothing.
          const bullets = own.some((event) => ["uma chave", "um pano"].includes(event));
          assert.ok(!bullets || own.includes("Ele procura:"));
        }
        const shared = versions[0]?.filter((event) => versions[1]?.includes(event)) ?? [];
        assert.ok(
          shared.every((event) => event === "Ele procura:"),
          shared.join(),
        );
        for (const { level, told, events, dealt } of strips.deals) {
          assert.deepEqual(
            [...dealt].sort((a, b) => a - b),
            events.map((_, i) => i),
          );
          if (level === "hard") assert.deepEqual(told, []);
          else {
            assert.ok(told.length === 2);
            // Only an event that stands alone on its place can show it.
            for (const index of told) assert.equal(events.filter(({ rank }) => rank === events[index]?.rank).length, 1);
          }
        }
      }),
      runs,
    );
  });
});

describe("gentle strips", () => {
  const told = (events: string): (string | undefined)[] => {
    const unit = `## Morning\n\n${events}\n\n\`\`\`activity\nmake: strips\nlevels: [gentle]\n\`\`\`\n`;
    const [deal] = dealtOf(unit, isStrips).deals;
    return deal?.told.map((index) => `${index + 1} ${deal.events[index]?.text}`) ?? [];
  };

  it("tell the places of events that have one, one place only where there are few", () => {
    assert.deepEqual(told("1. a\n2. b\n3. c\n4. d\n5. e"), ["1 a", "5 e"]);
    assert.deepEqual(told("1. a\n2. b\n3. c\n4. d"), ["1 a"]);
    assert.deepEqual(told("1. a\n2. b\n3. c\n   - d\n   - e"), ["1 a", "3 c"]);
    assert.deepEqual(told("1. a\n2. b\n3. c\n4. d\n5. a"), ["2 b", "4 d"]);
    assert.deepEqual(told("1. a\n   - b\n   - c\n2. a"), []);
  });

  it("say in each language that a told place has a full stop, and that numbers of blank strips are no places", () => {
    const stops = /full stop|con punto|suivi d’un point|mit Punkt|com ponto/;
    const names = /names, not places|nombres, no lugares|noms, pas des places|Namen, keine Plätze|nomes, não lugares/;
    for (const lang of ["en", "es", "fr", "de", "pt"]) {
      const lines = (options: string): string =>
        strips.directions(dealtOf(workshopUnit("strips", "events", options), isStrips), lang)?.join(" ") ?? "";
      assert.match(lines("levels: [gentle]\nblanks: 2"), stops);
      assert.match(lines("levels: [gentle]\nblanks: 2"), names);
      assert.match(lines("levels: [gentle]"), stops);
      assert.doesNotMatch(lines("levels: [gentle]"), names);
      assert.doesNotMatch(lines("levels: [hard]\nblanks: 2"), stops);
    }
  });
});

describe("levels and versions of rebuild", () => {
  it("have so many sentences, others in each version, with numbers of packets that no other version has", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom(1, 2), (seed, packet) => {
        const options = `${both}\nversions: 2\ntake: 4\npacket: ${packet}\nseed: ${seed}`;
        const rebuild = dealtOf(workshopUnit("rebuild", "sentences", options), isRebuild);
        eachOnce(rebuild, 2);
        apart(
          byVersion(rebuild.deals, ({ sentences }) =>
            sentences.map((index) => rebuild.sentences[index]?.pair.left.answers[0].text ?? "?"),
          ),
        );
        apart(byVersion(rebuild.deals, ({ packets }) => packets.map(({ number }) => `${number}`)));
        for (const { level, sentences, packets, dealt, cards } of rebuild.deals) {
          assert.deepEqual(
            packets.flatMap((each) => each.sentences),
            sentences,
          );
          assert.equal(
            dealt.length,
            sentences.reduce((sum, index) => sum + (cards[index]?.length ?? 0), 0),
          );
          const stops = dealt.filter(({ text }) => /[.?]$/.test(text)).length;
          assert.equal(stops, level === "hard" ? 0 : sentences.length);
        }
      }),
      runs,
    );
  });
});

describe("levels and versions of a loop", () => {
  it("have one circle a version, of pairs that no other has, and hard ones cards that fit nowhere", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom("words", "forms"), (seed, about: ShapeName) => {
        const options = `${both}\nversions: 2\ntake: 5\nsize: mini\nseed: ${seed}`;
        const loop = dealtOf(workshopUnit("loop", about, options), isLoop);
        eachOnce(loop, 2);
        apart(byVersion(loop.deals, ({ cards }) => cards.map(({ prompt }) => prompt.text)));
        for (const deal of loop.deals) {
          assert.equal(deal.decoys.length, deal.level === "hard" ? 1 : 0);
          const all = deal.dealt.map((place) => cardAt(deal, place));
          assert.equal(new Set(all).size, 5 + deal.decoys.length);
          for (const card of all) {
            // Each card of the circle is answered once; a decoy is answered by none and answers none.
            const next = all.filter(
              (each) => card && each && loop.request.relation.fits(card.prompt.key, each.answer.key),
            );
            assert.equal(next.length, card && deal.decoys.includes(card) ? 0 : 1);
            assert.ok(next.every((each) => each && deal.cards.includes(each)));
          }
        }
      }),
      runs,
    );
  });

  it("have no decoy that answers a card or is answered by one, whatever words are left", () => {
    // Words that the circle leaves may be synonyms of its own, also by answers that are not printed.
    const lines = [
      "a roda = the wheel / the hoop",
      "o aro = the hoop",
      "o selim = the saddle",
      "o banco = the saddle / the seat",
      "o assento = the seat",
      "a bomba = the pump",
      "a chave = the spanner",
      "o raio = the spoke",
      "o pano = the cloth",
    ].map((pair) => `- ${pair}`);
    for (let seed = 0; seed < 60; seed++) {
      const options = `make: loop\ntake: 4\ndecoys: 2\nseed: ${seed}`;
      const loop = dealtOf(`## Bench\n\n${lines.join("\n")}\n\n\`\`\`activity\n${options}\n\`\`\`\n`, isLoop);
      for (const { cards, decoys } of loop.deals) {
        const all = [...cards, ...decoys];
        const follows = (a: (typeof all)[number], b: (typeof all)[number]): boolean =>
          loop.request.relation.fits(a.prompt.key, b.answer.key);
        for (const decoy of decoys) assert.ok(all.every((card) => !follows(card, decoy) && !follows(decoy, card)));
      }
    }
  });

  it("leave pairs out of the circle for decoys where the unit has no others", () => {
    const text = workshopUnit("loop", "words", both).replace(/## (?!Bench|Road)[\s\S]*?(?=\n## |\n```)/g, "");
    const loop = dealtOf(text, isLoop);
    for (const { level, cards, decoys } of loop.deals) {
      assert.equal(cards.length, 14);
      assert.equal(decoys.length, level === "hard" ? 3 : 0);
    }
  });
});

describe("levels and versions of a board", () => {
  it("have the same words to call in all, and gentle boards blank cells for the others", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom("grid: 4 x 4", "take: 9", ""), (seed, size) => {
        const options = `${both}\nversions: 2\n${size}\nseed: ${seed}`;
        const board = dealtOf(workshopUnit("board", "words", options), isBoard);
        eachOnce(board, 2);
        const never = board.words.length - board.targets;
        assert.ok(never > 0 && board.targets >= 9);
        for (const { level, cells } of board.deals) {
          const own = cells.filter((word) => word !== undefined);
          assert.deepEqual(
            own.filter((word) => word < board.targets).sort((a, b) => a - b),
            Array.from({ length: board.targets }, (_, i) => i),
          );
          assert.equal(own.length, level === "hard" ? board.words.length : board.targets);
        }
        const [gentle, , hard] = board.deals;
        gentle?.cells.forEach((word, i) => void (word !== undefined && assert.equal(hard?.cells[i], word)));
      }),
      runs,
    );
  });

  it("have codes of their own also where they do not differ", () => {
    const text = `## Bench\n\n- a = b\n- c = d\n- e = f\n- g = h\n\n\`\`\`activity\nmake: board\n${both}\n\`\`\`\n`;
    const board = dealtOf(text, isBoard);
    assert.ok(board.sameLevels);
    eachOnce(board, 1);
  });

  it("keep each set's own board apart, and print it for each class that writes on it", () => {
    const front = "classes: [9, 7]\n";
    const board = dealtOf(workshopUnit("board", "words", `${both}\nboards: different\nblanks: 2`, front), isBoard);
    assert.deepEqual(
      board.deals.map(({ level, version, copies }) => `${level} ${version} ${copies}`),
      ["gentle 1 2", "gentle 2 2", "hard 3 2", "hard 4 1"],
    );
    assert.equal(new Set(board.deals.map(({ code }) => code)).size, 4);
    // 7 + 7 + 9 + 10 + 10 + 5 boards of three: each class has its own number, and no more.
    const six = "classes: [21, 23, 27, 30, 31, 16]\n";
    const many = dealtOf(workshopUnit("board", "words", "boards: different\nplayers: 3\nblanks: 1", six), isBoard);
    assert.deepEqual(
      many.deals.map(({ copies }) => copies),
      [6, 6, 6, 6, 6, 5, 5, 3, 3, 2],
    );
    const same = dealtOf(workshopUnit("board", "words", "blanks: 2", front), isBoard);
    assert.equal(same.deals[0]?.copies, 7);
    const wiped = dealtOf(workshopUnit("board", "words", "blanks: 2\nreuse: sleeve", front), isBoard);
    assert.equal(wiped.deals[0]?.copies, 4);
  });
});

describe("levels and versions of calls", () => {
  const itemsOf = (calls: DealtCalls, deal: CallsDeal): string[] => calledIn(calls, deal.order).map(({ text }) => text);

  it("are fair, each of its own statements, with as many false ones, half of which are twins at hard", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const front = "classes: [20, 22]\n";
        const options = `${both}\ntake: 8\nreserve: 2\nseed: ${seed}`;
        const calls = dealtOf(workshopUnit("calls", "statements", options, front), isCalls);
        eachOnce(calls, 2);
        const items = calls.deals.map((deal) => new Set(calledIn(calls, deal.order).map(({ item }) => item)));
        for (const [i, deal] of calls.deals.entries()) {
          const claims = calledIn(calls, deal.order);
          assert.deepEqual(sorted(itemsOf(calls, deal)), sorted((calls.hands[i] ?? []).map(({ text }) => text)));
          assert.equal(claims.length, 8);
          assert.equal(trueShare(claims), 0.5);
          assert.equal(claims.filter(({ twin }) => twin).length, deal.level === "hard" ? 2 : 0);
          const kept = calledIn(calls, deal.reserve).map(({ item }) => item);
          assert.equal(kept.length, 2);
          assert.ok(kept.every((item) => !items.some((called) => called.has(item))));
        }
        const [first, second] = items;
        assert.ok(
          [...(first ?? [])].every((item) => !second?.has(item)),
          "hours share statements",
        );
        // What a hard list has besides those of the gentle one of its hour are true statements in place of twins'.
        for (const [gentle, hard] of [
          [items[0], items[2]],
          [items[1], items[3]],
        ]) {
          const further = [...(hard ?? [])].filter((item) => !gentle?.has(item));
          assert.equal(further.length, 2);
          assert.ok(further.every(({ truth }) => truth));
        }
      }),
      runs,
    );
  });

  it("stay fair with as many twins as are asked for, and with none", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom("twins: 3", "twins: none", "twins: auto", ""), (seed, twins) => {
        const calls = dealtOf(workshopUnit("calls", "statements", `take: 8\n${twins}\nseed: ${seed}`), isCalls);
        for (const hand of calls.hands) {
          assert.equal(hand.length, 8);
          assert.ok(trueShare(hand) >= fineShare.least && trueShare(hand) <= fineShare.most, `${trueShare(hand)}`);
          assert.equal(hand.filter(({ twin }) => twin).length, twins === "twins: 3" ? 3 : 0);
        }
      }),
      runs,
    );
  });
});

describe("levels and versions of sort", () => {
  const cardsOf = (sort: DealtSort, { order }: SortDeal) => order.flatMap((index) => sort.cards[index] ?? []);

  it("by truth have so many cards of other pairs in each version, half of them false at both levels", () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom("words", "forms"), (seed, about: ShapeName) => {
        const take = about === "words" ? 8 : 6;
        const sort = dealtOf(workshopUnit("sort", about, `${both}\nversions: 2\ntake: ${take}\nseed: ${seed}`), isSort);
        eachOnce(sort, 2);
        apart(byVersion(sort.deals, (deal) => cardsOf(sort, deal).map(({ text }) => text.split(" = ")[0] ?? "")));
        for (const deal of sort.deals) {
          const cards = cardsOf(sort, deal);
          assert.equal(cards.length, take);
          const wrong = cards.filter(({ piles }) => piles[0] === 1);
          assert.equal(wrong.length, take / 2);
          const shown = (card: (typeof cards)[number]): string => card.text.split(" = ")[1] ?? "";
          const right = new Set(cards.filter(({ piles }) => piles[0] === 0).map(shown));
          // Gentle: the wrong answer is seen on its own card as well.
          if (deal.level === "gentle") assert.ok(wrong.every((card) => right.has(shown(card))));
          // Hard: exchanged among the false ones, which forms of different verbs cannot be.
          else if (about === "words") assert.ok(wrong.filter((card) => right.has(shown(card))).length <= 1);
        }
      }),
      runs,
    );
  });

  it("of statements have as many false ones at both levels, half of them twins at hard", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const sort = dealtOf(
          workshopUnit("sort", "statements", `${both}\nversions: 2\ntake: 8\nseed: ${seed}`),
          isSort,
        );
        eachOnce(sort, 2);
        for (const deal of sort.deals) {
          const cards = cardsOf(sort, deal);
          assert.equal(cards.filter(({ piles }) => piles[0] === 1).length, 4);
          assert.equal(cards.filter(({ twin }) => twin).length, deal.level === "hard" ? 2 : 0);
          for (const { twin, correction } of cards) if (twin) assert.ok(correction);
        }
      }),
      runs,
    );
  });

  it("under headings have others of them in each version, and gentle header cards an example that is not dealt", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const sort = dealtOf(workshopUnit("sort", "piles", `${both}\nversions: 2\ntake: 6\nseed: ${seed}`), isSort);
        eachOnce(sort, 2);
        const shown = (deal: SortDeal): string[] => [
          ...cardsOf(sort, deal).map(({ text }) => text),
          ...deal.examples.flatMap((card) => sort.cards[card ?? -1]?.text ?? []),
        ];
        apart(byVersion(sort.deals, shown));
        for (const deal of sort.deals) {
          assert.equal(new Set(shown(deal)).size, 6);
          assert.equal(deal.order.length, deal.level === "hard" ? 6 : 4);
          const piles = deal.examples.map((card) => sort.cards[card ?? -1]?.piles);
          assert.deepEqual(piles, deal.level === "hard" ? [] : [[0], [1]]);
        }
      }),
      runs,
    );
  });
});

describe("a deal without levels", () => {
  const cases: readonly (readonly [KindName, ShapeName, string, "gentle" | "hard"])[] = [
    ["strips", "events", "", "hard"],
    ["rebuild", "sentences", "", "gentle"],
    ["loop", "words", "", "gentle"],
    ["board", "words", "grid: 4 x 4\ndistractors: 4", "hard"],
    ["board", "words", "grid: 4 x 4", "gentle"],
    ["calls", "statements", "", "gentle"],
    ["sort", "statements", "", "gentle"],
    ["sort", "words", "", "hard"],
    ["sort", "piles", "", "hard"],
  ];

  for (const [make, about, options, level] of cases)
    it(`is what the level is that its options amount to: ${make} of ${about} ${options.replace("\n", ", ")}`, () => {
      const isAny = (_: Dealt<Deal>): _ is Dealt<Deal> => true;
      const plain = dealtOf(workshopUnit(make, about, options), isAny);
      const named = dealtOf(workshopUnit(make, about, `${options}\nlevels: [${level}]`), isAny);
      assert.deepEqual(
        plain.deals.map((deal) => [deal.level, deal.code]),
        named.deals.map((deal) => [level, deal.code]),
      );
    });
});

describe("findings about some deals", () => {
  const codes = async (text: string): Promise<string[]> => (await readUnitText(text)).findings.map(({ code }) => code);

  it("speak of cards and events that lie on one table, not of those of all versions and levels together", async () => {
    const pairs = Array.from({ length: 10 }, (_, i) => `- word${i} = Wort${i}`).join("\n");
    // 7 of 10 false, with other wrong partners at each level: of all cards together a fifth is true, of each deal three tenths.
    const sort = `## Words\n\n${pairs}\n\n\`\`\`activity\nmake: sort\n${both}\nmispair: 7\n\`\`\`\n`;
    assert.deepEqual(await codes(sort), []);
    assert.deepEqual(await codes(sort.replace("mispair: 7", "mispair: 8")), ["unbalanced-piles"]);
    const story = (take: string): string =>
      `## Story\n\n1. a\n2. b\n3. c\n4. d\n5. e\n6. a\n\n\`\`\`activity\nmake: strips\n${take}\nversions: 2\n\`\`\`\n`;
    assert.deepEqual(await codes(story("")), ["repeated-event"]);
    const found = await Promise.all([1, 2, 3, 4, 5, 6].map((seed) => codes(story(`take: 3\nseed: ${seed}`))));
    assert.ok(found.some((each) => each.length === 0) && found.some((each) => each.length === 1));
  });
});
