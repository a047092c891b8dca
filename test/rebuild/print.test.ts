import assert from "node:assert/strict";
import { type Printed, printedAs } from "../support/printed";
import { applyEdits, readUnitText, testWorkshop } from "../support/units";
import { bare, cardsOn, makes, sentencesIn } from "./reader";
import { ordering, sentenceUnit } from "./unit";

/* From the text to paper and back: what pdf.js reads from the PDFs against the unit as a teacher reads it. */

const printed = (text: string): Promise<Printed> => printedAs("rebuild", text);

describe("rebuild from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    for (const packet of [1, 3]) {
      it(`${paper}, ${packet} a packet: cut cards make the unit's sentences, and lie in no order that does`, async () => {
        const options = `packet: ${packet}\nlevels: [gentle, hard]\nblanks: 2`;
        const text = sentenceUnit(ordering, options, `teaches: pt\npaper: ${paper}\nclasses: [4]\n`);
        const { card, paper: papers } = await printed(text);
        const sentences = sentencesIn(text);
        assert.equal(card.length, 2);
        for (const [level, page] of card.entries()) {
          const all = cardsOn(page);
          assert.equal(all.filter((each) => each.text === "").length, 2, "blank cards");
          const groups = new Map<string, string[]>();
          for (const each of all) if (each.text) groups.set(each.head, [...(groups.get(each.head) ?? []), each.text]);
          const heads = sentences.map((_, i) =>
            packet === 1 ? `${i + 1}` : `${Math.floor(i / packet) + 1} ${"ABC".charAt(i % packet)}`,
          );
          assert.deepEqual([...groups.keys()].sort(), [...heads].sort());
          sentences.forEach((sentence, i) => {
            const parts = groups.get(heads[i] ?? "") ?? [];
            assert.ok(makes(parts.map(bare), sentence), `${parts.join(" | ")}: ${sentence}`);
            assert.notEqual(parts.map(bare).join(" "), sentence);
          });
          const words = all.map((each) => each.text).join(" ");
          assert.equal(/[.?]/.test(words), level === 0, "stops");
          assert.ok(!/\bQueria\b/.test(words));
          assert.equal(/\bQuanto\b/.test(words), level === 0, "capitals");
          assert.ok(/\bInês\b/.test(words));
          // The key is that of this deal and tells every sentence in its packet.
          const key = papers[level]?.texts ?? [];
          const code = all[0]?.mark.split("-")[0] ?? "?";
          assert.ok(key.some((each) => each.text.includes(code)));
          const told = bare(key.map((each) => each.text).join(" "));
          for (const sentence of sentences) assert.ok(told.includes(sentence), sentence);
          assert.ok(told.includes("por favor · queria · um disco"));
          assert.ok(told.includes("how much is the toast"));
        }
      });
    }
  }

  it("every piece stands where it says, with its words and mark, all cards of one height and words of one size", async () => {
    const text = sentenceUnit(ordering, "packet: 2\ncopies: 3", "teaches: pt\n");
    const { card, pieces } = await printed(text);
    const heights = new Set<string>();
    assert.equal(pieces.pieces.length, 3 * 37);
    for (const piece of pieces.pieces) {
      const [at] = piece.at;
      const page = card[(at?.page ?? 0) - 1];
      assert.ok(at && page);
      const found = cardsOn(page).find(({ x, y }) => Math.abs(x - at.x) < 0.05 && Math.abs(y - at.y) < 0.05);
      assert.ok(found, piece.mark);
      assert.ok(Math.abs(found.w - at.w) < 0.05 && Math.abs(found.h - at.h) < 0.05);
      assert.equal(found.mark, piece.mark);
      assert.equal(found.text, piece.faces[0]?.text);
      heights.add(found.h.toFixed(1));
      const { start, end } = piece.faces[0]?.range ?? { start: 0, end: 0 };
      assert.equal(bare(text.slice(start, end)), bare(found.text));
      // The place that the pieces file gives is a place of that word in the sentence.
      const { packet, sentence, places } = JSON.parse(JSON.stringify(piece.solution));
      assert.equal(found.head, `${packet} ${sentence}`);
      const index = (packet - 1) * 2 + "AB".indexOf(sentence);
      const parts =
        ordering
          .filter((line) => line.startsWith("- "))
          [index]?.slice(2)
          .split(" = ")[0] ?? "";
      const cut = parts.includes("|") ? parts.split(/ ?\| ?/) : parts.split(" ");
      // The first sentence has two accepted orders; in the others a card stands where its text does.
      const free: Record<string, number[]> = { queria: [0, 1], "um disco": [1, 2], "por favor": [0, 2] };
      const own = cut.flatMap((part, i) => (part === found.text ? [i] : []));
      assert.deepEqual(places, index === 0 ? free[found.text] : own);
    }
    assert.equal(heights.size, 1);
    const sizes = new Set(
      card.flatMap(({ texts }) => texts.filter(({ size }) => size > 9).map(({ size }) => size.toFixed(2))),
    );
    assert.equal(sizes.size, 1);
  });

  it("keeps words clear of cuts and of the small print", async () => {
    const { card } = await printed(sentenceUnit(ordering, "", "teaches: pt\n"));
    for (const page of card) {
      for (const each of cardsOn(page)) {
        const words = page.texts.filter(
          ({ size, middle: [x, y] }) =>
            size > 9 && x > each.x && x < each.x + each.w && y > each.y && y < each.y + each.h,
        );
        for (const word of words) {
          const em = (word.size * 25.4) / 72;
          const half = Math.abs(word.middle[0] - word.x);
          assert.ok(half + 2.5 < each.w / 2, `${word.text} is close to a cut`);
          assert.ok(word.y - 0.76 * em > each.y + 3.4 && word.y + 0.24 * em < each.y + each.h - 2, word.text);
        }
      }
    }
  });

  it("prints a slip for every group of every class, with a row for each sentence", async () => {
    const { paper } = await printed(sentenceUnit(ordering, "slip: sentences", "teaches: pt\nclasses: [5, 8]\n"));
    const sixes = paper.slice(1).flatMap(({ texts }) => texts.filter(({ text }) => text === "6"));
    assert.equal(sixes.length, 6);
  });

  it("a sentence in Japanese without bars is a finding whose fix proposes them", async () => {
    const text = sentenceUnit(["- 私は学生です。 = I am a student."], "", "teaches: ja\n");
    const finding = (await readUnitText(text)).findings.find(({ code }) => code === "needs-bars");
    const [fix] = finding?.fixes ?? [];
    assert.ok(fix);
    const after = await readUnitText(applyEdits(text, fix.edits));
    assert.ok(!after.findings.some(({ code }) => code === "needs-bars"));
    assert.equal(after.activities[0]?.summary, "1 sentence in 1 packet");
  });

  it("Hebrew: the packet's number stands on the right, where reading begins", async () => {
    const text = sentenceUnit(["- אני רוצה קפה. = I'd like coffee."], "", "teaches: he\n");
    const reading = await readUnitText(text);
    const [activity] = reading.activities;
    const [deal] = activity?.deals ?? [];
    assert.ok(activity && deal);
    const [sheet] = (await testWorkshop()).view(reading, activity, deal, "dealt");
    const heads = sheet?.items.filter((item) => item.type === "text" && item.runs[0]?.text === "1") ?? [];
    assert.equal(heads.length, 3);
    assert.ok(heads.every((item) => item.type === "text" && item.anchor === "end"));
  });
});
