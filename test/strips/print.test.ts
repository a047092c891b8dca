import assert from "node:assert/strict";
import { type Printed, printedAs } from "../support/printed";
import { textsIn } from "../support/rectangles";
import { stripsOn } from "./reader";
import { morning, storyUnit } from "./unit";

/* From the text to paper and back: what pdf.js reads from the PDFs against the unit as a teacher reads it. */

const printed = (text: string): Promise<Printed> => printedAs("strips", text);

/** The two right orders of the sample story, written out. */
const rightOrders = [
  ["um disco", "uma mochila"],
  ["uma mochila", "um disco"],
].map((free) => [
  "A Inês entra no café.",
  "Ela mede:",
  ...free,
  "Uma gaivota entra.",
  "A gaivota leva a mochila.",
  "Ela paga.",
]);

describe("strips from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    it(`${paper}: cut strips laid by the printed key tell the story, and as dealt they do not`, async () => {
      const text = storyUnit(morning, "versions: 2", `teaches: pt\npaper: ${paper}\nclasses: [4]\n`);
      const { card, paper: papers } = await printed(text);
      assert.equal(card.length, 2);
      for (const [i, page] of card.entries()) {
        const strips = stripsOn(page);
        assert.equal(strips.length, 7);
        assert.deepEqual(
          strips.map(({ sign }) => sign),
          [..."ABCDEFG"],
        );
        const dealt = strips.map((strip) => strip.text);
        assert.ok(!rightOrders.some((order) => order.join("|") === dealt.join("|")));
        const key = papers[i];
        const line = key?.texts.map((each) => each.text).find((each) => /^[A-G( )]{9,}$/.test(each));
        assert.ok(line, "no order on the key");
        const code = strips[0]?.mark.split("-")[0] ?? "?";
        assert.ok(key?.texts.some((each) => each.text.includes(code)));
        const bare = [...line.replace(/[^A-G]/g, "")];
        const laid = bare.map((sign) => strips.find((strip) => strip.sign === sign)?.text);
        assert.ok(
          rightOrders.some((order) => order.join("|") === laid.join("|")),
          laid.join("|"),
        );
        // The last strip laid first: all others are still in order.
        const example = key?.texts.map((each) => each.text).join(" ");
        const [, wrong = ""] = /in order; ([A-G]{7}) gets 6 of 7\./.exec(example ?? "") ?? [];
        assert.equal(wrong, [bare.at(-1), ...bare.slice(0, -1)].join(""));
        // What stands in brackets may change places.
        const [, a = "", b = ""] = /\((\w) (\w)\)/.exec(line) ?? [];
        const swapped = bare.map((sign) => (sign === a ? b : sign === b ? a : sign));
        const other = swapped.map((sign) => strips.find((strip) => strip.sign === sign)?.text);
        assert.notDeepEqual(other, laid);
        assert.ok(rightOrders.some((order) => order.join("|") === other.join("|")));
      }
    });
  }

  for (const flip of ["long", "short"] as const) {
    it(`backs, ${flip} edge: each number lies behind its strip and is right; every piece stands where it says`, async () => {
      const text = storyUnit(
        morning,
        `backs: numbers\nflip: ${flip}\nheight: 60\nblanks: 1`,
        "teaches: pt\nclasses: [4]\n",
      );
      const { card, pieces } = await printed(text);
      // 8 strips of 60 mm, 4 a page: two sheets of two sides, two sets.
      assert.equal(card.length, 8);
      // The blank strip of each set has nothing on its back.
      const written = pieces.pieces.filter(({ faces }) => faces[0]?.text !== "");
      assert.deepEqual([pieces.pieces.length, written.length], [16, 14]);
      for (const piece of written) {
        const [front, back] = piece.at;
        assert.ok(front && back);
        const [frontPage, backPage] = [card[front.page - 1], card[back.page - 1]];
        assert.ok(frontPage && backPage);
        assert.equal(back.page, front.page + 1);
        assert.equal(back.turn, flip === "long" ? 0 : 2);
        const words = textsIn(frontPage, front).filter(({ size }) => size >= 5.5);
        const [number] = textsIn(backPage, back);
        assert.equal(
          words
            .slice(1)
            .map((each) => each.text)
            .join(" "),
          piece.faces[0]?.text,
        );
        assert.equal(
          textsIn(frontPage, front)
            .filter(({ size }) => size < 5.5)
            .map((each) => each.text)
            .join("-"),
          piece.mark,
        );
        assert.equal(number?.text, piece.faces[1]?.text);
        assert.equal(number?.turn, back.turn);
        // Turned about that edge, the back's box is the front's.
        const turned =
          flip === "long" ? [frontPage.width - back.x - back.w, back.y] : [back.x, frontPage.height - back.y - back.h];
        assert.ok(Math.abs((turned[0] ?? 0) - front.x) < 0.01 && Math.abs((turned[1] ?? 0) - front.y) < 0.01);
        const places = rightOrders.map((order) => order.indexOf(piece.faces[0]?.text ?? "") + 1);
        const [from, to] = [Math.min(...places), Math.max(...places)];
        assert.equal(number?.text, from === to ? `${from}` : `${from}–${to}`);
        assert.deepEqual(
          piece.solution,
          [...new Set(places)].sort().map((place) => place - 1),
        );
        // Three millimetres clear of the cut, and no line near: fronts and backs may differ by a millimetre.
        assert.ok((number?.y ?? 0) - back.y > 3 && back.y + back.h - (number?.y ?? 0) > 3);
        assert.ok(backPage.lines.every(({ weight }) => weight !== 0.25));
      }
    });
  }

  it("prints a slip with a row for each strip, for every group of every class, and fewer where slips are wiped", async () => {
    const slips = async (options: string): Promise<number> => {
      const { paper } = await printed(storyUnit(morning, options, "teaches: pt\nclasses: [5, 8]\n"));
      const rows = paper.flatMap(({ texts }) => texts).filter(({ text }) => text === "9");
      return rows.length;
    };
    // Pairs of 5 and 8 learners: 2 + 4 slips, each with 7 events and 2 blanks.
    assert.equal(await slips("blanks: 2"), 6);
    assert.equal(await slips("blanks: 2\nreuse: laminate"), 4);
    assert.equal(await slips("blanks: 2\nslip: none"), 0);
  });

  it("has words of one size, clear of the cuts", async () => {
    const { card } = await printed(storyUnit(morning, "", "teaches: pt\nclasses: [2]\n"));
    for (const page of card) {
      const strips = stripsOn(page);
      const sizes = strips.flatMap(({ box }) =>
        textsIn(page, box)
          .slice(0)
          .filter(({ size, x }) => size > 5.5 && x > box.x + 12)
          .map(({ size }) => size),
      );
      assert.equal(new Set(sizes.map((size) => size.toFixed(2))).size, 1);
      assert.equal(new Set(strips.map(({ box }) => box.h.toFixed(2))).size, 1);
    }
  });
});
