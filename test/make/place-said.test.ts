import assert from "node:assert/strict";
import { placeSaid } from "../../src/make/place-said";
import { counter, loopUnit } from "../loop/unit";
import { articles, sortUnit } from "../sort/unit";
import { printedAs } from "../support/printed";
import { unitOf } from "../support/units";

/* What `cutwork find` says of where a piece belongs. */

const front = "teaches: pt\nclasses: [2]\n";

/** Each piece's text and where it is said to belong. */
async function said(make: string, text: string): Promise<[string, string | undefined][]> {
  const { pieces } = await printedAs(make, text);
  return pieces.pieces.map(({ faces, solution }) => [faces[0]?.text ?? "", placeSaid(solution)]);
}

describe("where a piece belongs, in words", () => {
  it("names rows and columns from 1, the next card, the piles; the name of a pile has no place", async () => {
    const tiles = await said("tiles", unitOf(12, "grid: 3 x 3", `---\n${front}---\n\n`));
    assert.deepEqual(
      tiles.map(([, place]) => place).sort(),
      [1, 2, 3].flatMap((row) => [1, 2, 3].map((column) => `row ${row}, column ${column}`)),
    );
    const circle = await said("loop", loopUnit(counter, "size: mini\ntake: 8\ndecoys: 1", front));
    const places = circle.map(([, place]) => place ?? "?");
    assert.equal(places.filter((place) => /^before \w{6}-\w{2}-\w{2}$/.test(place)).length, 8);
    assert.equal(places.filter((place) => place === "nowhere: it is left over").length, 1);
    const piles = new Map(await said("sort", sortUnit(articles, "overlap: true\nmats: none", front)));
    assert.equal(piles.get("pianista"), "“o” and “a”");
    assert.equal(piles.get("disco"), "“o”");
    assert.equal(piles.get("o"), undefined);
  });

  it("names places of a story and of a packet from 1, and the calls of each hour", () => {
    assert.equal(placeSaid([3, 4]), "place 4 or 5");
    assert.equal(placeSaid({ packet: 2, sentence: "B", places: [0] }), "packet 2, sentence B, place 1");
    assert.equal(placeSaid({ packet: 1, sentence: "", places: [0, 2] }), "packet 1, place 1 or 3");
    assert.equal(
      placeSaid([
        ["a", "b"],
        ["b", "a"],
      ]),
      "called hour 1: a, b; hour 2: b, a",
    );
    assert.equal(placeSaid([["a", "b"]]), "called a, b");
    assert.equal(placeSaid({ somewhere: 1 }), '{"somewhere":1}');
  });
});
