import assert from "node:assert/strict";
import * as fc from "fast-check";
import { plain } from "../../src/base/run";
import { type Block, setDocument, setInBox, setSlips, setWritingSlips } from "../../src/page/document";
import { bodyBox } from "../../src/page/furniture";
import type { Box } from "../../src/page/paper";
import type { LineItem, Sheet, SheetItem, TextItem } from "../../src/page/sheet";
import { renderPdf } from "../../src/render/pdf";
import type { Typeface } from "../../src/text/typeface";
import { type PrintedPage, readPrint } from "../support/print";
import { testTypeface } from "../support/typeface";
import { everyBlock, samplePage } from "./sample";

const mmPerPoint = 25.4 / 72;
const page = samplePage("A4");
const body = bodyBox(page.paper, page.margin);

const texts = ({ items }: Pick<Sheet, "items">): TextItem[] =>
  items.flatMap((item) => (item.type === "text" && item.size > 0 ? [item] : []));
const lines = ({ items }: Pick<Sheet, "items">): LineItem[] =>
  items.flatMap((item) => (item.type === "line" && item.role === "rule" ? [item] : []));
/** Without title line, size bar and folio. */
const own = (sheet: Sheet): TextItem[] => texts(sheet).filter(({ y }) => y > body.y && y < body.y + body.h);
const said = (items: readonly TextItem[]): string[] => items.map(({ runs }) => plain(runs));
const sentence = (words: number): string => Array.from({ length: words }, (_, i) => `word${i}`).join(" ");

describe("papers", () => {
  let typeface: Typeface;
  before(async () => {
    typeface = await testTypeface();
  });

  const set = (...blocks: Block[]): Sheet[] => setDocument(blocks, page, typeface);

  /** What of a text or line reaches outside a box, to a hundredth of a millimetre. */
  function outside(items: readonly SheetItem[], box: Box): string[] {
    return items.flatMap((item) => {
      if (item.type !== "text") return [];
      const width = typeface.measure(item.runs) * item.size * mmPerPoint;
      const left = item.x - { start: 0, middle: 0.5, end: 1 }[item.anchor] * width;
      const em = item.size * mmPerPoint;
      const within =
        left >= box.x - 0.01 &&
        left + width <= box.x + box.w + 0.01 &&
        item.y - 0.75 * em >= box.y - 0.01 &&
        item.y + 0.28 * em <= box.y + box.h + 0.01;
      return within ? [] : [`${plain(item.runs)} at ${left.toFixed(1)}, ${item.y.toFixed(1)}`];
    });
  }

  for (const paper of ["A4", "Letter"] as const)
    it(`keep every block inside the margins of ${paper}, and nothing gets lost`, () => {
      const sheets = setDocument(everyBlock, samplePage(paper), typeface);
      assert.equal(sheets.length, 2);
      const box = bodyBox(samplePage(paper).paper, 10);
      for (const sheet of sheets) {
        const furniture = setDocument([], samplePage(paper), typeface)[0]?.items.length ?? 0;
        assert.deepEqual(outside(sheet.items.slice(furniture), box), []);
        assert.equal(sheet.stock, "paper");
      }
      const words = sheets.flatMap((sheet) => said(texts(sheet))).join(" ");
      for (let i = 1; i <= 26; i++) assert.match(words, new RegExp(`palavra ${i} =`));
      assert.match(words, /sheet 1 of 2.*sheet 2 of 2/s);
    });

  it("are read back from the print: heads again on the second page, rows in order and whole", async () => {
    const table: Block = {
      type: "table",
      columns: [{ head: "No.", width: 12 }, { head: "Statement" }],
      rows: Array.from({ length: 60 }, (_, i) => [`${i + 1}`, `row ${i + 1} ${sentence(i % 3 === 0 ? 30 : 3)}`]),
    };
    const printed = await readPrint(await renderPdf(set(table), typeface, new Map(), { title: "t", lang: "en" }));
    assert.ok(printed.length >= 2);
    const numbers: string[] = [];
    for (const one of printed) {
      const inside = bodyTexts(one);
      assert.equal(inside.filter(({ text }) => text === "Statement").length, 1);
      numbers.push(...inside.filter(({ text }) => /^\d+$/.test(text)).map(({ text }) => text));
      // A row that went over the page would leave the end of its text on a page without its number.
      const rows = inside.filter(({ text }) => /^row \d+/.test(text)).length;
      assert.equal(rows, inside.filter(({ text }) => /^\d+$/.test(text)).length);
      const firstNumber = inside.filter(({ text }) => /^\d+$/.test(text))[0];
      const wordTop = Math.min(...inside.filter(({ text }) => /word/.test(text)).map(({ y }) => y));
      assert.ok(firstNumber && wordTop >= firstNumber.y - 0.1);
    }
    assert.deepEqual(
      numbers,
      Array.from({ length: 60 }, (_, i) => `${i + 1}`),
    );
  });

  function bodyTexts(one: PrintedPage): PrintedPage["texts"] {
    return one.texts.filter(({ y }) => y > body.y && y < body.y + body.h);
  }

  it("never part a heading from what it heads", () => {
    for (let filler = 200; filler < 262; filler++) {
      const sheets = set(
        { type: "paragraph", text: "First" },
        { type: "space", height: filler },
        { type: "heading", level: 2, text: "Heading" },
        { type: "heading", level: 3, text: "Smaller" },
        { type: "table", columns: [{ head: "Head" }], rows: [["Row"]] },
      );
      const one = sheets.map((sheet) => said(own(sheet)));
      const home = one.find((all) => all.includes("Heading"));
      for (const word of ["Smaller", "Head", "Row"])
        assert.ok(home?.includes(word), `${filler}: ${JSON.stringify(one)}`);
    }
  });

  it("leave at least two lines of a paragraph at the foot and the head of a page", () => {
    let split = 0;
    for (let filler = 220; filler < 262; filler++) {
      const sheets = set(
        { type: "paragraph", text: "First" },
        { type: "space", height: filler },
        { type: "paragraph", text: sentence(80) },
      );
      const counts = sheets.map((sheet) => said(own(sheet)).filter((text) => text.includes("word")).length);
      assert.equal(said(sheets.flatMap(own)).slice(1).join(" "), sentence(80));
      assert.ok(
        counts.every((count) => count === 0 || count >= 2),
        `${filler}: ${counts.join()}`,
      );
      if (counts.filter((count) => count > 0).length === 2) split++;
    }
    assert.ok(split > 5, `${split}`);
  });

  it("say what a step's number is once, where the step begins", () => {
    const sheets = set({ type: "steps", items: [sentence(900), "two"] });
    assert.ok(sheets.length >= 2);
    const all = said(sheets.flatMap(own)).filter((text) => !/^word/.test(text));
    assert.deepEqual(all, ["1", "2", "two"]);
  });

  it("make a cell smaller for a wide word, and break a word that would get too small", () => {
    const cell = (word: string, width: number): TextItem[] =>
      own(set({ type: "table", columns: [{ width }, {}], rows: [[word, ""]] })[0] ?? { ...emptySheet });
    const [smaller, ...none] = cell("Apfelpfannkuchen", 28);
    assert.equal(none.length, 0);
    assert.ok(smaller && smaller.size < 10 && smaller.size >= 7.5, `${smaller?.size}`);
    // At 7 pt it would fit, but that is more than a quarter less.
    const room = typeface.measure([{ text: "Apfelpfannkuchen" }]) * 7.2 * mmPerPoint + 1.6;
    assert.deepEqual([...new Set(cell("Apfelpfannkuchen", room).map(({ size }) => size))], [10]);
    const broken = cell("Donaudampfschifffahrtsgesellschaft", 28);
    assert.ok(broken.length >= 2);
    assert.deepEqual([...new Set(broken.map(({ size }) => size))], [10]);
    assert.equal(said(broken).join(""), "Donaudampfschifffahrtsgesellschaft");
  });

  const emptySheet: Sheet = { width: 0, height: 0, stock: "paper", label: "", lang: "en", items: [] };

  it("clip nothing, whatever the words and widths", () => {
    const word = fc.oneof(
      fc.stringMatching(/^[a-zäé]{1,40}$/),
      fc.constantFrom("....................................", "«»", "שלום", "漢字仮名交じり文", "a\u00adb", "–"),
    );
    const words = fc.array(word, { maxLength: 12 }).map((all) => all.join(" "));
    const cell = fc.oneof(words, fc.record({ boxes: fc.integer({ min: 0, max: 12 }) }));
    const column = fc.record({
      head: words,
      width: fc.oneof(fc.constant("fit" as const), fc.double({ min: 4, max: 150, noNaN: true })),
      align: fc.constantFrom("start" as const, "middle" as const, "end" as const),
    });
    const table = fc.record({
      type: fc.constant("table" as const),
      columns: fc.array(column, { minLength: 1, maxLength: 6 }),
      rows: fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 12 }),
      rowHeight: fc.integer({ min: 0, max: 300 }),
      rules: fc.constantFrom("rows" as const, "grid" as const, "none" as const),
    });
    const block: fc.Arbitrary<Block> = fc.oneof(
      table,
      fc.record({ type: fc.constant("paragraph" as const), text: words }),
      fc.record({ type: fc.constant("bullets" as const), items: fc.array(words, { maxLength: 4 }) }),
      fc.record({
        type: fc.constant("columns" as const),
        entries: fc.array(words),
        count: fc.integer({ min: 1, max: 5 }),
      }),
      fc.record({ type: fc.constant("heading" as const), level: fc.constantFrom(1 as const, 3 as const), text: words }),
      fc.record({ type: fc.constant("lines" as const), count: fc.integer({ min: 0, max: 60 }) }),
    );
    const furniture = set().at(0)?.items.length ?? 0;
    fc.assert(
      fc.property(fc.array(block, { maxLength: 6 }), (blocks) => {
        for (const sheet of set(...blocks)) {
          const items = sheet.items.slice(furniture);
          assert.deepEqual(outside(items, body), []);
          for (const { x1, x2, y1, y2 } of lines({ items })) {
            assert.ok(Math.min(x1, x2) >= body.x - 0.01 && Math.max(x1, x2) <= body.x + body.w + 0.01);
            assert.ok(Math.min(y1, y2) >= body.y - 0.01 && Math.max(y1, y2) <= body.y + body.h + 0.01);
          }
        }
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  it("print a cell that is higher than a page on as many as it needs", () => {
    const sheets = set({ type: "table", columns: [{ head: "A" }, { head: "B" }], rows: [[sentence(1200), "b"]] });
    assert.ok(sheets.length >= 2);
    const all = said(sheets.flatMap(own));
    assert.equal(all.filter((text) => /word/.test(text)).join(" "), sentence(1200));
    assert.equal(all.filter((text) => text === "A").length, sheets.length);
    assert.equal(all.filter((text) => text === "b").length, 1);
  });

  it("fill columns evenly, downwards, and go on over the page", () => {
    const entries = Array.from({ length: 11 }, (_, i) => `entry ${i + 1}`);
    const [sheet] = set({ type: "columns", entries, count: 3 });
    assert.ok(sheet);
    const columns = [...new Set(own(sheet).map(({ x }) => x))].map((x) => own(sheet).filter((text) => text.x === x));
    assert.deepEqual(columns.map(said), [entries.slice(0, 4), entries.slice(4, 8), entries.slice(8)]);
    const many = Array.from({ length: 500 }, (_, i) => `entry ${i + 1}`);
    const pages = set({ type: "columns", entries: many, count: 3 });
    assert.ok(pages.length >= 3);
    assert.deepEqual(said(pages.flatMap(own)), many);
  });

  it("give rows to write in their height, and boxes to tick", () => {
    const [sheet] = set({
      type: "table",
      columns: [{ head: "Name" }, { head: "Won", align: "middle" }],
      rows: [["", { boxes: 3 }], [""]],
      rowHeight: 11,
      rules: "grid",
    });
    assert.ok(sheet);
    const across = lines(sheet).filter(({ x1, x2, y1, y2 }) => y1 === y2 && Math.abs(x2 - x1) > 100);
    const ys = across.map(({ y1 }) => y1);
    assert.equal(ys.length, 4);
    assert.ok(Math.abs((ys[3] ?? 0) - (ys[2] ?? 0) - 11) < 1e-6 && Math.abs((ys[2] ?? 0) - (ys[1] ?? 0) - 11) < 1e-6);
    assert.equal(lines(sheet).filter(({ weight }) => weight === 0.6).length, 12);
  });

  it("begin a page where one is asked for, and not an empty one", () => {
    const sheets = set(
      { type: "page break" },
      { type: "paragraph", text: "one" },
      { type: "page break" },
      { type: "page break" },
      { type: "space", height: 40 },
      { type: "paragraph", text: "two" },
    );
    assert.deepEqual(
      sheets.map((sheet) => said(own(sheet))),
      [["one"], ["two"]],
    );
    // No space above at the head of a page.
    assert.equal(sheets[0] && own(sheets[0])[0]?.y, sheets[1] && own(sheets[1])[0]?.y);
  });

  it("keep blocks together on one page, but for those that are higher than a page", () => {
    const steps = (count: number): Block => ({
      type: "steps",
      items: Array.from({ length: count }, (_, i) => `s${i}`),
    });
    const together = (count: number) =>
      set(
        { type: "paragraph", text: "First" },
        { type: "space", height: 150 },
        { type: "together", blocks: [{ type: "heading", level: 2, text: "H" }, steps(count)] },
      ).map((sheet) => said(own(sheet)).filter((text) => /^s/.test(text)).length);
    assert.deepEqual(together(20), [0, 20]);
    const many = together(80);
    assert.ok((many[0] ?? 0) > 0);
    assert.equal(
      many.reduce((sum, count) => sum + count, 0),
      80,
    );
  });

  it("give a figure the whole width and its height, and no more than a page has", () => {
    const boxes: Box[] = [];
    const draw = (box: Box) => {
      boxes.push(box);
      return [];
    };
    set({ type: "figure", height: 40, draw }, { type: "figure", height: 4000, draw });
    assert.deepEqual(boxes, [
      { x: body.x, y: body.y, w: body.w, h: 40 },
      { x: body.x, y: body.y, w: body.w, h: body.h },
    ]);
  });

  it("set text that reads from right to left at the right edge, its lines in its own direction", () => {
    const hebrew = "שלום";
    const [sheet] = set({ type: "paragraph", text: `${hebrew} ${sentence(30)}` });
    assert.ok(sheet);
    for (const { anchor, x, runs } of own(sheet)) {
      assert.equal(anchor, "end");
      assert.equal(x, body.x + body.w);
      assert.match(plain(runs), /^[\u05d0-\u05ea\u200f]/);
    }
  });

  it("keep the place in the unit and the language with each line", () => {
    const source = { start: 3, end: 90 };
    const [sheet] = set({ type: "bullets", items: [{ runs: [{ text: sentence(40) }], source, lang: "pt" }] });
    const set2 = sheet ? own(sheet).filter(({ runs }) => plain(runs).includes("word")) : [];
    assert.ok(set2.length > 1);
    for (const item of set2) assert.deepEqual([item.source, item.lang], [source, "pt"]);
  });

  it("make a box's blocks as large as fits, and say when they don't", () => {
    const box = { x: 20, y: 30, w: 60, h: 40 };
    const blocks: Block[] = [{ type: "paragraph", text: sentence(60) }];
    const fitted = setInBox(blocks, box, typeface, { size: 14, least: 4 });
    assert.ok(fitted.fits && fitted.size < 14 && fitted.size >= 4);
    assert.deepEqual(outside(fitted.items, box), []);
    const larger = setInBox(blocks, box, typeface, { size: fitted.size + 0.25, least: fitted.size + 0.25 });
    assert.equal(larger.fits, false);
    assert.equal(setInBox([{ type: "paragraph", text: "Hi" }], box, typeface, { size: 14 }).size, 14);
  });

  it("put as many slips on a page as fit, each drawn inside its cuts", () => {
    const boxes: [number, Box][] = [];
    const slip = {
      w: 90,
      h: 60,
      draw: (box: Box, index: number) => {
        boxes.push([index, box]);
        return [];
      },
    };
    const sheets = setSlips(slip, 11, page);
    assert.equal(sheets.length, 2); // 2 × 4 a page in 190 × 263 mm
    assert.deepEqual(
      boxes.map(([index]) => index),
      Array.from({ length: 11 }, (_, i) => i),
    );
    assert.deepEqual(boxes[1]?.[1], { x: 109, y: 20, w: 82, h: 52 });
    const cuts = sheets.map(({ items }) => items.filter((item) => item.type === "line" && item.role === "cut"));
    assert.deepEqual(
      cuts.map((all) => all.length),
      [8, 6],
    );
    for (const cut of cuts.flat()) assert.ok(cut.type === "line" && cut.weight === 0.25);
  });

  it("make the rows of slips lower, but not too low, where that saves a sheet", () => {
    const slips = (rows: number, count: number): { sheets: number; row: number } => {
      const drawn: number[] = [];
      const blocks = (row: number): Block[] => {
        drawn.push(row);
        return [{ type: "table", rowHeight: row, columns: [{}], rows: Array.from({ length: rows }, () => [""]) }];
      };
      const slip = { blocks, row: { usual: 7.5, least: 6.5 }, across: 2, padding: 5, size: 9 };
      const { length } = setWritingSlips(slip, count, page, typeface);
      return { sheets: length, row: drawn.at(-1) ?? 0 };
    };
    // The body is 263 mm high: two slips of 121.5 mm and the rest of the table's space fit, of 130 mm and more only one.
    assert.deepEqual(slips(16, 40), { sheets: 10, row: 7.5 });
    const { sheets, row } = slips(17, 40);
    assert.ok(sheets === 10 && row < 7.5 && row >= 6.5, `${sheets} sheets, rows of ${row} mm`);
    assert.deepEqual(slips(20, 40), { sheets: 20, row: 7.5 });
    // Two slips are on one sheet as they are.
    assert.deepEqual(slips(17, 2), { sheets: 1, row: 7.5 });
  });

  it("leave no item of a list, no row of columns and no fact alone at the foot or the head of a page", () => {
    const items = ["one", "two", "three", "four", "five"];
    const entries = Array.from({ length: 12 }, (_, i) => `entry${i}`);
    const rows = items.map((label) => ({ label, value: `value of ${label}` }));
    const kinds: readonly (readonly [Block, number])[] = [
      [{ type: "steps", items }, 5],
      [{ type: "bullets", items }, 5],
      [{ type: "columns", count: 2, entries }, 6],
      [{ type: "facts", rows }, 5],
    ];
    for (const [block, count] of kinds) {
      let parted = 0;
      for (let height = 200; height < 262; height += 0.5) {
        const pages = set(
          { type: "paragraph", text: "Above" },
          { type: "space", height },
          { type: "heading", level: 3, text: "Head" },
          block,
        );
        const named = pages.map((sheet) => said(own(sheet)).filter((text) => !["Above", "Head", "•"].includes(text)));
        const heads = pages.filter((sheet) => said(own(sheet)).at(-1) === "Head");
        assert.deepEqual(heads, [], `${block.type} at ${height}`);
        // A row of columns has two texts, a fact and a step have their label as well.
        const lines = pages.map(
          (sheet, i) =>
            new Set(
              own(sheet)
                .filter(({ runs }) => named[i]?.includes(plain(runs)))
                .map(({ y }) => y.toFixed(2)),
            ).size,
        );
        const [first = 0, second = 0] = lines;
        assert.equal(first + second, count, `${block.type} at ${height}`);
        if (first > 0 && second > 0) {
          parted++;
          assert.ok(first >= 2 && second >= 2, `${block.type} at ${height}: ${first} and ${second}`);
        }
      }
      assert.equal(parted > 0, block.type !== "facts", block.type);
    }
  });
});
