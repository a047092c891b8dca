import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import path from "node:path";
import type { PiecesFile } from "../../src/make/pieces-file";
import type { MadeFile, Reading } from "../../src/make/workshop";
import { proveTiles, type TileEdges } from "../../src/prove/tiles";
import { wordsOf } from "../render/tools";
import { type PrintedTile, readPrint, tilesOn } from "../support/print";
import { testTypeface } from "../support/typeface";
import { readUnitText, testWorkshop } from "../support/units";

/*
 * From the unit's text to paper and back: the PDFs are read by pdf.js and poppler, and what they show is compared with the
 * unit by a reader of its own, a line of regular expression a pair.
 */

const whole = readFileSync(path.join(__dirname, "../../samples/bicycle-workshop.unit.md"), "utf8");
/** The part of the sample that makes tiles; the other kinds have tests of their own. */
const sample = whole.slice(0, whole.indexOf("## Monday morning"));

async function made(text: string): Promise<{ reading: Reading; files: readonly MadeFile[]; pieces: PiecesFile }> {
  const reading = await readUnitText(text);
  const files = await (await testWorkshop()).make(reading, {});
  const last = files.find(({ name }) => name.endsWith(".pieces.json"));
  const pieces: PiecesFile = JSON.parse(new TextDecoder().decode(last?.bytes));
  return { reading, files, pieces };
}

function file(files: readonly MadeFile[], name: string): Uint8Array {
  const found = files.find((each) => each.name === name);
  assert.ok(found, `${name} is not among ${files.map((each) => each.name).join(", ")}`);
  return found.bytes;
}

/** Left and right answers of every pair of the text, read without the project's reader. */
function answersIn(text: string): [string[], string[]][] {
  return [...text.matchAll(/^- (?!\[)(.+?) = (.+)$/gm)].map(([, left = "", right = ""]) => [
    left.split(" / "),
    right.split(" / "),
  ]);
}

/** Proves the puzzle that some printed tiles are, from their texts and the pairs of the unit. */
function proveFromPrint(
  tiles: readonly PrintedTile[],
  rows: number,
  columns: number,
  text: string,
  turn: "free" | "fixed",
) {
  const words = [...new Set(tiles.flatMap(({ edges }) => edges))];
  const pairs = answersIn(text);
  const partners = words.map((word) =>
    words.flatMap((other, i) =>
      pairs.some(([l, r]) => (l.includes(word) && r.includes(other)) || (r.includes(word) && l.includes(other)))
        ? [i]
        : [],
    ),
  );
  const edges = tiles.map(
    ({ edges: [n, e, s, w] }): TileEdges => [words.indexOf(n), words.indexOf(e), words.indexOf(s), words.indexOf(w)],
  );
  return proveTiles({ rows, columns, tiles: edges, partners, turn }, { cap: 3 });
}

describe("tiles from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"] as const) {
    it(`${paper}: the puzzle rebuilt from the card sheets alone has one solution, and it is the key's`, async () => {
      const text = sample.replace("classes: [24, 27, 31]", `classes: [4]\npaper: ${paper}`);
      const { files, pieces } = await made(text);
      const sheets = await readPrint(file(files, "unit.At-the-bench-tiles.card.pdf"));
      const keys = await readPrint(file(files, "unit.At-the-bench-tiles.paper.pdf"));
      assert.equal(sheets.length, 2);
      for (const [i, level] of ["gentle", "hard"].entries()) {
        const page = sheets[i];
        const key = keys[i];
        assert.ok(page && key);
        const tiles = tilesOn(page);
        assert.equal(tiles.length, 16);
        const proof = proveFromPrint(tiles, 4, 4, text, "free");
        assert.equal(proof.status, "one");
        // The key shows these very tiles, and in it every inner edge touches its answer: so it is that one solution.
        const solved = tilesOn(key);
        assert.equal(solved.length, 16);
        const look = (edges: readonly string[], turn: number): string =>
          [0, 1, 2, 3].map((side) => edges[(side - turn + 4) % 4]).join("|");
        const marks = new Map(tiles.map((tile) => [tile.centre.join("-").split("-").at(-1), tile]));
        for (const [cell, tile] of solved.entries()) {
          const mark = tile.centre[0];
          const piece = marks.get(mark);
          assert.ok(piece, `the key's tile ${mark} is on no card`);
          const turns = [0, 1, 2, 3].filter((turn) => look(piece.edges, turn) === tile.edges.join("|"));
          assert.ok(turns.length > 0, `tile ${mark} of the key is not the one on the card`);
          const entry = pieces.pieces.find(
            (each) =>
              each.level === level && each.mark.endsWith(`-${mark}`) && each.activity.startsWith("At the bench"),
          );
          assert.deepEqual(entry?.solution, { row: Math.floor(cell / 4), column: cell % 4 });
        }
        const pairs = answersIn(text);
        const fits = (a: string, b: string): boolean =>
          pairs.some(([l, r]) => (l.includes(a) && r.includes(b)) || (r.includes(a) && l.includes(b)));
        for (const [cell, tile] of solved.entries()) {
          const right = cell % 4 < 3 ? solved[cell + 1] : undefined;
          const below = solved[cell + 4];
          if (right) assert.ok(fits(tile.edges[1], right.edges[3]), `${tile.edges[1]} | ${right.edges[3]}`);
          if (below) assert.ok(fits(tile.edges[2], below.edges[0]), `${tile.edges[2]} | ${below.edges[0]}`);
        }
      }
    });
  }

  it("every piece of the pieces file stands where it says, in its own words, turned as it says", async () => {
    const { files, pieces } = await made(sample.replace("classes: [24, 27, 31]", "classes: [8]"));
    const pages = new Map<string, Awaited<ReturnType<typeof readPrint>>>();
    for (const { name, bytes } of files) if (name.endsWith(".card.pdf")) pages.set(name, await readPrint(bytes));
    const marks = new Set<string>();
    for (const piece of pieces.pieces) {
      const [at] = piece.at;
      assert.ok(at);
      const page = pages.get(at.file)?.[at.page - 1];
      assert.ok(page, `${at.file} ${at.page}`);
      const tile = tilesOn(page).find(({ x, y }) => Math.abs(x - at.x) < 0.05 && Math.abs(y - at.y) < 0.05);
      assert.ok(tile, piece.mark);
      assert.ok(Math.abs(tile.side - at.w) < 0.05);
      assert.equal(tile.centre.join("-"), piece.mark);
      const faces = ["n", "e", "s", "w"].map((side) => piece.faces.find((face) => face.side === side)?.text ?? "");
      assert.deepEqual(
        [...tile.edges],
        [0, 1, 2, 3].map((side) => faces[(side - at.turn + 4) % 4]),
      );
      marks.add(piece.mark);
    }
    assert.equal(marks.size, pieces.pieces.length);
  });

  it("poppler reads every word of every tile inside that tile", async () => {
    const { files, pieces } = await made(sample.replace("classes: [24, 27, 31]", "classes: [2]"));
    const name = "unit.At-the-bench-tiles.card.pdf";
    const words = wordsOf(file(files, name)).map((word) => ({
      ...word,
      x: ((word.left + word.right) / 2) * (25.4 / 72),
      y: ((word.top + word.bottom) / 2) * (25.4 / 72),
    }));
    // Both levels have one set here, on pages of their own; poppler's boxes are per page, so each word is looked for once.
    const counts = new Map<string, number>();
    for (const piece of pieces.pieces.filter(({ at }) => at[0]?.file === name)) {
      const [at] = piece.at;
      assert.ok(at);
      for (const word of piece.faces.flatMap(({ text }) => text.split(" ").filter(Boolean))) {
        const inside = words.filter(
          ({ text, x, y }) => text === word && x > at.x && x < at.x + at.w && y > at.y && y < at.y + at.h,
        );
        assert.ok(inside.length > 0, `“${word}” of ${piece.mark}`);
        counts.set(word, (counts.get(word) ?? 0) + 1);
      }
    }
    for (const [word, count] of counts) assert.ok(words.filter(({ text }) => text === word).length >= count, word);
  });

  it("keeps words clear of cuts and of each other", async () => {
    const { reading } = await made(sample);
    const typeface = await testTypeface();
    const workshop = await testWorkshop();
    for (const activity of reading.activities) {
      for (const deal of activity.deals) {
        for (const sheet of workshop.view(reading, activity, deal, "dealt")) {
          const areas = sheet.items.filter((item) => item.type === "area");
          for (const item of sheet.items) {
            if (item.type !== "text" || item.source === undefined) continue;
            const ink = typeface.ink(item.runs);
            const em = (item.size * 25.4) / 72;
            const width = typeface.measure(item.runs) * em;
            const area = areas.find(({ x, y, w, h }) => item.x > x && item.x < x + w && item.y > y && item.y < y + h);
            assert.ok(area);
            // Distance of the ink's top from the edge that it faces, and of its ends from the diagonals.
            const base =
              [item.y - area.y, area.x + area.w - item.x, area.y + area.h - item.y, item.x - area.x][item.turn] ?? 0;
            assert.ok(
              base - ink.top * em > 1.2,
              `${item.runs.map((run) => run.text).join("")} is ${base - ink.top * em} mm from the cut`,
            );
            const deepest = base - Math.min(0, ink.bottom) * em;
            assert.ok(width / 2 < area.w / 2 - deepest, "reaches over a diagonal");
          }
        }
      }
    }
  });

  it("gives the same bytes again", async () => {
    const [first, second] = [await made(sample), await made(sample)];
    for (const [i, { name, bytes }] of first.files.entries()) {
      assert.equal(second.files[i]?.name, name);
      assert.deepEqual(Buffer.from(second.files[i]?.bytes ?? []), Buffer.from(bytes));
    }
  });

  it("has a bar of 100 mm on every sheet, and the paper's size in its boxes", async () => {
    // ISO 216: A4 210 × 297 mm. ANSI/ASME Y14.1: Letter 8.5 × 11 in.
    for (const [paper, width, height] of [
      ["A4", 210, 297],
      ["Letter", 215.9, 279.4],
    ] as const) {
      const { files } = await made(
        sample.replace("explains: en", `explains: en\npaper: ${paper}`).replace("[24, 27, 31]", "[2]"),
      );
      for (const { name, bytes } of files.filter((each) => each.name.endsWith(".pdf"))) {
        for (const page of await readPrint(bytes)) {
          assert.ok(Math.abs(page.width - width) < 0.01 && Math.abs(page.height - height) < 0.01, name);
          const bar = page.lines.find(({ weight, y1, y2 }) => weight === 0.5 && Math.abs(y1 - y2) < 0.01);
          assert.ok(bar && Math.abs(Math.abs(bar.x2 - bar.x1) - 100) < 0.01, name);
        }
      }
    }
  });
});
