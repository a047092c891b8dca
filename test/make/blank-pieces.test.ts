import assert from "node:assert/strict";
import type { KindName } from "../../src/activities/contract";
import { pieceMark, readMark } from "../../src/base/mark";
import type { PiecesFile } from "../../src/make/pieces-file";
import { printedOn } from "../../src/make/reprint";
import { type ShapeName, workshopUnit } from "../activities/material";
import { type PrintedPage, readPrint } from "../support/print";
import { type Rectangle, rectanglesOn, textsIn } from "../support/rectangles";
import { readUnitText, testWorkshop } from "../support/units";

/* A blank piece is a piece like any other: its mark is read from print, found and printed again. */

const kinds: readonly (readonly [KindName, ShapeName, string])[] = [
  ["tiles", "words", "tile"],
  ["strips", "events", "strip"],
  ["rebuild", "sentences", "card"],
  ["sort", "words", "card"],
  ["sort", "piles", "card"],
  ["loop", "words", "card"],
];

interface Print {
  readonly pages: readonly PrintedPage[];
  readonly json: string;
  readonly file: PiecesFile;
}

async function printOf(text: string): Promise<Print> {
  const files = await (await testWorkshop()).make(await readUnitText(text), {});
  const bytes = (end: string): Uint8Array =>
    files.find(({ name }) => name.endsWith(end) && !/guide|labels/.test(name))?.bytes ?? new Uint8Array();
  const json = new TextDecoder().decode(bytes(".pieces.json"));
  return { pages: await readPrint(bytes(".card.pdf")), json, file: JSON.parse(json) };
}

/** The small print in a box, parts of a mark that stand in two lines joined. */
function markIn(page: PrintedPage, box: Rectangle): string {
  return textsIn(page, box)
    .filter(({ size }) => size < 5.5)
    .map(({ text }) => text)
    .join("-");
}

function markAt({ pages }: Print, { at: [at] }: PiecesFile["pieces"][number]): string {
  const page = pages[(at?.page ?? 0) - 1];
  assert.ok(at && page);
  return markIn(page, at);
}

/** The box round all; lines to write on part a card. */
function around(boxes: readonly Rectangle[]): Rectangle {
  const [x, y] = [Math.min(...boxes.map((box) => box.x)), Math.min(...boxes.map((box) => box.y))];
  const right = Math.max(...boxes.map((box) => box.x + box.w));
  const bottom = Math.max(...boxes.map((box) => box.y + box.h));
  return { x, y, w: right - x, h: bottom - y };
}

describe("the marks of blank pieces", function () {
  this.timeout(60_000);

  for (const [make, about, name] of kinds)
    for (const copies of ["copies: 3", "copies: by copier"])
      it(`${make} of ${about}, ${copies}: read from print, found, and printed again as a blank one`, async () => {
        const workshop = await testWorkshop();
        const print = await printOf(workshopUnit(make, about, `take: 8\nblanks: 2\n${copies}`, "classes: [4]\n"));
        const marks = print.file.pieces.map((piece) => markAt(print, piece));
        assert.deepEqual(
          marks,
          print.file.pieces.map(({ mark }) => mark),
        );
        assert.equal(new Set(marks).size, marks.length);
        const blank = print.file.pieces.filter(({ faces }) => faces.every(({ text }) => text === ""));
        assert.equal(blank.length, copies === "copies: 3" ? 6 : 2);
        for (const [i, piece] of blank.entries()) {
          const { copy, solution } = piece;
          const mark = markAt(print, piece);
          assert.deepEqual(Object.keys(Object(solution)), []);
          const found = workshop.find([print.json], mark);
          assert.equal(found.length, 1);
          assert.deepEqual(found.map(printedOn), [
            copy === null ? `a blank ${name}` : `a blank ${name} of set ${Math.floor(i / 2) + 1}`,
          ]);
          // What stood on blank pieces once, deal and set alone, is nobody's mark.
          if (copy !== null) assert.deepEqual(workshop.find([print.json], mark.slice(0, -3)), []);
          const [again] = await readPrint(await workshop.reprint(found, new Map()));
          assert.ok(again);
          const card = around(rectanglesOn(again, 0.25));
          const page = print.pages[(piece.at[0]?.page ?? 0) - 1];
          assert.ok(page && piece.at[0]);
          assert.equal(markIn(again, card), mark);
          assert.deepEqual(
            textsIn(again, card).map(({ text, size }) => [text, size.toFixed(2)]),
            textsIn(page, piece.at[0]).map(({ text, size }) => [text, size.toFixed(2)]),
          );
          assert.ok(Math.abs(card.w - piece.at[0].w) < 0.05 && Math.abs(card.h - piece.at[0].h) < 0.05);
        }
      });

  it("a file that does not tell what its pieces say is read, and they are found by what is drawn", async () => {
    const workshop = await testWorkshop();
    const { file } = await printOf(workshopUnit("strips", "events", "copies: 2", "classes: [4]\n"));
    const deals = file.deals.map((deal) => ({ ...deal, print: deal.print.map(({ texts: _, ...rest }) => rest) }));
    const [piece] = file.pieces;
    assert.ok(piece);
    const [found] = workshop.find([JSON.stringify({ ...file, deals })], piece.mark);
    assert.ok(found && printedOn(found).includes(piece.faces[0]?.text ?? "?"), found && printedOn(found));
    assert.deepEqual((await readPrint(await workshop.reprint([found], new Map()))).length, 1);
  });

  it("are told apart beyond 256 pieces, and no mark is read as another", () => {
    for (const copy of [undefined, 0, 17]) {
      const marks = Array.from({ length: 900 }, (_, piece) => pieceMark("ACDEFH", copy, piece));
      assert.equal(new Set(marks).size, 900);
      for (const [piece, mark] of marks.entries()) {
        const bare = mark.replaceAll("-", "");
        assert.deepEqual(readMark(bare, "ACDEFH", copy === undefined), { copy, piece });
        assert.notDeepEqual(readMark(bare, "ACDEFH", copy !== undefined), { copy, piece });
      }
    }
    for (const bare of ["ACDEFH", "ACDEFHA", "ACDEFHAA", "ACDEFHAA0A", "ACDEFHAAAAA", "ACDEFHBBAA", "XACDEFHAAAA"])
      assert.equal(readMark(bare, "ACDEFH", false), undefined, bare);
  });
});
