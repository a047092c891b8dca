import assert from "node:assert/strict";
import type { MadeFile } from "../../src/make/workshop";
import { type PrintedTile, readPrint, tilesOn } from "../support/print";
import { readUnitText, testWorkshop, unitOf, word } from "../support/units";

const text = unitOf(12, "title: One", "---\nclasses: [8]\n---\n\n");

async function make(unit: string, pieces?: string): Promise<readonly MadeFile[]> {
  return (await testWorkshop()).make(await readUnitText(unit, pieces === undefined ? {} : { pieces }), {});
}

function piecesText(files: readonly MadeFile[]): string {
  return new TextDecoder().decode(files.find(({ name }) => name.endsWith(".pieces.json"))?.bytes);
}

async function tilesIn(pdf: Uint8Array): Promise<PrintedTile[]> {
  return (await readPrint(pdf)).flatMap((page) => tilesOn(page));
}

describe("finding and printing again", () => {
  it("prints a lost piece of any copy as it was: text, size and mark", async () => {
    const workshop = await testWorkshop();
    const files = await make(text);
    const card = files.find(({ name }) => name === "unit.One.card.pdf");
    assert.ok(card);
    const original = await tilesIn(card.bytes);
    for (const lost of [original[0], original[13], original.at(-1)]) {
      assert.ok(lost);
      const mark = lost.centre.join("-");
      const found = workshop.find([piecesText(files)], ` ${mark.toLowerCase().replaceAll("-", " ")} `);
      assert.equal(found.length, 1);
      assert.equal(found[0]?.mark, mark);
      const pages = await readPrint(await workshop.reprint(found, new Map()));
      const [again, ...others] = pages.flatMap((page) => tilesOn(page));
      assert.equal(others.length, 0);
      assert.deepEqual([again?.edges, again?.centre], [lost.edges, lost.centre]);
      assert.ok(Math.abs((again?.side ?? 0) - lost.side) < 0.01);
      const sizes = (page: Awaited<ReturnType<typeof readPrint>>[number] | undefined) =>
        new Set(
          (page?.texts ?? [])
            .filter(({ text: said }) => lost.edges.some((edge) => edge !== "" && edge.includes(said)))
            .map(({ size }) => size),
        );
      assert.deepEqual(sizes(pages[0]), sizes((await readPrint(card.bytes))[0]));
    }
  });

  it("prints a piece of an earlier print after the unit has changed", async () => {
    const workshop = await testWorkshop();
    const before = await make(text);
    const card = before.find(({ name }) => name === "unit.One.card.pdf");
    const lost = (await tilesIn(card?.bytes ?? new Uint8Array())).find(({ edges }) => edges.includes(`${word(0)}a`));
    assert.ok(lost);
    const after = await make(text.replace(`- ${word(0)}a`, "- mended"), piecesText(before));
    const found = workshop.find([piecesText(after)], lost.centre.join("-"));
    assert.deepEqual(
      found.map(({ current, deal }) => [current, deal.activity]),
      [[false, "One"]],
    );
    const [again] = await tilesIn(await workshop.reprint(found, new Map()));
    assert.deepEqual(again?.edges, lost.edges);
  });

  it("puts many pieces on as many sheets as they need", async () => {
    const workshop = await testWorkshop();
    const files = await make(text);
    const marks = (
      await tilesIn(files.find(({ name }) => name === "unit.One.card.pdf")?.bytes ?? new Uint8Array())
    ).map(({ centre }) => centre.join("-"));
    const found = marks.flatMap((mark) => workshop.find([piecesText(files)], mark));
    const pdf = await workshop.reprint(found, new Map());
    assert.deepEqual(
      (await tilesIn(pdf)).map(({ centre }) => centre.join("-")),
      marks,
    );
    assert.equal((await readPrint(pdf)).length, Math.ceil(marks.length / 6));
  });

  it("knows no mark that was never printed", async () => {
    const workshop = await testWorkshop();
    const pieces = piecesText(await make(text));
    const [code = ""] = /[A-Z0-9]{6}/.exec(pieces.slice(pieces.indexOf('"code"'))) ?? [];
    for (const mark of ["", "XXXXXX-AA-AA", code, `${code}-88`, `${code}-AA-88`, `${code}-AA-AA-AA`]) {
      assert.deepEqual(workshop.find([pieces], mark), [], mark);
    }
  });
});
