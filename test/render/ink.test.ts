import assert from "node:assert/strict";
import type { Browser, Page } from "playwright-core";
import type { Sheet, TextItem } from "../../src/page/sheet";
import { renderPdf } from "../../src/render/pdf";
import { renderSvg } from "../../src/render/svg";
import { mmPerPoint } from "../../src/text/points";
import type { Face, Typeface } from "../../src/text/typeface";
import { testAssets, testTypeface } from "../support/typeface";
import { middleOf, wordSheet } from "./sheets";
import { openBrowser, type Raster, rasterOf } from "./tools";

/*
 * Text that reads back exactly may still have lost its glyphs, so the ink itself is weighed: the PDF as poppler draws
 * it, the SVG as Chromium draws it, and the same words set by Chromium from the font files, which knows nothing of us.
 */

const dpi = 150;
const scale = dpi / 25.4;
/** Share by which the ink of a word may differ between two programs' smoothing. */
const tolerance = 0.06;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A box in pixels that holds the item's ink and nothing else's. */
function boxOf(item: TextItem, typeface: Typeface): Box {
  const width = typeface.measure(item.runs);
  const [x, y] = middleOf(item, width, 0.3);
  const along = (width / 2 + 0.3) * item.size * mmPerPoint;
  const across = 1 * item.size * mmPerPoint;
  const [w, h] = item.turn % 2 ? [across, along] : [along, across];
  const px = (mm: number) => Math.round(mm * scale);
  return { left: px(x - w), top: px(y - h), right: px(x + w), bottom: px(y + h) };
}

/** Black in a box, in pixels. */
function inkIn({ width, grey }: Raster, box: Box): number {
  let ink = 0;
  for (let y = box.top; y < box.bottom; y++) {
    for (let x = box.left; x < box.right; x++) ink += 1 - (grey[y * width + x] ?? 255) / 255;
  }
  return ink;
}

/** Centre of gravity of the black in a box, in pixels. */
function middleOfInk({ width, grey }: Raster, box: Box): readonly [number, number] {
  let [ink, sumX, sumY] = [0, 0, 0];
  for (let y = box.top; y < box.bottom; y++) {
    for (let x = box.left; x < box.right; x++) {
      const black = 1 - (grey[y * width + x] ?? 255) / 255;
      ink += black;
      sumX += black * x;
      sumY += black * y;
    }
  }
  return [sumX / ink, sumY / ink];
}

function isText(item: Sheet["items"][number]): item is TextItem {
  return item.type === "text";
}

describe("ink", () => {
  const sheet = wordSheet();
  const texts = sheet.items.filter(isText);
  const size = { width: Math.ceil(sheet.width * scale), height: Math.ceil(sheet.height * scale) };
  let typeface: Typeface;
  let browser: Browser;
  let page: Page;
  let boxes: readonly Box[];

  before(async function () {
    this.timeout(60_000);
    typeface = await testTypeface();
    boxes = texts.map((item) => boxOf(item, typeface));
    browser = await openBrowser();
    page = await browser.newPage();
  });
  after(() => browser?.close());

  const printed = async (face: Typeface): Promise<Raster> =>
    rasterOf(await renderPdf([sheet], face, new Map(), { title: "Ink", lang: "pt" }), dpi);

  /** Draws on a canvas of the sheet's size with a script for the page, and reads its grey values. */
  async function drawn(script: string, data: unknown): Promise<Raster> {
    const text = await page.evaluate(
      `(async () => {
        const data = ${JSON.stringify(data)};
        const canvas = new OffscreenCanvas(${size.width}, ${size.height});
        const context = canvas.getContext("2d");
        context.fillStyle = "#fff";
        context.fillRect(0, 0, canvas.width, canvas.height);
        context.fillStyle = "#000";
        ${script}
        const { data: pixels } = context.getImageData(0, 0, canvas.width, canvas.height);
        let text = "";
        for (let i = 0; i < pixels.length; i += 4) text += String.fromCharCode(pixels[i]);
        return text;
      })()`,
    );
    return { ...size, grey: Uint8Array.from(Buffer.from(String(text), "latin1")) };
  }

  function drawnSvg(): Promise<Raster> {
    return drawn(
      `const image = new Image();
       image.src = URL.createObjectURL(new Blob([data], { type: "image/svg+xml" }));
       await image.decode();
       context.drawImage(image, 0, 0, ${sheet.width * scale}, ${sheet.height * scale});`,
      renderSvg(sheet, typeface, new Map()),
    );
  }

  function drawnByBrowser(): Promise<Raster> {
    const fonts = Object.entries(testAssets().fonts).map(([name, bytes]) => [
      name,
      Buffer.from(bytes).toString("base64"),
    ]);
    const words = texts.map((item) => {
      const [run] = item.runs;
      const face = run?.bold ? (run.italic ? "boldItalic" : "bold") : run?.italic ? "italic" : "regular";
      const px = item.size * mmPerPoint * scale;
      return { ...item, face, px, text: run?.text, x: item.x * scale, y: item.y * scale };
    });
    return drawn(
      `for (const [name, base64] of data.fonts) {
         const face = new FontFace("test-" + name, "url(data:font/ttf;base64," + base64 + ")");
         await face.load();
         document.fonts.add(face);
       }
       for (const { face, px, text, x, y, turn, anchor } of data.words) {
         context.setTransform(1, 0, 0, 1, x, y);
         context.rotate((turn * Math.PI) / 2);
         context.font = px + "px test-" + face;
         context.textAlign = anchor === "middle" ? "center" : anchor;
         context.fillText(text, 0, 0);
       }`,
      { fonts, words },
    );
  }

  /** Texts whose ink in one drawing is not that in another. */
  function differing(one: Raster, other: Raster): readonly string[] {
    return texts.flatMap((item, i) => {
      const box = boxes[i];
      if (!box) return [];
      const [a, b] = [inkIn(one, box), inkIn(other, box)];
      return Math.abs(a / b - 1) <= tolerance ? [] : [`${item.runs[0]?.text} at turn ${item.turn}: ${a} for ${b}`];
    });
  }

  it("of every text in the PDF is that which a browser draws from the font", async () => {
    const [ours, theirs] = [await printed(typeface), await drawnByBrowser()];
    assert.deepEqual(differing(ours, theirs), []);
    const all = boxes.reduce((sum, box) => sum + inkIn(theirs, box), 0);
    assert.ok(all > 5000, `${all} pixels`);
  }).timeout(60_000);

  it("of every text in the SVG is that which a browser draws from the font", async () => {
    assert.deepEqual(differing(await drawnSvg(), await drawnByBrowser()), []);
  }).timeout(60_000);

  it("of every text lies at the same place in PDF and SVG", async () => {
    const [pdf, svg] = [await printed(typeface), await drawnSvg()];
    texts.forEach((item, i) => {
      const box = boxes[i];
      assert.ok(box);
      const [a, b] = [middleOfInk(pdf, box), middleOfInk(svg, box)];
      // A pixel is 0.17 mm, and poppler moves glyphs on to whole ones.
      const apart = Math.hypot(a[0] - b[0], a[1] - b[1]) / scale;
      assert.ok(apart < 0.2, `${item.runs[0]?.text} at turn ${item.turn}: ${apart} mm`);
    });
  }).timeout(60_000);

  it("is missed where a glyph is lost from the embedded font", async () => {
    const lost = typeface.shape([{ text: "ἄ" }]).glyphs[0]?.id ?? 0;
    const { bold } = typeface.faces;
    const broken: Face = { ...bold, subset: (glyphs) => bold.subset(glyphs.filter((glyph) => glyph !== lost)) };
    const regular: Face = { ...typeface.faces.regular, subset: broken.subset };
    const faces = { ...typeface.faces, regular, bold: broken };
    const without: Typeface = Object.create(typeface, { faces: { value: faces } });
    const found = differing(await printed(without), await printed(typeface));
    assert.ok(
      found.some((text) => text.startsWith("ἄνθρωπος")),
      found.join("\n"),
    );
  }).timeout(60_000);

  it("of a line is as wide as a browser measures it", async () => {
    const text = "O disco está quente? Tiếng Việt: щастя, ἄνθρωπος";
    const base64 = Buffer.from(testAssets().fonts.regular).toString("base64");
    const width = await page.evaluate(
      `(async () => {
        const face = new FontFace("test-width", "url(data:font/ttf;base64,${base64})");
        await face.load();
        document.fonts.add(face);
        const context = new OffscreenCanvas(9, 9).getContext("2d");
        context.font = "100px test-width";
        return context.measureText(${JSON.stringify(text)}).width;
      })()`,
    );
    assert.ok(Math.abs(Number(width) - typeface.measure([{ text }]) * 100) < 0.5, `${width}`);
  });
});
