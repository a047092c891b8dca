import assert from "node:assert/strict";
import { lensText } from "../../src/editor/language/lens";
import { prepSheet } from "../support/guide";
import { printedAs } from "../support/printed";
import { readUnitText, testWorkshop } from "../support/units";
import { sentenceUnit } from "./unit";

/* Sets of a few cards share sheets; what stands on paper against the pieces file. */

const two = [
  "- O pneu | perde ar | na subida. = The tyre loses air.",
  "- A corrente | está | seca. = The chain is dry.",
];
/** The words of a line in any order, as white space parts them. */
function words(line: string): string[] {
  return line.split(/\s+/).sort();
}

const front = (learners: number): string => `teaches: pt\nclasses: [${learners}]\n`;

describe("sets that share a sheet", () => {
  it("lie one under the other, each card where the pieces file says, with one straight cut between two sets", async () => {
    const { card, pieces } = await printedAs("rebuild", sentenceUnit(two, "copies: 11", front(23)));
    const all = pieces.pieces;
    // Eleven sets of six cards.
    assert.equal(all.length, 11 * 6);
    assert.equal(new Set(all.map(({ mark }) => mark)).size, all.length);
    assert.ok(card.length <= 2, `${card.length} sheets`);
    for (const { mark, faces, at } of all) {
      const [place] = at;
      const page = place && card[place.page - 1];
      assert.ok(place && page);
      const texts = page.texts.filter(
        ({ x, y }) => x > place.x && x < place.x + place.w && y > place.y && y < place.y + place.h,
      );
      const said = texts.map(({ text }) => text).join(" ");
      assert.ok(said.includes(mark), `${mark}: ${said}`);
      assert.ok(said.includes(faces[0]?.text ?? "?"), said);
      assert.ok(place.y + place.h <= page.height - 10 && place.y >= 10);
    }
    for (const [i, page] of card.entries()) {
      const on = all.filter(({ at }) => at[0]?.page === i + 1);
      const sets = [...new Set(on.map(({ copy }) => copy))];
      const ends = sets.map((copy) => {
        const own = on.filter((each) => each.copy === copy).flatMap(({ at }) => at);
        return [Math.min(...own.map(({ y }) => y)), Math.max(...own.map(({ y, h }) => y + h))] as const;
      });
      ends.slice(1).forEach(([top], set) => {
        assert.ok(top >= (ends[set]?.[1] ?? 0) - 0.01, "sets overlap");
        assert.equal(page.lines.filter(({ y1, y2 }) => Math.abs(y1 - top) < 0.02 && y1 === y2).length, 1);
      });
      const said = page.texts.map(({ text }) => text).join(" ");
      const last = sets.at(-1);
      assert.ok(said.includes(sets.length > 1 ? `sets ${sets[0]}–${last}` : `set ${last}`), said);
    }
  });

  it("have sheets of their own where learners cut, where copies are made of a master, and where they are long", async () => {
    const many = Array.from(
      { length: 14 },
      (_, i) => `- Hoje ${i} | a oficina grande ${i} | fecha mais cedo ${i}. = ${i}`,
    );
    for (const [lines, options, sheets] of [
      [two, "cutting: learners\ncopies: 4", 4],
      [two, "copies: by copier", 1],
      [two, "copies: 4", 1],
    ] as const) {
      const { card } = await printedAs("rebuild", sentenceUnit(lines, options, front(8)));
      assert.equal(card.length, sheets, options);
    }
    const { card, pieces } = await printedAs("rebuild", sentenceUnit(many, "copies: 2", front(4)));
    const pages = [1, 2].map((copy) => pieces.pieces.filter((each) => each.copy === copy).map(({ at }) => at[0]?.page));
    assert.ok(card.length >= 2 && pages[0]?.every((page) => !pages[1]?.includes(page)));
  });

  it("are shown by the preview as they leave the printer, and counted by the lens", async () => {
    const workshop = await testWorkshop();
    for (const options of ["copies: 11", "copies: 1", "copies: by copier", "cutting: learners\ncopies: 4"]) {
      const unit = sentenceUnit(two, options, front(23));
      const { card } = await printedAs("rebuild", unit);
      const reading = await readUnitText(unit);
      const [activity] = reading.activities;
      const [deal] = activity?.deals ?? [];
      assert.ok(activity && deal);
      const shown = workshop
        .view(reading, activity, deal, "dealt")
        .map(({ items }) =>
          items.flatMap((item) => (item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : [])).join(" "),
        );
      const printed = card.map(({ texts }) => texts.map(({ text }) => text).join(" "));
      assert.deepEqual(shown.map(words), printed.slice(0, shown.length).map(words), options);
      const sets = (printed[0] ?? "").split(`${deal.code}-`).length - 1;
      const said = lensText(activity, (each) => workshop.view(reading, activity, each, "dealt"));
      assert.ok(said.includes(sets > 6 ? ` · ${sets / 6} sets a sheet · ` : " · 1 sheet a set · "), said);
    }
  });

  it("stand on a master as often as there is room, but no more often than a class needs them", async () => {
    const { card, pieces } = await printedAs("rebuild", sentenceUnit(two, "copies: by copier", front(40)));
    assert.equal(card.length, 1);
    assert.equal(pieces.pieces.length, 6);
    const [page] = card;
    const places = pieces.pieces.flatMap(({ mark, faces, at }) => at.map((place) => ({ ...place, mark, faces })));
    assert.ok(page && places.length > 12 && places.length % 6 === 0);
    assert.equal(new Set(places.map(({ x, y }) => `${x} ${y}`)).size, places.length);
    for (const { x, y, w, h, mark, faces } of places) {
      const texts = page.texts.filter((each) => each.x > x && each.x < x + w && each.y > y && each.y < y + h);
      const said = texts.map(({ text }) => text).join(" ");
      assert.ok(said.includes(mark) && said.includes(faces[0]?.text ?? "?"), said);
    }
    const few = await printedAs("rebuild", sentenceUnit(two, "copies: by copier", front(5)));
    assert.ok(few.pieces.pieces.every(({ at }) => at.length === 2));
    const unit = sentenceUnit(two, "title: My sentences\ncopies: by copier", front(5));
    const said = await prepSheet(unit);
    assert.match(said, /onto card at 100 %, for the largest class: “My sentences” once, 2 sets a copy\./);
    assert.doesNotMatch(said, /Telling sets apart/);
    // Twenty sets, so many on a copy as the sheet holds.
    const each = places.length / 6;
    const large = await prepSheet(sentenceUnit(two, "title: My sentences\ncopies: by copier", front(40)));
    const times = Math.ceil(20 / each);
    assert.ok(times > 1);
    assert.ok(large.includes(`“My sentences” ${times} times, ${each} sets a copy.`), large);
    assert.match(large, new RegExp(`1 sheet, 10 g, and ${times} for the copies of masters`));
  });

  it("are told on the prep sheet, and a card of them is printed again as it was", async () => {
    const unit = sentenceUnit(two, "title: My sentences\ncopies: 4", front(8));
    assert.match(await prepSheet(unit), /The sheets of “My sentences” have several sets, one under the other/);
    assert.match(await prepSheet(unit), /My sentences card 1 4 /);
    assert.doesNotMatch(await prepSheet(sentenceUnit(two, "copies: 1", front(2))), /several sets/);
    const workshop = await testWorkshop();
    const files = await workshop.make(await readUnitText(unit), {});
    const json = new TextDecoder().decode(files.find(({ name }) => name.endsWith(".pieces.json"))?.bytes);
    const { pieces } = JSON.parse(json) as { pieces: { mark: string; copy: number; faces: { text: string }[] }[] };
    const lost = pieces.find(({ copy }) => copy === 3);
    assert.ok(lost);
    const [found] = workshop.find([json], lost.mark);
    assert.equal(found?.drawing.items.filter(({ type }) => type === "text").length, 3);
    const texts = found?.drawing.items.flatMap((item) =>
      item.type === "text" ? item.runs.map(({ text }) => text) : [],
    );
    assert.ok(texts?.includes(lost.faces[0]?.text ?? "?"));
  });
});
