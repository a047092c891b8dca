import assert from "node:assert/strict";
import type { Surroundings } from "../../src/make/workshop";
import { story } from "../calls/unit";
import { png } from "../render/sheets";
import type { PrintedPage } from "../support/print";
import { type Printed, printedAs } from "../support/printed";
import { readUnitText, testWorkshop } from "../support/units";
import { cardIn, keyOf } from "./reader";
import { articles, crockery, meals, sortUnit } from "./unit";

/* From the text to paper and back: what pdf.js reads from cards and keys against the unit. */

const printed = (text: string, around: Partial<Surroundings> = {}): Promise<Printed> => printedAs("sort", text, around);

type Point = readonly [number, number];
interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** The circles that rings of 180 straight pieces each draw. */
function circlesOn({ lines }: PrintedPage): Circle[] {
  const pieces = lines.filter(({ weight }) => weight === 1);
  return Array.from({ length: pieces.length / 180 }, (_, i) => {
    const ring = pieces.slice(i * 180, (i + 1) * 180);
    const x = ring.reduce((sum, { x1 }) => sum + x1, 0) / 180;
    const y = ring.reduce((sum, { y1 }) => sum + y1, 0) / 180;
    return { x, y, r: Math.hypot((ring[0]?.x1 ?? 0) - x, (ring[0]?.y1 ?? 0) - y) };
  });
}

/** Whether a point lies in a circle, so many millimetres clear of its ring. */
function isIn({ x, y, r }: Circle, [px, py]: Point, clear = 0): boolean {
  return Math.hypot(px - x, py - y) < r - clear;
}

/** Whether a card can lie in some circles and out of others, upright or turned by 60°: tried every 1.5 mm, by its edges. */
function hasRoom({ w, h }: { w: number; h: number }, inside: readonly Circle[], outside: readonly Circle[]): boolean {
  const [first] = inside;
  if (!first) return false;
  const upright = Array.from({ length: 21 }, (_, i) => i / 20).flatMap((t): Point[] => [
    [t * w, 0],
    [t * w, h],
    [0, t * h],
    [w, t * h],
  ]);
  const edges = [0, Math.PI / 3, -Math.PI / 3].map((angle) =>
    upright.map(([x, y]): Point => {
      const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
      return [(x - w / 2) * cos - (y - h / 2) * sin, (x - w / 2) * sin + (y - h / 2) * cos];
    }),
  );
  for (let x = first.x - first.r; x < first.x + first.r; x += 1.5)
    for (let y = first.y - first.r; y < first.y + first.r; y += 1.5)
      if (
        edges.some((edge) =>
          edge.every(([dx, dy]) => {
            const point: Point = [x + dx, y + dy];
            return inside.every((circle) => isIn(circle, point)) && !outside.some((circle) => isIn(circle, point));
          }),
        )
      )
        return true;
  return false;
}

describe("sort from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    it(`${paper}: every card stands where it says, and under its piles in the key with its code`, async () => {
      const front = `teaches: pt\npaper: ${paper}\nclasses: [4]\n`;
      const {
        card,
        paper: papers,
        pieces,
      } = await printed(sortUnit(meals, "overlap: true\nheaders: cards\nversions: 2", front));
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

  it("has cards that find room in each place of the circles that some of them need, and names inside of the rings", async () => {
    const all = [
      ...["### a", "- um", "- dois", "- três", "- sete"],
      ...["### b", "- dois", "- três", "- quatro", "- seis"],
      ...["### c", "- três", "- quatro", "- cinco", "- um"],
    ];
    for (const [lines, options, front] of [
      [articles, "overlap: true\nmats: circles", ""],
      [all, "overlap: true", ""],
      [all, "overlap: true", "paper: Letter\n"],
      [all, "overlap: true", "margin: 20\n"],
    ] as const) {
      const { paper, pieces } = await printed(sortUnit(lines, options, `teaches: pt\nclasses: [2]\n${front}`));
      const [mat] = paper.filter(({ width, height }) => width > height);
      assert.ok(mat);
      const circles = circlesOn(mat);
      const names = mat.texts.filter(({ size }) => size > 12);
      assert.equal(names.length, circles.length);
      for (const { text, x, middle } of names) {
        const ends = [x, 2 * middle[0] - x].map((end): Point => [end, middle[1]]);
        const around = circles.filter((circle) => ends.some((end) => isIn(circle, end)));
        assert.equal(around.length, 1, `${text} stands in one circle`);
        assert.ok(around[0] && ends.every((end) => isIn(around[0] as Circle, end, 1)), text);
      }
      const [place] = pieces.pieces[0]?.at ?? [];
      assert.ok(place);
      const needed = lines === all ? [[0], [0, 1], [1, 2], [0, 2], [0, 1, 2]] : [[0], [0, 1]];
      for (const piles of needed) {
        const inside = circles.filter((_, i) => piles.includes(i));
        const outside = circles.filter((_, i) => !piles.includes(i));
        assert.ok(hasRoom(place, inside, outside), `${place.w} × ${place.h} in ${piles.join()} ${front}`);
      }
      // Larger cards would have none.
      const larger = { w: place.w * 1.3, h: place.h * 1.3 };
      if (lines === all && front === "") assert.ok(!hasRoom(larger, circles.slice(0, 2), circles.slice(2)));
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
