import assert from "node:assert/strict";
import { build } from "esbuild";
import { renderPdf } from "../../src/render/pdf";
import { testAssets, testTypeface } from "../support/typeface";
import { wordSheet } from "./sheets";
import { openBrowser } from "./tools";

const entry = `
import { renderPdf } from "./src/render/pdf";
import { openTypeface } from "./src/text/open";
self.onmessage = async ({ data }) => {
  try {
    const typeface = await openTypeface(data.assets);
    postMessage(await renderPdf([data.sheet], typeface, new Map(), { title: "Worker", lang: "pt" }));
  } catch (error) {
    postMessage(String(error));
  }
};
`;

describe("writing", () => {
  it("works in a classic web worker and gives the same bytes as in Node", async function () {
    this.timeout(60_000);
    const bundle = await build({
      stdin: { contents: entry, resolveDir: process.cwd() },
      bundle: true,
      format: "iife",
      platform: "browser",
      write: false,
    });
    const browser = await openBrowser();
    try {
      const page = await browser.newPage();
      const { fonts, harfbuzz, harfbuzzSubset } = testAssets();
      const files = { ...fonts, harfbuzz, harfbuzzSubset };
      const coded = Object.entries(files).map(([name, bytes]) => [name, Buffer.from(bytes).toString("base64")]);
      const script = `(async () => {
        const files = ${JSON.stringify(Object.fromEntries(coded))};
        const bytes = (name) => Uint8Array.from(atob(files[name]), (character) => character.charCodeAt(0));
        const fonts = Object.fromEntries(${JSON.stringify(Object.keys(fonts))}.map((name) => [name, bytes(name)]));
        const assets = { harfbuzz: bytes("harfbuzz"), harfbuzzSubset: bytes("harfbuzzSubset"), fonts };
        const code = ${JSON.stringify(bundle.outputFiles[0]?.text)};
        const worker = new Worker(URL.createObjectURL(new Blob([code], { type: "text/javascript" })));
        worker.postMessage({ sheet: ${JSON.stringify(wordSheet())}, assets });
        const data = await new Promise((resolve, reject) => {
          worker.onmessage = (event) => resolve(event.data);
          worker.onerror = (event) => reject(new Error(event.message));
        });
        return data instanceof Uint8Array ? Array.from(data) : data;
      })()`;
      const answer = await page.evaluate(script);
      const here = await renderPdf([wordSheet()], await testTypeface(), new Map(), { title: "Worker", lang: "pt" });
      assert.deepEqual(answer, [...here]);
    } finally {
      await browser.close();
    }
  });
});
