import assert from "node:assert/strict";
import { upTo } from "../../src/base/seed";
import type { TextItem } from "../../src/page/sheet";
import { type Printed, printedAs } from "../support/printed";
import { rectanglesOn, textsIn } from "../support/rectangles";
import { testTypeface } from "../support/typeface";
import { readUnitText, testWorkshop, word } from "../support/units";
import { cardsOn, walk } from "./reader";
import { counter, loopUnit } from "./unit";

/* From the text to paper and back: what pdf.js reads from the PDFs against the unit as a teacher reads it. */

const printed = (text: string): Promise<Printed> => printedAs("loop", text);

const meanings = new Map(
  counter.map((pair) => pair.split(" = ")).map(([l = "", r = ""]) => [l, r.split(" / ")[0] ?? ""]),
);

const layouts = [
  { options: "", rule: 0.75, pages: 6 },
  { options: "size: mini", rule: 0.35, pages: 1 },
  { options: "size: mini\ncards: 5", rule: 0.35, pages: 3 },
];

describe("a loop from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    for (const { options, rule, pages } of layouts) {
      it(`${paper}, ${options.replace("\n", ", ") || "room"}: the circle closes from the print alone, as the key says`, async () => {
        const text = loopUnit(counter, options, `teaches: pt\npaper: ${paper}\nclasses: [3]\n`);
        const { card, paper: papers, pieces } = await printed(text);
        assert.equal(card.length, pages);
        const cards = card.flatMap((page) => cardsOn(page, rule));
        assert.equal(cards.length, 12);
        assert.deepEqual(cards.map(({ sign }) => sign).sort(), [..."ABCDEFGHKLMN"]);
        assert.equal(new Set(cards.flatMap(({ sizes }) => sizes.map((size) => size.toFixed(2)))).size, 1);
        const circle = walk(cards, "A", meanings);
        assert.equal(circle.length, 12);
        // The key's row of signs is the circle, from where it likes.
        const row = papers[0]?.texts.map((each) => each.text.trim()).find((each) => /^([A-Z] ){11}[A-Z]$/.test(each));
        assert.ok(row, "no order on the key");
        const key = row.split(" ");
        const from = key.indexOf("A");
        assert.deepEqual([...key.slice(from), ...key.slice(0, from)], circle);
        // Each piece stands where its entry says, and names the mark of the card that goes on.
        assert.equal(pieces.pieces.length, 12);
        for (const piece of pieces.pieces) {
          const [at] = piece.at;
          const page = card[(at?.page ?? 0) - 1];
          assert.ok(at && page);
          const texts = textsIn(page, at);
          for (const { text: words } of piece.faces)
            assert.ok(
              words.split(" ").every((word) => texts.some((each) => each.text.split(" ").includes(word))),
              words,
            );
          const found = cards.find(({ mark }) => mark === piece.mark);
          assert.deepEqual(
            piece.faces.map((face) => face.text),
            [found?.answer, found?.prompt],
          );
          const next = cards.find(({ mark }) => mark === piece.solution);
          assert.equal(next?.answer, meanings.get(found?.prompt ?? ""));
        }
      });
    }
  }

  it("prints signs to be read from six metres, one card a sheet", async () => {
    const { card } = await printed(loopUnit(counter, "cards: 1", "teaches: pt\nclasses: [3]\n"));
    assert.equal(card.length, 12);
    for (const page of card) {
      assert.ok(page.width > page.height);
      const sign = page.texts.reduce((a, b) => (b.size > a.size ? b : a));
      assert.match(sign.text, /^[A-Z]$/);
      // Noto Sans: small letters are 0.536 em high; 34.9 mm are 20′ at 6 m.
      assert.ok((sign.size / 72) * 25.4 * 0.536 > 34.9);
      assert.equal(rectanglesOn(page, 0.25).length, 0);
    }
  });

  it("prints a ring with all signs in order, clockwise", async () => {
    const { paper } = await printed(loopUnit(counter, "", "teaches: pt\nclasses: [3]\n"));
    const [key] = paper;
    assert.ok(key);
    const centre = key.texts.find(({ text, size }) => /^[A-Z478]{6}$/.test(text) && Math.abs(size - 10) < 0.1);
    assert.ok(centre, "no code in the ring");
    const [cx, cy] = centre.middle;
    const ring = key.texts
      .filter(({ text, size }) => /^[A-Z]$/.test(text) && Math.abs(size - 13) < 0.1)
      .map(({ text, middle: [x, y] }) => ({
        text,
        turn: (Math.atan2(x - cx, cy - (y - 1.6)) + 2 * Math.PI) % (2 * Math.PI),
      }))
      .sort((a, b) => a.turn - b.turn)
      .map(({ text }) => text);
    const row = key.texts.map((each) => each.text.trim()).find((each) => /^([A-Z] ){11}[A-Z]$/.test(each)) ?? "";
    const signs = row.split(" ");
    const from = ring.indexOf(signs[0] ?? "");
    assert.deepEqual([...ring.slice(from), ...ring.slice(0, from)], signs);
  });

  it("prints a plan to post by and slips that start at the plan's cards", async () => {
    const { paper } = await printed(loopUnit(counter, "", "teaches: pt\nclasses: [8]\n"));
    const plan = paper.find(({ texts }) => texts.some(({ text }) => text.startsWith("Round the room")));
    const slips = paper.at(-1);
    assert.ok(plan && slips);
    const row = (label: string): string[] => {
      const head = plan.texts.find(({ text, x }) => text === label && x < 30);
      assert.ok(head, label);
      return plan.texts
        .filter(({ y, x }) => Math.abs(y - head.y) < 0.3 && x > head.x + 5)
        .sort((a, b) => a.x - b.x)
        .map(({ text }) => text);
    };
    assert.deepEqual([...row("Card")].sort(), [..."ABCDEFGHKLMN"]);
    const starts = slips.texts.filter(({ text }) => /^[A-HK-N]$/.test(text)).map(({ text }) => text);
    assert.deepEqual(starts.sort(), row("Start").sort());
    assert.equal(starts.length, 4);
  });

  it("says on each slip which circle of the room it is for, and starts the hour in the first one of a level only", async () => {
    // They share words, which is told and is nothing that keeps them from being printed.
    const front = "teaches: pt\nclasses: [8]\nseverities: { shared-circles: off }\n";
    const pages = async (options: string): Promise<string[]> =>
      (await printed(loopUnit(counter, options, front))).paper.map(({ texts }) =>
        texts.map(({ text }) => text).join(" "),
      );
    const count = (all: readonly string[], text: string): number => all.join(" ").split(text).length - 1;
    const two = await pages("versions: 2");
    assert.equal(count(two, "Your circle: 1. Only cards with 1 behind the letter belong to it."), 4);
    assert.equal(count(two, "Your circle: 2. Only cards with 2 behind the letter belong to it."), 2);
    assert.equal(count(two, "Where groups start"), 1);
    assert.equal(count(two, "No group starts the hour here."), 1);
    const both = await pages("versions: 2\nlevels: [gentle, hard]\ntake: 6");
    for (const [circle, slips] of [
      [2, 1],
      [3, 2],
      [4, 1],
    ])
      assert.equal(count(both, `Your circle: ${circle}.`), slips);
    // Hard groups start in circle 3; circles 2 and 4 are for those who finish first.
    assert.equal(count(both, "Where groups start"), 2);
    assert.equal(count(both, "No group starts the hour here."), 2);
    assert.equal(count(await pages(""), "Your circle"), 0);
    assert.equal(count(await pages("versions: 2\nsize: mini\nslip: visits"), "Your circle"), 0);
  });

  it("prints as many slips on Letter as on A4, with rows to write in of 6.5 mm at least", async () => {
    for (const paper of ["A4", "Letter"]) {
      const { paper: papers } = await printed(
        loopUnit(counter, "", `teaches: pt\npaper: ${paper}\nclasses: [21, 23]\n`),
      );
      const sheets = papers.filter(({ texts }) => texts.some(({ text }) => text === "= 1"));
      // 10 + 11 groups, six slips a sheet.
      assert.equal(sheets.length, 4, paper);
      for (const { texts } of sheets) {
        const numbers = texts.filter(({ text }) => /^\d+$/.test(text)).sort((a, b) => a.x - b.x || a.y - b.y);
        const pitch = (numbers[5]?.y ?? 0) - (numbers[4]?.y ?? 0);
        assert.ok(pitch > 6.45, `${pitch}`);
      }
    }
  });

  it("keeps the ink of each sign above the words and inside its card, whatever letter it is", async () => {
    // 26 cards: more than there are letters.
    const many = upTo(26).map((i) => `${word(i)}a = ${word(i)}o`);
    const reading = await readUnitText(loopUnit(many, "", "teaches: pt\nclasses: [3]\n"));
    const [activity] = reading.activities;
    const [deal] = activity?.deals ?? [];
    assert.ok(activity && deal);
    const typeface = await testTypeface();
    const signs: string[] = [];
    for (const { items } of (await testWorkshop()).view(reading, activity, deal, "dealt")) {
      for (const area of items.filter((item) => item.type === "area")) {
        const here = items.filter(
          (item): item is TextItem =>
            item.type === "text" &&
            item.x > area.x &&
            item.x < area.x + area.w &&
            item.y > area.y &&
            item.y < area.y + area.h,
        );
        const [sign, ...words] = [...here].sort((a, b) => b.size - a.size);
        assert.ok(sign);
        const em = (sign.size * 25.4) / 72;
        const ink = typeface.ink(sign.runs);
        const above = Math.min(
          ...words
            .filter(({ size }) => size > 6)
            .map((each) => each.y - (typeface.ink(each.runs).top * each.size * 25.4) / 72),
        );
        const text = sign.runs.map((run) => run.text).join("");
        assert.ok(sign.y - ink.bottom * em < above - 2, `${text} reaches into the words`);
        assert.ok(sign.x + ink.left * em > area.x + 5 && sign.y - ink.top * em > area.y + 5, `${text} is near the cut`);
        signs.push(text);
      }
    }
    assert.equal(new Set(signs).size, 26);
  });
});
