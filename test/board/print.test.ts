import assert from "node:assert/strict";
import { printedOn } from "../../src/make/reprint";
import { type PrintedPage, readPrint } from "../support/print";
import { type Printed, printedAs } from "../support/printed";
import { rectanglesOn, textsIn } from "../support/rectangles";
import { testWorkshop } from "../support/units";
import { type Call, callsOn, cellsOn } from "./reader";
import { boardUnit, counter, meanings } from "./unit";

/* From the text to paper and back: what pdf.js reads from the PDFs against the unit as a teacher reads it. */

const bench = [
  "a roda = the wheel",
  "a câmara de ar remendada = the patched inner tube",
  "o selim = the saddle",
  "o pedal = the pedal",
  "a corrente = the chain",
  "o travão = the brake",
  "a buzina = the horn",
  "a campainha = the bell",
  "o quadro = the frame",
  "o raio = the spoke",
  "a válvula = the valve",
  "a bomba = the pump",
  "o guiador = the handlebar",
];

const printed = (text: string): Promise<Printed> => printedAs("board", text);

const lists = (pages: readonly PrintedPage[]): Call[][] =>
  pages.filter(({ texts }) => texts.some(({ text }) => text.startsWith("Caller’s list"))).map(callsOn);

describe("a board from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    for (const facing of ["side", "opposite"]) {
      it(`${paper}, ${facing}: each caller's list calls every target on the board once, and the pieces file says when`, async () => {
        const text = boardUnit(
          counter,
          `grid: 4 x 4\ndistractors: 3\nfacing: ${facing}\nversions: 2`,
          `teaches: pt\npaper: ${paper}\nclasses: [4, 3]\n`,
        );
        const { card, paper: papers, pieces } = await printed(text);
        assert.equal(card.length, 2);
        const hours = lists(papers);
        assert.equal(hours.length, 2);
        for (const [i, page] of card.entries()) {
          const upright = cellsOn(page, 0);
          assert.equal(upright.length, 16);
          assert.deepEqual(cellsOn(page, 2), facing === "opposite" ? upright : upright.map(() => ""));
          assert.equal(new Set(upright).size, 16);
          for (const calls of hours) {
            assert.deepEqual(
              calls.map(({ number }) => number),
              Array.from({ length: 13 }, (_, n) => n + 1),
            );
            assert.equal(new Set(calls.map(({ word }) => word)).size, 13);
            for (const { say, word } of calls) {
              assert.equal(meanings.get(word), say);
              // What is said means one word on the board only.
              assert.deepEqual(
                upright.filter((each) => meanings.get(each) === say),
                [word],
              );
            }
          }
          const [own, ...others] = pieces.pieces.filter(({ at }) => at[0]?.page === i + 1);
          assert.ok(own && others.length === 0);
          assert.deepEqual(
            own.faces.map((face) => face.text),
            upright,
          );
          assert.deepEqual(
            own.solution,
            hours.map((list) => list.map(({ word }) => word)),
          );
          // The board is the cells and, under the last one, its mark.
          const [at] = own.at;
          const [first, last] = [rectanglesOn(page, 0.5)[0], rectanglesOn(page, 0.5)[15]];
          assert.ok(at && first && last);
          assert.ok(Math.abs(at.x - first.x) < 0.02 && Math.abs(at.y - first.y) < 0.02);
          assert.ok(Math.abs(at.x + at.w - last.x - last.w) < 0.02);
          const foot = { ...at, y: last.y + last.h, h: at.y + at.h - last.y - last.h };
          assert.deepEqual(
            textsIn(page, foot).map(({ text }) => text),
            [own.mark],
          );
        }
      });
    }
  }

  it("has the code of its boards on every list and key, in the title line of each board and in its mark", async () => {
    const { card, paper, pieces } = await printed(
      boardUnit(counter, "boards: different", "teaches: pt\nclasses: [6]\n"),
    );
    const codes = pieces.deals.map(({ code }) => code);
    assert.equal(codes.length, 3);
    card.forEach((page, i) => {
      const found = page.texts.filter(({ text }) => text.includes(codes[i] ?? "?"));
      assert.deepEqual(
        found.map(({ text }) => text.endsWith(`${codes[i]}-AA-AA`)),
        [false, true],
      );
    });
    codes.forEach((code, i) => {
      assert.ok(paper[i]?.texts.some(({ text }) => text.includes(code)));
    });
    const list = paper.find(({ texts }) => texts.some(({ text }) => text.startsWith("Caller’s list")));
    const all = list?.texts.map(({ text }) => text).join(" ") ?? "";
    for (const code of codes) assert.ok(all.includes(code));
  });

  for (const options of ["copies: 3", "copies: by copier", "facing: opposite\ncopies: 2", "boards: different"])
    it(`${options.replace("\n", ", ")}: a lost board is found by the mark on it and printed again, whole`, async () => {
      const workshop = await testWorkshop();
      const { card, pieces } = await printed(
        boardUnit(bench, `grid: 3 x 4\n${options}`, "teaches: pt\nclasses: [6]\n"),
      );
      const json = JSON.stringify(pieces);
      assert.equal(card.length, pieces.pieces.length);
      const marks = card.map((page) => page.texts.filter(({ size }) => size < 5.5).map(({ text }) => text));
      assert.equal(new Set(marks.flat()).size, card.length);
      for (const [i, page] of card.entries()) {
        const [mark = "", ...others] = marks[i] ?? [];
        assert.deepEqual(others, []);
        const found = workshop.find([json], mark);
        assert.equal(found.length, 1);
        // Words that are set in two lines are one word.
        assert.deepEqual(found.map(printedOn), [pieces.pieces[i]?.faces.map(({ text }) => text).join(" · ")]);
        const [again, ...more] = await readPrint(await workshop.reprint(found, new Map()));
        assert.ok(again && more.length === 0);
        assert.deepEqual([again.width, again.height], [page.width, page.height]);
        const body = (each: PrintedPage): unknown =>
          textsIn(each, { x: 0, y: 14.5, w: each.width, h: each.height - 14.5 - 17 }).map(
            ({ text, size, turn, middle: [x, y] }) => [text, size.toFixed(2), turn, x.toFixed(1), y.toFixed(1)],
          );
        assert.deepEqual(body(again), body(page));
        assert.deepEqual(again.lines.length, page.lines.length);
        assert.ok(JSON.stringify(body(again)).includes(mark));
        assert.deepEqual(
          rectanglesOn(again, 0.5).map(({ x, y, w, h }) => [x, y, w, h].map((side) => side.toFixed(1))),
          rectanglesOn(page, 0.5).map(({ x, y, w, h }) => [x, y, w, h].map((side) => side.toFixed(1))),
        );
      }
    });

  it("prints words of one size, at least 3.49 mm high, on the side of the paper where they are larger", async () => {
    const { card } = await printed(boardUnit(counter, "facing: opposite", "teaches: pt\nclasses: [2]\n"));
    for (const page of card) {
      assert.ok(page.width > page.height);
      const sizes = rectanglesOn(page, 0.5).flatMap((cell) => textsIn(page, cell).map(({ size }) => size));
      assert.equal(new Set(sizes.map((size) => size.toFixed(2))).size, 1);
      // Noto Sans: small letters are 0.536 em high.
      assert.ok(((sizes[0] ?? 0) / 72) * 25.4 * 0.536 >= 3.49);
    }
  });

  it("lies on the side of the paper where fewer words are broken, where they are as large on both", async () => {
    const pairs = ["el remo = a", "la vela = b", "el ancla = c", "la red = d", "el faro = e", "el muelle = f"];
    const { card } = await printed(boardUnit(pairs, "grid: 2 x 3", "teaches: es\nclasses: [2]\n"));
    const words = pairs.map((pair) => pair.split(" = ")[0]);
    assert.ok(card.length > 0);
    for (const page of card) {
      assert.ok(page.width > page.height);
      const cells = rectanglesOn(page, 0.5).map((cell) => textsIn(page, cell).map(({ text }) => text));
      assert.ok(words.every((word) => cells.some((lines) => lines.includes(word ?? ""))));
    }
  });

  it("prints score slips with a row for each call, a column for each player and one for the teacher", async () => {
    const { paper } = await printed(boardUnit(counter, "grid: 3 x 4", "teaches: pt\nclasses: [4, 7]\n"));
    const slips = paper.flatMap(({ texts }) => texts).filter(({ text }) => text === "Total").length;
    // 2 + 3 boards.
    assert.equal(slips, 5);
    const page = paper.at(-1);
    assert.ok(page);
    const heads = page.texts
      .filter(({ text }) => ["A", "B", "C", "D", "Teacher"].includes(text))
      .map(({ text }) => text);
    assert.deepEqual(new Set(heads), new Set(["A", "B", "C", "Teacher"]));
    assert.equal(
      page.texts.filter(({ text }) => text === "12").length,
      page.texts.filter(({ text }) => text === "Total").length,
    );
  });

  it("prints as many score slips on Letter as on A4", async () => {
    for (const paper of ["A4", "Letter"]) {
      const { paper: papers } = await printed(
        boardUnit(counter, "grid: 3 x 4", `teaches: pt\npaper: ${paper}\nclasses: [21, 23]\n`),
      );
      const sheets = papers.filter(({ texts }) => texts.some(({ text }) => text === "Total"));
      assert.equal(sheets.length, 4, paper);
    }
  });
});
