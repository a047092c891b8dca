import assert from "node:assert/strict";
import type { PrintedPage } from "../support/print";
import { type Printed, printedAs } from "../support/printed";
import { rectanglesOn, textsIn } from "../support/rectangles";
import { type Call, callsOn, cellsOn } from "./reader";
import { boardUnit, counter, meanings } from "./unit";

/* From the text to paper and back: what pdf.js reads from the PDFs against the unit as a teacher reads it. */

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
          const own = pieces.pieces.filter(({ at }) => at[0]?.page === i + 1);
          assert.equal(own.length, 16);
          for (const [cell, { faces, at, solution }] of own.entries()) {
            assert.equal(faces[0]?.text, upright[cell]);
            const box = rectanglesOn(page, 0.5)[cell];
            for (const side of ["x", "y", "w", "h"] as const)
              assert.ok(Math.abs((at[0]?.[side] ?? 0) - (box?.[side] ?? 0)) < 0.02);
            const calls = hours.map((list) => list.find(({ word }) => word === upright[cell])?.number);
            assert.deepEqual(solution, calls[0] === undefined ? [] : calls);
          }
        }
      });
    }
  }

  it("has the code of its boards on every list and key, and once on each board", async () => {
    const { card, paper, pieces } = await printed(
      boardUnit(counter, "boards: different", "teaches: pt\nclasses: [6]\n"),
    );
    const codes = pieces.deals.map(({ code }) => code);
    assert.equal(codes.length, 3);
    card.forEach((page, i) => {
      const found = page.texts.filter(({ text }) => text.includes(codes[i] ?? "?"));
      assert.equal(found.length, 1);
    });
    codes.forEach((code, i) => {
      assert.ok(paper[i]?.texts.some(({ text }) => text.includes(code)));
    });
    const list = paper.find(({ texts }) => texts.some(({ text }) => text.startsWith("Caller’s list")));
    const all = list?.texts.map(({ text }) => text).join(" ") ?? "";
    for (const code of codes) assert.ok(all.includes(code));
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
