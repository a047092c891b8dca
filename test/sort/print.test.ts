import assert from "node:assert/strict";
import type { Surroundings } from "../../src/make/workshop";
import { story } from "../calls/unit";
import { png } from "../render/sheets";
import { type Printed, printedAs } from "../support/printed";
import { readUnitText, testWorkshop } from "../support/units";
import { cardIn, keyOf } from "./reader";
import { articles, crockery, meals, sortUnit } from "./unit";

/* From the text to paper and back: what pdf.js reads from cards and keys against the unit. */

const printed = (text: string, around: Partial<Surroundings> = {}): Promise<Printed> => printedAs("sort", text, around);

describe("sort from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    it(`${paper}: every card stands where it says, and under its piles in the key with its code`, async () => {
      const front = `teaches: pt\npaper: ${paper}\nclasses: [4]\n`;
      const { card, paper: papers, pieces } = await printed(sortUnit(meals, "overlap: true\nversions: 2", front));
      assert.equal(pieces.pieces.length, 2 * (3 + 10));
      const marks = new Set<string>();
      for (const piece of pieces.pieces) {
        const [at] = piece.at;
        const page = at && card[at.page - 1];
        assert.ok(at && page);
        const read = cardIn(page, at);
        assert.equal(read.text, piece.faces[0]?.text);
        assert.equal(read.mark, piece.mark);
        marks.add(read.mark);
        const piles = Array.isArray(piece.solution) ? piece.solution.map(String) : [];
        if (piles.length === 0) continue;
        const stands = Object.fromEntries(
          ["Breakfast", "Lunch", "Supper"].map((name, i, names) => {
            const from = meals.indexOf(`### ${name}`);
            const to = meals.indexOf(`### ${names[i + 1]}`);
            return [name, meals.slice(from, to < 0 ? undefined : to).includes(`- ${read.text}`)];
          }),
        );
        assert.deepEqual(
          piles,
          Object.keys(stands).filter((name) => stands[name]),
        );
        const [code = ""] = read.mark.split("-");
        const key = papers.find(
          ({ texts }) =>
            texts.some(({ text }) => text.startsWith("Key:")) &&
            texts.some(({ text }) => text.includes(`deal code ${code}`)),
        );
        assert.ok(key);
        const zone = keyOf(key).get(piles.join(" + "))?.join(" ") ?? "";
        assert.match(zone, new RegExp(`${read.mark.split("-").at(-1)} *${read.text}`));
      }
      assert.equal(marks.size, pieces.pieces.length);
    });
  }

  it("shows the writer's code on the card, a mark of their own on blank cards, and corrections in the key", async () => {
    const front = "teaches: pt\nclasses: [2]\n";
    const { card, paper, pieces } = await printed(sortUnit(story, "twins: 2\nblanks: 2", front));
    const cards = pieces.pieces.map((piece) => {
      const [at] = piece.at;
      const page = at && card[at.page - 1];
      assert.ok(at && page);
      return cardIn(page, at);
    });
    assert.deepEqual(
      cards.filter(({ label }) => label).map(({ text, label }) => [text, label]),
      [["O gato dorme na cadeira.", "K7"]],
    );
    const marks = card.flatMap(({ texts }) => texts.filter(({ size }) => size < 5.5).map(({ text }) => text));
    assert.deepEqual([...marks].sort(), pieces.pieces.map(({ mark }) => mark).sort());
    assert.deepEqual(
      cards.slice(-2).map(({ text }) => text),
      ["", ""],
    );
    const [key] = paper;
    assert.ok(key);
    const rows = key.texts.filter(({ text }) => text.startsWith("O pai come")).map(({ text }) => text);
    assert.deepEqual(rows, ["O pai come sopa.", "O pai come uma mochila."]);
  });

  it("prints true pairs as they are written and false ones as they are not", async () => {
    const text = sortUnit(crockery, "seed: 3", "teaches: pt\nclasses: [2]\n").replace(
      "a chávena = the cup / the mug",
      "a chávena = the cup",
    );
    const { card, pieces } = await printed(text);
    const written = new Set(crockery.map((line) => line.slice(2).split(" / ")[0]));
    let right = 0;
    for (const piece of pieces.pieces) {
      const [at] = piece.at;
      const page = at && card[at.page - 1];
      assert.ok(at && page);
      if (JSON.stringify(piece.solution) === "[]") continue;
      const read = cardIn(page, at);
      assert.equal(written.has(read.text), JSON.stringify(piece.solution) === '["Verdadeiro"]', read.text);
      if (written.has(read.text)) right++;
    }
    assert.equal(right, 4);
  });

  it("prints a mat for each set with the names in circles that overlap, within the margins", async () => {
    for (const [lines, count] of [
      [articles, 2],
      [meals, 3],
    ] as const) {
      const { paper } = await printed(sortUnit(lines, "overlap: true", "teaches: pt\nclasses: [6]\n"));
      const mats = paper.filter(({ width, height }) => width > height);
      assert.equal(mats.length, 3);
      for (const mat of mats) {
        const ring = mat.lines.filter(({ weight }) => weight === 1);
        assert.equal(ring.length, count * 180);
        for (const { x1, y1 } of ring) {
          assert.ok(x1 > 10 && x1 < mat.width - 10 && y1 > 10 && y1 < mat.height - 10);
        }
        const names = mat.texts.filter(({ size }) => size > 15).map(({ text }) => text);
        assert.equal(names.length, count);
      }
    }
  });

  it("prints pictures, bare in a pile or on a side of a pair, and says where one is missing", async () => {
    const lines = [
      "### o",
      "- ![a glass](img/glass.png)",
      "- ![a fork](img/fork.png) = o garfo",
      "### a",
      "- faca",
      "- colher",
    ];
    const pictures = new Map(
      ["img/glass.png", "img/fork.png"].map((path) => [
        path,
        png([
          [0, 128],
          [255, 60],
        ]),
      ]),
    );
    const { pieces } = await printed(sortUnit(lines, "", "teaches: pt\nclasses: [2]\n"), { pictures });
    const names = pieces.pieces.map(({ faces }) => faces[0]?.text);
    assert.ok(names.includes("a glass") && names.includes("a fork"));
    const drawn = pieces.deals[0]?.print.flatMap(({ items }) => items.filter(({ type }) => type === "picture")) ?? [];
    assert.equal(drawn.length, 2);
    const { findings } = await readUnitText(sortUnit(lines));
    assert.deepEqual(
      findings.map(({ code }) => code),
      ["missing-picture", "missing-picture"],
    );
    const needs = (await testWorkshop()).needs(sortUnit(lines));
    assert.deepEqual([...needs.pictures].sort(), ["img/fork.png", "img/glass.png"]);
  });
});
