import assert from "node:assert/strict";
import type { Browser, Page } from "playwright-core";
import { renderPdf } from "../../src/render/pdf";
import { renderSvg } from "../../src/render/svg";
import type { Typeface } from "../../src/text/typeface";
import { noted } from "../support/jpeg";
import { testTypeface } from "../support/typeface";
import { sheetOf } from "./sheets";
import { openBrowser, rasterOf } from "./tools";

describe("pictures from a camera", () => {
  let typeface: Typeface;
  let browser: Browser;
  let page: Page;
  let jpeg: Uint8Array;

  before(async function () {
    this.timeout(60_000);
    typeface = await testTypeface();
    browser = await openBrowser();
    page = await browser.newPage();
    // Quarters of four greys, so that every turn and mirror image looks different.
    const text = await page.evaluate(`(async () => {
      const canvas = new OffscreenCanvas(64, 64);
      const context = canvas.getContext("2d");
      [0, 80, 160, 240].forEach((grey, i) => {
        context.fillStyle = "rgb(" + [grey, grey, grey] + ")";
        context.fillRect((i % 2) * 32, i < 2 ? 0 : 32, 32, 32);
      });
      const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 1 });
      return String.fromCharCode(...new Uint8Array(await blob.arrayBuffer()));
    })()`);
    jpeg = Uint8Array.from(Buffer.from(String(text), "latin1"));
  });
  after(() => browser?.close());

  /** What each orientation shows, by quarter in reading order (Exif 2.3, table 6). */
  const shown: readonly (readonly number[])[] = [
    [0, 80, 160, 240],
    [80, 0, 240, 160],
    [240, 160, 80, 0],
    [160, 240, 0, 80],
    [0, 160, 80, 240],
    [160, 0, 240, 80],
    [240, 80, 160, 0],
    [80, 240, 0, 160],
  ];
  const middles = [
    [20, 20],
    [40, 20],
    [20, 40],
    [40, 40],
  ] as const;

  shown.forEach((expected, index) => {
    it(`stand upright in PDF and SVG: orientation ${index + 1}`, async () => {
      const pictures = new Map([["photo", noted(jpeg, index + 1)]]);
      const sheet = sheetOf([{ type: "picture", key: "photo", alt: "", x: 10, y: 10, w: 40, h: 40, turn: 0 }]);
      const { width, grey } = rasterOf(await renderPdf([sheet], typeface, pictures, { title: "t", lang: "en" }), 25.4);
      const inPdf = middles.map(([x, y]) => grey[y * width + x] ?? -1);
      const inSvg = await page.evaluate(`(async () => {
        const image = new Image();
        const svg = ${JSON.stringify(renderSvg(sheet, typeface, pictures))};
        image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
        await image.decode();
        const context = new OffscreenCanvas(210, 297).getContext("2d");
        context.drawImage(image, 0, 0, 210, 297);
        return ${JSON.stringify(middles)}.map(([x, y]) => context.getImageData(x, y, 1, 1).data[0]);
      })()`);
      for (const drawn of [inPdf, inSvg as number[]]) {
        assert.ok(
          drawn.every((value, i) => Math.abs(value - (expected[i] ?? -1)) < 8),
          `${drawn} for ${expected}`,
        );
      }
    });
  });

  it("are refused where they are something else", async () => {
    const sheet = sheetOf([{ type: "picture", key: "a.gif", alt: "", x: 10, y: 10, w: 40, h: 40, turn: 0 }]);
    const pictures = new Map([["a.gif", new Uint8Array([0x47, 0x49, 0x46])]]);
    const attempt = renderPdf([sheet], typeface, pictures, { title: "t", lang: "en" });
    await assert.rejects(attempt, { name: "RangeError", message: /a\.gif.*neither/ });
  });
});
