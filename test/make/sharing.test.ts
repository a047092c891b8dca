import assert from "node:assert/strict";
import { counter, loopUnit } from "../loop/unit";
import { articles, sortUnit } from "../sort/unit";
import { prepSheet } from "../support/guide";
import { type Printed, printedAs } from "../support/printed";

/* Small sets of sort and loop share sheets as those of rebuild do: what stands on paper against the pieces file. */

const front = (learners: number): string => `teaches: pt\nclasses: [${learners}]\n`;

/** Every piece stands where the pieces file says, with its mark and its words; pieces of two sets never overlap. */
function readAtTheirPlaces({ card, pieces }: Printed): void {
  const all = pieces.pieces;
  assert.equal(new Set(all.map(({ mark }) => mark)).size, all.length);
  for (const { mark, faces, at } of all) {
    const [place] = at;
    const page = place && card[place.page - 1];
    assert.ok(place && page && at.length === 1);
    assert.ok(place.y + place.h <= page.height - 10);
    const said = page.texts
      .filter(({ x, y }) => x > place.x && x < place.x + place.w && y > place.y && y < place.y + place.h)
      .map(({ text }) => text)
      .join(" ");
    assert.ok(said.includes(mark.slice(7)), `${mark}: ${said}`);
    for (const { text } of faces) assert.ok(said.replace(/\s+/g, " ").includes(text), `${mark} ${text}: ${said}`);
  }
  const corners = all.map(({ at: [place] }) => `${place?.page} ${place?.x} ${place?.y}`);
  assert.equal(new Set(corners).size, all.length);
}

describe("small sets that share a sheet", () => {
  it("of sort, where two and more have room; no more cards stand on a sheet than are asked for", async () => {
    const few = ["### o", "", "- disco", "- café", "", "### a", "", "- mochila", "- conta"];
    const sets = await printedAs("sort", sortUnit(few, "cards: 24\nheaders: none\ntitle: My sort", front(14)));
    assert.equal(sets.pieces.pieces.length, 7 * 4);
    assert.ok(sets.card.length <= 3, `${sets.card.length} sheets`);
    readAtTheirPlaces(sets);
    const said = await prepSheet(sortUnit(few, "cards: 24\nheaders: none\ntitle: My sort", front(14)));
    assert.match(said, /The sheets of “My sort” have several sets, one under the other/);
    // Of four cards two sets stand on a sheet of eleven cards, though the grid has room for a third.
    const eleven = await printedAs("sort", sortUnit(few, "cards: 11\nheaders: none", front(14)));
    assert.equal(eleven.card.length, 4);
    // A set that fills more than half a sheet, and learners who cut, have sheets of their own.
    for (const [items, options] of [
      [articles, "overlap: true\nmats: none"],
      [few, "cards: 24\nheaders: none\ncutting: learners"],
    ] as const)
      assert.equal((await printedAs("sort", sortUnit(items, options, front(14)))).card.length, 7);
  });

  it("of a mini loop; cards for the room are one set", async () => {
    const six = counter.slice(0, 6);
    const sets = await printedAs("loop", loopUnit(six, "size: mini\ncards: 12", front(14)));
    assert.equal(sets.card.length, 4);
    readAtTheirPlaces(sets);
    for (const [options, sheets] of [
      ["size: mini\ncards: 10", 7],
      ["size: mini\ncards: 12\ncutting: learners", 7],
      ["size: room\ncards: 2", 3],
    ] as const)
      assert.equal((await printedAs("loop", loopUnit(six, options, front(14)))).card.length, sheets, options);
  });

  it("of a master: how often each deal is copied is told for each, since their sets are not equally large", async () => {
    // Fifteen sets, eight of each level: three of four cards on a sheet, two of five.
    const options = "title: My loop\nsize: mini\ncards: 12\ntake: 4\nlevels: [gentle, hard]\ncopies: by copier";
    const unit = loopUnit(counter, options, front(31));
    const { pieces } = await printedAs("loop", unit);
    const [gentle, hard] = ["gentle", "hard"].map((level) => pieces.pieces.filter((each) => each.level === level));
    assert.deepEqual([gentle?.[0]?.at.length, hard?.[0]?.at.length], [3, 2]);
    const code = (mark = ""): string => mark.slice(0, 6);
    const said = await prepSheet(unit);
    const told = `“My loop” ${code(gentle?.[0]?.mark)} 3 times, 3 sets a copy, ${code(hard?.[0]?.mark)} 4 times, 2 sets a copy.`;
    assert.ok(said.includes(told), said);
    assert.match(said, /2 sheets, 20 g, and 7 for the copies of masters/);
  });
});
