import assert from "node:assert/strict";
import type { PDFDocumentProxy } from "pdfjs-dist";
import type { Sheet, TextItem } from "../../src/page/sheet";
import { renderPdf } from "../../src/render/pdf";
import type { Typeface } from "../../src/text/typeface";
import { packageFile, testTypeface } from "../support/typeface";
import { middleOf, png, sheetOf, textItem, wordSheet, words } from "./sheets";
import { rasterOf, rawText, wordsOf } from "./tools";

const points = 72 / 25.4;
const info = { title: "O café do porto — tiles", lang: "pt" };

describe("PDF", () => {
  let typeface: Typeface;
  let pdf: Uint8Array;
  let read: PDFDocumentProxy;
  const sheet = wordSheet();
  const texts = sheet.items.filter((item): item is TextItem => item.type === "text");
  const print = (sheets: readonly Sheet[], pictures: ReadonlyMap<string, Uint8Array> = new Map()) =>
    renderPdf(sheets, typeface, pictures, info);

  async function open(bytes: Uint8Array): Promise<PDFDocumentProxy> {
    const { getDocument, VerbosityLevel } = await import("pdfjs-dist/legacy/build/pdf.mjs");
    return getDocument({ data: bytes.slice(), verbosity: VerbosityLevel.ERRORS }).promise;
  }

  before(async () => {
    typeface = await testTypeface();
    pdf = await print([sheet]);
    read = await open(pdf);
  });

  it("gives pdf.js every text at its place and turn, as written", async () => {
    const content = await (await read.getPage(1)).getTextContent();
    const parts = content.items.flatMap((item) => ("str" in item && item.str ? [item] : []));
    for (const text of texts) {
      const item = parts.shift();
      assert.ok(item);
      assert.equal(item.str.normalize("NFC"), text.runs[0]?.text.normalize("NFC"));
      const [a, b, , , x, y] = item.transform as readonly number[];
      const before = { start: 0, middle: 0.5, end: 1 }[text.anchor] * typeface.measure(text.runs) * text.size;
      const [cos, sin] = [Math.cos((text.turn * Math.PI) / 2), -Math.sin((text.turn * Math.PI) / 2)];
      const expected = [
        cos * text.size,
        sin * text.size,
        text.x * points - before * cos,
        (297 - text.y) * points - before * sin,
      ];
      [a, b, x, y].forEach((value, k) => {
        assert.ok(
          Math.abs((value ?? NaN) - (expected[k] ?? NaN)) < 0.01,
          `${item.str}: ${[a, b, x, y]} for ${expected}`,
        );
      });
    }
    assert.equal(parts.length, 0);
  });

  it("gives poppler every text at its place and turn, as written", () => {
    const found = wordsOf(pdf);
    for (const item of texts) {
      const line = typeface.shape(item.runs);
      const [x, y] = middleOf(item, line.width, 0.3);
      const here = found.filter(
        (word) =>
          word.left < x * points && x * points < word.right && word.top < y * points && y * points < word.bottom,
      );
      assert.deepEqual(
        here.map((word) => word.text.normalize("NFC")),
        [line.text.normalize("NFC")],
        `turn ${item.turn}`,
      );
    }
    assert.equal(found.length, words.length * 4);
  });

  it("keeps reading order, spaces and text from right to left", async () => {
    const bytes = await print([
      sheetOf([
        textItem("first line here", 20, 200),
        textItem("second, printed above", 20, 30),
        textItem([{ text: "um " }, { text: "disco", bold: true }, { text: ", por favor" }], 20, 60),
        textItem("she said שלום twice", 20, 80),
      ]),
    ]);
    assert.deepEqual(rawText(bytes).replace(/\f/g, "").trim().split("\n"), [
      "first line here",
      "second, printed above",
      "um disco, por favor",
      "she said \u202bשלום\u202c twice",
    ]);
  });

  it("keeps words with marks of their own whole", async () => {
    const texts = ["q\u0323\u0308ed ο\u0323", "кни\u0301га: ма\u0301ма", "ẹ\u0301kọ\u0301"];
    const bytes = await print([sheetOf(texts.map((text, i) => textItem(text, 20, 20 + 20 * i)))]);
    assert.deepEqual(rawText(bytes).replace(/\f/g, "").trim().split("\n"), texts);
    assert.deepEqual(
      wordsOf(bytes).map((word) => word.text),
      texts.flatMap((text) => text.split(" ")),
    );
  });

  it("names a form that only the shaper knows by its letter", async () => {
    const [dotless] = typeface.shape([{ text: "j\u0301" }]).glyphs;
    assert.notEqual(dotless?.id, typeface.faces.regular.glyph(0x6a), "the dot should give way to the accent");
    const bytes = await print([sheetOf([textItem("j\u0301a", 20, 20)])]);
    assert.deepEqual(
      wordsOf(bytes).map((word) => word.text),
      ["j\u0301a"],
    );
    const content = await (await (await open(bytes)).getPage(1)).getTextContent();
    assert.equal(content.items.map((item) => ("str" in item ? item.str : "")).join(""), "j\u0301a");
  });

  it("has pages of exactly the sheet's size", async () => {
    assert.deepEqual((await read.getPage(1)).view, [0, 0, 595.276, 841.89]);
    const letter = await open(await print([sheetOf([], { width: 279.4, height: 215.9 })]));
    assert.deepEqual((await letter.getPage(1)).view, [0, 0, 792, 612]);
  });

  it("asks not to be scaled, names its language and title, and shows the title", async () => {
    assert.deepEqual(await read.getViewerPreferences(), { DisplayDocTitle: true, PrintScaling: "None" });
    const { info: entries } = await read.getMetadata();
    assert.ok("Title" in entries && "Language" in entries);
    assert.equal(entries.Title, info.title);
    assert.equal(entries.Language, "pt");
  });

  it("labels its pages", async () => {
    const two = await open(await print([sheetOf([], { label: "Cards 1" }), sheetOf([], { label: "Cards 2, costas" })]));
    assert.deepEqual(await two.getPageLabels(), ["Cards 1", "Cards 2, costas"]);
  });

  it("has a structure tree of paragraphs and figures in reading order", async () => {
    const picture = { type: "picture", key: "a", alt: "uma colher", x: 9, y: 9, w: 9, h: 9, turn: 0 } as const;
    const line = { type: "line", role: "cut", x1: 0, y1: 9, x2: 9, y2: 9, weight: 0.25 } as const;
    const mixed = sheetOf([line, textItem("um", 20, 20), line, picture, textItem("two", 20, 40, { lang: "en" })]);
    const page = await (await open(await print([mixed], new Map([["a", png([[0]])]])))).getPage(1);
    const tree = await page.getStructTree();
    const flat: string[] = [];
    const walk = (node: { role?: string; alt?: string; lang?: string; children?: readonly object[] }): void => {
      if (node.role) flat.push([node.role, node.alt, node.lang].filter(Boolean).join(" "));
      for (const child of node.children ?? []) walk(child);
    };
    walk(tree);
    assert.deepEqual(flat, ["Root", "Document", "Sect pt", "P", "Figure uma colher", "P en"]);
  });

  it("is the same bytes for the same input, and another for another text", async () => {
    assert.deepEqual(await print([wordSheet()]), pdf);
    const { openTypeface } = await import("../../src/text/open");
    const { testAssets } = await import("../support/typeface");
    const fresh = await openTypeface(testAssets());
    assert.deepEqual(await renderPdf([sheet], fresh, new Map(), info), pdf);
    const id = (bytes: Uint8Array) => /\/ID \[ ?<([0-9A-F]{32})>/.exec(Buffer.from(bytes).toString("latin1"))?.[1];
    const other = await print([sheetOf([textItem("galões", 20, 20)])]);
    assert.ok(id(pdf) && id(other));
    assert.notEqual(id(pdf), id(other));
    assert.doesNotMatch(Buffer.from(pdf).toString("latin1"), /Date|D:20/);
  });

  it("embeds only the faces in use, each cut down", async () => {
    const bytes = await print([sheetOf([textItem([{ text: "so", bold: true }], 20, 20)])]);
    const ops = await (await (await open(bytes)).getPage(1)).getOperatorList();
    assert.ok(ops.fnArray.length > 0);
    assert.ok(bytes.length < 6000, `${bytes.length} bytes`);
    const whole = packageFile("@expo-google-fonts/noto-sans/700Bold/NotoSans_700Bold.ttf").length;
    assert.ok(pdf.length < whole / 10, `${pdf.length} bytes`);
  });

  it("draws a line of 100 mm in true length, across and down", async () => {
    const bytes = await print([
      sheetOf([
        { type: "line", role: "mark", x1: 50, y1: 40, x2: 150, y2: 40, weight: 2 },
        { type: "line", role: "mark", x1: 30, y1: 60, x2: 30, y2: 160, weight: 2 },
      ]),
    ]);
    const dpi = 600;
    const { width, height, grey } = rasterOf(bytes, dpi);
    const ink = (x: number, y: number) => 1 - (grey[y * width + x] ?? 255) / 255;
    const pixel = (mm: number) => Math.round((mm / 25.4) * dpi);
    let across = 0;
    for (let x = 0; x < width; x++) across += ink(x, pixel(40));
    let down = 0;
    for (let y = 0; y < height; y++) down += ink(pixel(30), y);
    for (const length of [across, down]) {
      const mm = (length / dpi) * 25.4;
      assert.ok(Math.abs(mm - 100) < 0.1, `${mm} mm`);
    }
  });

  it("draws dashes, shapes in grey, and pictures turned about their centre", async () => {
    // Left half black; turned by a quarter, the upper half is.
    const half = png([[0, 255]]);
    const bytes = await print(
      [
        sheetOf([
          {
            type: "shape",
            points: [
              [20, 20],
              [40, 20],
              [40, 40],
              [20, 40],
            ],
            grey: 0.5,
          },
          { type: "line", role: "cut", x1: 20, y1: 60, x2: 120, y2: 60, weight: 3, dash: [5, 5] },
          { type: "picture", key: "half", alt: "", x: 20, y: 80, w: 40, h: 20, turn: 0 },
          { type: "picture", key: "half", alt: "", x: 80, y: 80, w: 40, h: 20, turn: 1 },
        ]),
      ],
      new Map([["half", half]]),
    );
    const { width, grey } = rasterOf(bytes, 127);
    const at = (x: number, y: number) => grey[Math.round(y * 5) * width + Math.round(x * 5)] ?? -1;
    assert.ok(Math.abs(at(30, 30) - 128) < 2);
    assert.deepEqual(
      [at(22.5, 60), at(27.5, 60), at(32.5, 60), at(37.5, 60)].map((v) => v < 128),
      [true, false, true, false],
    );
    assert.deepEqual([at(22, 90), at(38, 82), at(42, 90), at(58, 98)], [0, 0, 255, 255]);
    // The second box is 40 × 20 about (100, 90); turned, it covers 90…110 by 70…110.
    assert.deepEqual([at(92, 72), at(108, 88), at(92, 92), at(108, 108), at(85, 90)], [0, 0, 255, 255, 255]);
  });

  it("leaves out nothing silently: a picture without bytes is refused", async () => {
    const item = { type: "picture", key: "img/lost.png", alt: "", x: 0, y: 0, w: 9, h: 9, turn: 0 } as const;
    await assert.rejects(print([sheetOf([item])]), { name: "RangeError", message: /img\/lost\.png/ });
  });

  it("makes a page of an empty sheet and a file of none", async () => {
    assert.equal((await open(await print([sheetOf([])]))).numPages, 1);
  });

  it("writes no minus zero and no exponent", async () => {
    const { pageContent } = await import("../../src/render/pdf-content");
    const { FontUse } = await import("../../src/render/pdf-font");
    const fonts = new FontUse(typeface.faces);
    for (const text of texts) fonts.note(typeface.shape(text.runs));
    const tiny = textItem("q\u0308", 1e-9, 297 - 1e-9, { turn: 2 });
    fonts.note(typeface.shape(tiny.runs));
    const { operators } = pageContent(sheetOf([...texts, tiny]), typeface, fonts, new Map());
    assert.doesNotMatch(operators, /-0(?![.\d])|e-|NaN|Infinity/);
    assert.match(operators, /\n0 -1 1 0 |BT 0 -1 1 0 /);
  });
});
