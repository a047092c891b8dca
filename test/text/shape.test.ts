import assert from "node:assert/strict";
import * as fc from "fast-check";
import { plain, type Run } from "../../src/base/run";
import { openTypeface } from "../../src/text/open";
import type { FaceName, Typeface } from "../../src/text/typeface";
import { testAssets, testTypeface } from "../support/typeface";

/** Advance of a character read from the font's own cmap (format 4) and hmtx, independently of the product's code. */
function advanceOf(font: Uint8Array, character: string): number {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const table = (name: string): number => {
    for (let i = 0; i < view.getUint16(4); i++) {
      const at = 12 + 16 * i;
      const tag = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));
      if (tag === name) return view.getUint32(at + 8);
    }
    throw new Error(name);
  };
  const cmap = table("cmap");
  let subtable = 0;
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const at = cmap + view.getUint32(cmap + 4 + 8 * i + 4);
    if (view.getUint16(at) === 4) subtable = at;
  }
  const segments = view.getUint16(subtable + 6) / 2;
  const code = character.charCodeAt(0);
  for (let i = 0; i < segments; i++) {
    if (view.getUint16(subtable + 14 + 2 * i) < code) continue;
    const start = view.getUint16(subtable + 16 + 2 * segments + 2 * i);
    const delta = view.getInt16(subtable + 16 + 4 * segments + 2 * i);
    const offsetAt = subtable + 16 + 6 * segments + 2 * i;
    const offset = view.getUint16(offsetAt);
    const direct = (code + delta) & 0xffff;
    const glyph = offset === 0 ? direct : view.getUint16(offsetAt + offset + 2 * (code - start));
    const metrics = view.getUint16(table("hhea") + 34);
    return view.getUint16(table("hmtx") + 4 * Math.min(glyph, metrics - 1));
  }
  throw new Error(character);
}

const faces: readonly (readonly [FaceName, { bold?: boolean; italic?: boolean }])[] = [
  ["regular", {}],
  ["bold", { bold: true }],
  ["italic", { italic: true }],
  ["boldItalic", { bold: true, italic: true }],
];

describe("shaping", () => {
  let typeface: Typeface;
  before(async () => {
    typeface = await testTypeface();
  });

  const width = (text: string): number => typeface.measure([{ text }]);

  for (const [name, style] of faces) {
    it(`adds up the font's own advances where nothing is kerned: ${name}`, () => {
      const text = "mniu";
      const sum = [...text].reduce((total, character) => total + advanceOf(testAssets().fonts[name], character), 0);
      assert.ok(Math.abs(typeface.measure([{ text, ...style }]) - sum / 1000) < 1e-9);
    });
  }

  it("kerns", () => {
    const apart = [..."AVATAR"].reduce((total, character) => total + width(character), 0);
    assert.ok(width("AVATAR") < apart - 0.1);
  });

  it("gives composed and decomposed text the same width and whole graphemes as clusters", () => {
    for (const text of ["Tiếng Việt", "ἄνθρωπος ᾧ", "щастя її й", "São João"]) {
      assert.ok(Math.abs(width(text.normalize("NFC")) - width(text.normalize("NFD"))) < 1e-9, text);
      const shaped = typeface.shape([{ text: text.normalize("NFD") }]);
      const clusters = [...new Map(shaped.glyphs.map((glyph) => [glyph.cluster, glyph.clusterText])).values()];
      const graphemes = [...new Intl.Segmenter("und").segment(text.normalize("NFD"))].map(({ segment }) => segment);
      assert.deepEqual(clusters, graphemes);
      assert.ok(
        shaped.glyphs.every((glyph) => glyph.id !== 0),
        text,
      );
    }
  });

  it("sets marks that have no composed form over their letter, without width", () => {
    const shaped = typeface.shape([{ text: "q\u0308\u0323" }]);
    assert.equal(shaped.glyphs.length, 3);
    assert.ok(Math.abs(shaped.width - width("q")) < 1e-9);
    const [letter, ...marks] = shaped.glyphs;
    assert.ok(letter);
    for (const mark of marks) {
      const box = typeface.faces[mark.face].box(mark.id);
      assert.ok(box);
      const middle = mark.x + (box[0] + box[2]) / 2000;
      assert.ok(middle > letter.x && middle < letter.x + letter.advance, `mark at ${middle}`);
    }
  });

  it("puts text from right to left in visual order", () => {
    const hebrew = typeface.shape([{ text: "שלום" }]);
    assert.deepEqual(
      hebrew.glyphs.map((glyph) => glyph.clusterText),
      ["ם", "ו", "ל", "ש"],
    );
    const visual = (text: string): string =>
      typeface
        .shape([{ text }])
        .glyphs.map((glyph) => glyph.clusterText)
        .join("");
    assert.equal(visual("mug שלום 12"), "mug 12 םולש");
    assert.equal(visual("שלום mug 12"), "mug 12 םולש");
    assert.equal(visual("שלום mug אב"), "בא mug םולש");
  });

  it("keeps styles apart within a line and puts them side by side", () => {
    const shaped = typeface.shape([{ text: "a " }, { text: "b", bold: true }, { text: "c", italic: true }]);
    assert.deepEqual(
      shaped.glyphs.map((glyph) => glyph.face),
      ["regular", "regular", "bold", "italic"],
    );
    const parts = width("a ") + typeface.measure([{ text: "b", bold: true }]);
    assert.ok(Math.abs((shaped.glyphs[3]?.x ?? 0) - parts) < 1e-9);
  });

  it("treats a tab or a line break inside a line as a space", () => {
    assert.equal(width("a\tb\nc"), width("a b c"));
    assert.deepEqual(typeface.missing("a\tb\r\nc\u200b\u00ad\u2060\u000b\u0085\u2028"), []);
    assert.deepEqual(typeface.missing("gr\ufffdn, \u0084rot\u0093"), ["\ufffd", "\u0084", "\u0093"]);
  });

  it("shapes a text once", () => {
    assert.equal(typeface.shape([{ text: "once" }]), typeface.shape([{ text: "once" }]));
    assert.notEqual(width("once"), typeface.measure([{ text: "once", bold: true }]));
  });

  it("names each grapheme without a glyph once, in order", () => {
    assert.deepEqual(typeface.missing("o copo 漢字, שׁ 漢 👩‍🏫 é x\u0308 ẍ"), ["漢", "字", "שׁ", "👩‍🏫"]);
    assert.deepEqual(typeface.missing("Ça va ? l’été « œuf » ¿Qué? ñ ß € – … Ж ѝ ᾧ ễ"), []);
  });

  it("knows how far ink reaches", () => {
    const flat = typeface.ink([{ text: "x" }]);
    assert.equal(flat.bottom, 0);
    assert.ok(Math.abs(flat.top - typeface.xHeight) < 0.005);
    const tall = typeface.ink([{ text: "Ễg" }]);
    assert.ok(tall.top > typeface.capHeight + 0.15 && tall.bottom < -0.2);
    assert.deepEqual(typeface.ink([{ text: " " }]), { left: 0, right: 0, bottom: 0, top: 0 });
  });

  it("reads measures and names from the fonts", () => {
    const { regular, bold, boldItalic } = typeface.faces;
    assert.equal(typeface.xHeight, 0.536);
    assert.equal(typeface.capHeight, 0.714);
    assert.equal(typeface.ascent, 1.069);
    assert.equal(typeface.descent, 0.293);
    assert.equal(regular.postScriptName, "NotoSans-Regular");
    assert.equal(boldItalic.postScriptName, "NotoSans-BoldItalic");
    assert.equal(bold.weight, 700);
    assert.equal(regular.italicAngle, 0);
    assert.ok(boldItalic.italicAngle < -5);
  });

  it("refuses what is no TrueType font with a sentence", async () => {
    const assets = testAssets();
    const instead = (bytes: readonly number[] | Uint8Array) =>
      openTypeface({ ...assets, fonts: { ...assets.fonts, bold: Uint8Array.from(bytes) } });
    await assert.rejects(instead([]), { name: "RangeError", message: /not a TrueType font/ });
    await assert.rejects(instead([..."OTTO________"].map((c) => c.charCodeAt(0))), { message: /PostScript outlines/ });
    await assert.rejects(instead([..."wOF2________"].map((c) => c.charCodeAt(0))), { message: /web font/ });
    await assert.rejects(instead(assets.fonts.bold.slice(0, 5000)), { name: "RangeError", message: /cut short/ });
  });

  const told = (runs: readonly Run[], start: number, end: number): number | undefined =>
    typeface.stretches(runs)(start, end);
  const part = (runs: readonly Run[], start: number, end: number): Run[] => {
    let at = 0;
    return runs.flatMap((run) => {
      const text = run.text.slice(Math.max(0, start - at), Math.max(0, end - at));
      at += run.text.length;
      return text === "" ? [] : [{ ...run, text }];
    });
  };

  it("tells the width of any stretch to the last digit as if it stood alone, or leaves it to shaping", () => {
    const characters = [
      ..."aAeéoTVWYfilstyz  .,:!?()-'’“”…–/&12€",
      ..."ñõâßğÐẽ",
      ..."γΩάϊ",
      ..."щЇіґъ",
      "e\u0301",
      "n\u0303",
      "и\u0306",
      "\u00a0",
      "\u202f",
      "\t",
      "\u00ad",
      "\u200b",
      "א",
      "ب",
      "字",
      "ก",
      "🌧",
      "\u{10400}",
    ];
    const run = fc.record({
      text: fc.oneof(
        fc.array(fc.constantFrom(...characters.slice(0, 46)), { minLength: 1, maxLength: 12 }),
        fc.array(fc.constantFrom(...characters), { minLength: 1, maxLength: 8 }),
      ),
      bold: fc.boolean(),
      italic: fc.boolean(),
    });
    const runs = fc.array(
      run.map(({ text, ...style }) => ({ ...style, text: text.join("") })),
      { minLength: 1, maxLength: 3 },
    );
    let answers = 0;
    fc.assert(
      fc.property(runs, fc.nat(), fc.nat(), (line, a, b) => {
        const { length } = plain(line);
        const [start, end] = [a % length, (b % length) + 1];
        if (start >= end) return;
        const width = told(line, start, end);
        if (width === undefined) return;
        answers++;
        assert.equal(width, typeface.measure(part(line, start, end)));
      }),
      { numRuns: 4000 },
    );
    assert.ok(answers > 500, `${answers} answers`);
  });

  it("tells no width of a stretch that would change if it stood alone", () => {
    const kerned = typeface.shape([{ text: "To" }]);
    assert.ok(kerned.width < width("T") + width("o"));
    assert.equal(told([{ text: "To go" }], 1, 2), undefined, "kerned");
    assert.equal(told([{ text: "e\u0301" }], 1, 2), undefined, "a mark on its letter");
    assert.equal(told([{ text: "de 12" }], 3, 5), undefined, "digits alone have no script");
    assert.equal(told([{ text: "где go" }], 0, 3), undefined, "two scripts");
    assert.equal(told([{ text: "بيت كبير" }], 0, 3), undefined, "letters that join");
    assert.equal(told([{ text: "do\u00adce" }], 0, 2), undefined, "a break mark");
    assert.equal(told([{ text: "To go" }], 3, 5), width("go"));
  });
});
