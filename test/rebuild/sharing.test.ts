import assert from "node:assert/strict";
import { prepSheet } from "../support/guide";
import { printedAs } from "../support/printed";
import { readUnitText, testWorkshop } from "../support/units";
import { sentenceUnit } from "./unit";

/* Sets of a few cards share sheets; what stands on paper against the pieces file. */

const two = [
  "- O pneu | perde ar | na subida. = The tyre loses air.",
  "- A corrente | está | seca. = The chain is dry.",
];
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
