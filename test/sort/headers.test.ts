import assert from "node:assert/strict";
import { paperPages } from "../support/guide";
import { type Printed, printedAs } from "../support/printed";
import { articles, meals, sortUnit } from "./unit";

/* Header cards, and mats that bear the same names. */

const front = "teaches: pt\nclasses: [4, 11]\n";

/** Pieces of the first set that no pile takes: header cards. */
function headersIn({ pieces }: Printed): string[] {
  const [first] = pieces.pieces;
  return pieces.pieces
    .filter(({ mark, solution }) => mark.slice(0, 9) === first?.mark.slice(0, 9) && `${solution}` === "")
    .map(({ faces }) => faces[0]?.text ?? "");
}

describe("header cards of a sort", () => {
  it("are left out beside mats, unless they are asked for or show examples", async () => {
    const names = ["Breakfast", "Lunch", "Supper"];
    for (const [options, expected] of [
      ["overlap: true", []],
      ["overlap: true\nmats: fields\nallow: {mat-between: for the test}", []],
      ["overlap: true\nmats: none", names],
      ["overlap: true\nheaders: cards", names],
      ["overlap: true\nmats: none\nheaders: none", []],
    ] as const)
      assert.deepEqual(headersIn(await printedAs("sort", sortUnit(meals, options, front))), expected, options);
    const gentle = headersIn(await printedAs("sort", sortUnit(meals, "overlap: true\nlevels: [gentle]", front)));
    assert.equal(gentle.length, 3);
    const guide = (await paperPages(sortUnit(meals, "overlap: true", front))).join(" ");
    assert.match(guide, /a mat for each set/);
    assert.doesNotMatch(guide, /header card/i);
    const beside = (await paperPages(sortUnit(meals, "overlap: true\nheaders: cards", front))).join(" ");
    assert.match(beside, /Lay each header card at the edge of its place/);
  });

  it("and mats: a master has one for each set of the largest class, since only pieces are copied", async () => {
    for (const [options, mats] of [
      ["copies: by copier", 5],
      ["copies: by copier\nversions: 2", 6],
      ["copies: 3", 3],
    ] as const) {
      const { paper } = await printedAs("sort", sortUnit(articles, `overlap: true\n${options}`, front));
      const said = paper.filter(({ texts }) => texts.some(({ text }) => /^mat \d+ of \d+$/.test(text)));
      assert.equal(said.length, mats, options);
    }
  });
});
