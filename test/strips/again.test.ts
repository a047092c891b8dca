import assert from "node:assert/strict";
import type { PiecesFile } from "../../src/make/pieces-file";
import { counter, loopUnit } from "../loop/unit";
import { ordering, sentenceUnit } from "../rebuild/unit";
import { readPrint } from "../support/print";
import { rectanglesOn, textsIn } from "../support/rectangles";
import { readUnitText, testWorkshop } from "../support/units";
import { morning, storyUnit } from "./unit";

describe("lost strips and cards", function () {
  this.timeout(60_000);

  for (const [kind, text] of [
    ["strips", storyUnit(morning, "copies: 3")],
    ["rebuild", sentenceUnit(ordering, "copies: 3\npacket: 2")],
  ] as const) {
    it(`${kind}: the piece comes again with its text, size and mark`, async () => {
      const workshop = await testWorkshop();
      const files = await workshop.make(await readUnitText(text), {});
      const json = new TextDecoder().decode(files.find(({ name }) => name.endsWith(".json"))?.bytes);
      const { pieces }: PiecesFile = JSON.parse(json);
      const lost = pieces.at(-2);
      assert.ok(lost);
      const [found] = workshop.find([json], lost.mark.toLowerCase());
      assert.ok(found);
      const again = await readPrint(await workshop.reprint([found], new Map()));
      const first = await readPrint(
        files.find(({ name }) => name.endsWith(`${kind}.card.pdf`))?.bytes ?? new Uint8Array(),
      );
      const words = (page: (typeof again)[number] | undefined): string[] =>
        (page?.texts ?? []).map((each) => `${each.text} ${each.size.toFixed(2)}`);
      const here = words(again[0]);
      const there = words(first[(lost.at[0]?.page ?? 0) - 1]);
      const own = here.filter((word) => there.includes(word) && !word.startsWith("Print at"));
      const printed = own.map((word) => word.replace(/ [\d.]+$/, "")).join(" ");
      assert.ok(printed.includes(lost.faces[0]?.text ?? "?"), printed);
      assert.ok(printed.replace(/[ -]/g, "").includes(lost.mark.replaceAll("-", "")), printed);
    });
  }

  for (const flip of ["long", "short"] as const) {
    it(`${flip} edge: the number is on the back again, behind its strip, and each front is followed by its back`, async () => {
      const workshop = await testWorkshop();
      // Three strips of 80 mm fit a sheet, so that four lost ones need two.
      const text = storyUnit(morning, `backs: numbers\nflip: ${flip}\nheight: 80\ncopies: 2`);
      const { pieces, json } = await printed(text);
      const lost = [pieces[1], pieces[8], pieces[2], pieces.at(-1)].flatMap((piece) => piece ?? []);
      assert.equal(lost.length, 4);
      const found = lost.flatMap(({ mark }) => workshop.find([json], mark));
      const pages = await readPrint(await workshop.reprint(found, new Map()));
      assert.equal(pages.length, 4);
      for (const [i, { faces, mark }] of lost.entries()) {
        const [front, back] = [pages[2 * Math.floor(i / 3)], pages[2 * Math.floor(i / 3) + 1]];
        assert.ok(front && back);
        const place = rectanglesOn(front, 0.25).filter(({ h }) => h > 79)[i % 3];
        assert.ok(place);
        const texts = textsIn(front, place).map((each) => each.text);
        assert.ok(texts.includes(faces[0]?.text ?? "?"), texts.join("|"));
        assert.ok(mark.endsWith(texts.find((each) => /^[A-Z478]{2}-[A-Z478]{2}$/.test(each)) ?? "?"));
        const { x, y, w, h } = place;
        const behind = flip === "long" ? { x: back.width - x - w, y, w, h } : { x, y: back.height - y - h, w, h };
        const [number, ...others] = textsIn(back, behind);
        assert.deepEqual([number?.text, others], [faces[1]?.text, []]);
        assert.equal(number?.turn, flip === "long" ? 0 : 2);
        // As large as it was, and in the middle.
        assert.ok(Math.abs((number?.size ?? 0) - 22) < 0.01);
        assert.ok(Math.abs((number?.middle[0] ?? 0) - behind.x - w / 2) < 0.05);
        assert.equal(back.lines.filter(({ weight }) => weight === 0.25).length, 0);
        assert.ok(front.texts.some((each) => each.text.includes(`turn on the ${flip} edge`)));
      }
    });
  }

  it("in one file with others: what has no back leaves it empty, so that fronts stay fronts", async () => {
    const workshop = await testWorkshop();
    const backed = await printed(storyUnit(morning, "backs: numbers\nflip: short\nheight: 80\ncopies: 1"));
    const plain = await printed(sentenceUnit(ordering, "copies: 1"));
    const lying = await printed(loopUnit(counter, "cards: 1", "teaches: pt\nclasses: [3]\n"));
    const found = [plain, backed, lying].flatMap(({ pieces, json }) => workshop.find([json], pieces[0]?.mark ?? ""));
    const pages = await readPrint(await workshop.reprint(found, new Map()));
    assert.deepEqual(
      pages.map(({ width, height }) => width > height),
      [false, false, true, true],
    );
    assert.ok(pages[2]?.texts.some(({ text }) => text === lying.pieces[0]?.faces[0]?.text));
    assert.ok(pages[3]?.texts.some(({ text }) => text.endsWith(", back")));
    const fronts = pages[0]?.texts.map((each) => each.text).join(" ") ?? "";
    for (const text of [plain.pieces[0]?.faces[0]?.text, backed.pieces[0]?.faces[0]?.text])
      assert.ok(fronts.includes(text ?? "?"), fronts);
    const numbers = pages[1]?.texts.filter(({ size }) => size > 20).map((each) => each.text);
    assert.deepEqual(numbers, [backed.pieces[0]?.faces[1]?.text]);
  });

  it("a card that fills a lying sheet lies again, whole", async () => {
    const workshop = await testWorkshop();
    const { pieces, json } = await printed(loopUnit(counter, "cards: 1", "teaches: pt\nclasses: [3]\n"));
    const piece = pieces[3];
    assert.ok(piece);
    const [page, ...others] = await readPrint(await workshop.reprint(workshop.find([json], piece.mark), new Map()));
    assert.ok(page && page.width > page.height);
    assert.equal(others.length, 0);
    const [card] = rectanglesOn(page, 0.25);
    assert.ok(card && card.x > 9.9 && card.x + card.w < page.width - 9.9 && card.y + card.h < page.height - 9.9);
    const texts = textsIn(page, card).map((each) => each.text);
    for (const { text } of piece.faces) assert.ok(texts.includes(text), `${text}: ${texts.join("|")}`);
  });
});

/** Makes a unit of one activity and gives what its pieces file says. */
async function printed(text: string): Promise<PiecesFile & { readonly json: string }> {
  const files = await (await testWorkshop()).make(await readUnitText(text), {});
  const json = new TextDecoder().decode(files.find(({ name }) => name.endsWith(".json"))?.bytes);
  return { ...JSON.parse(json), json };
}
