import assert from "node:assert/strict";
import type { Browser, Page } from "playwright-core";
import { renderSvg } from "../../src/render/svg";
import type { Typeface } from "../../src/text/typeface";
import { testTypeface } from "../support/typeface";
import { png, sheetOf, textItem, wordSheet } from "./sheets";
import { openBrowser } from "./tools";

const nasty = `<script>alert("1")</script> & 'x' ]]> \u0007\ud800 &amp;`;

describe("SVG", () => {
  let typeface: Typeface;
  let browser: Browser;
  let page: Page;
  before(async function () {
    this.timeout(60_000);
    typeface = await testTypeface();
    browser = await openBrowser();
    page = await browser.newPage();
  });
  after(() => browser?.close());

  /** Parses a drawing as XML in the browser and evaluates an expression on the document `d`. */
  async function ask(svg: string, expression: string): Promise<unknown> {
    return page.evaluate(
      `(() => {
        const d = new DOMParser().parseFromString(${JSON.stringify(svg)}, "image/svg+xml");
        const error = d.querySelector("parsererror");
        if (error) throw new Error(error.textContent);
        return ${expression};
      })()`,
    );
  }

  it("is well-formed and in millimetres", async () => {
    const svg = renderSvg(wordSheet(), typeface, new Map());
    assert.deepEqual(
      await ask(svg, `["width", "height", "viewBox"].map((name) => d.documentElement.getAttribute(name))`),
      ["210mm", "297mm", "0 0 210 297"],
    );
    assert.equal(await ask(svg, `d.documentElement.namespaceURI`), "http://www.w3.org/2000/svg");
  });

  it("defines each outline once and refers to none that is not there", async () => {
    const svg = renderSvg(wordSheet(), typeface, new Map(), { prefix: "p7" });
    const report = await ask(
      svg,
      `(() => {
        const ids = [...d.querySelectorAll("[id]")].map((element) => element.id);
        const uses = [...d.querySelectorAll("use")].map((use) => use.getAttribute("href").slice(1));
        return { ids: ids.length, unique: new Set(ids).size, prefixed: ids.every((id) => id.startsWith("p7-")),
          uses: uses.length, lost: uses.filter((id) => !ids.includes(id)) };
      })()`,
    );
    assert.deepEqual(
      { ...(report as object), uses: 0, ids: 0, unique: 0 },
      { ids: 0, unique: 0, prefixed: true, uses: 0, lost: [] },
    );
    const { ids, unique, uses } = report as { ids: number; unique: number; uses: number };
    assert.equal(ids, unique);
    assert.ok(uses > ids);
  });

  it("carries sources, pieces and what is said aloud", async () => {
    const sheet = sheetOf(
      [
        { type: "area", x: 10, y: 10, w: 40, h: 40, piece: 3 },
        { type: "area", x: 50, y: 10, w: 40, h: 40, piece: 4, differs: true },
        textItem([{ text: "o " }, { text: "copo", bold: true }], 20, 20, {
          source: { start: 12, end: 18 },
          lang: "pt-BR",
        }),
      ],
      { label: "Tiles 1 & 2" },
    );
    const svg = renderSvg(sheet, typeface, new Map());
    assert.equal(await ask(svg, `d.documentElement.getAttribute("aria-label")`), "Tiles 1 & 2");
    assert.deepEqual(
      await ask(
        svg,
        `[...d.querySelectorAll(".piece")].map((e) => [e.dataset.piece, e.classList.contains("differs")])`,
      ),
      [
        ["3", false],
        ["4", true],
      ],
    );
    assert.deepEqual(
      await ask(
        svg,
        `(({ dataset: s, ...e }, l) => [s.start, s.end, ...l])(d.querySelector(".text"), ["aria-label", "lang"].map((n) => d.querySelector(".text").getAttribute(n)))`,
      ),
      ["12", "18", "o copo", "pt-BR"],
    );
  });

  it("escapes everything and holds nothing that runs or reaches out", async () => {
    const pictures = new Map([[nasty, png([[0]])]]);
    const sheet = sheetOf(
      [
        textItem(nasty, 20, 20, { lang: nasty, source: { start: 0, end: 1 } }),
        { type: "picture", key: nasty, alt: nasty, x: 1, y: 1, w: 9, h: 9, turn: 1 },
        { type: "picture", key: "lost", alt: nasty, x: 1, y: 1, w: 9, h: 9, turn: 0 },
      ],
      { label: nasty, lang: nasty },
    );
    const svg = renderSvg(sheet, typeface, pictures);
    const spoken = nasty.replace("\ud800", "\ufffd");
    assert.equal(await ask(svg, `d.querySelector(".text").getAttribute("aria-label")`), spoken.replace("\u0007", " "));
    assert.equal(
      await ask(svg, `d.querySelector("image").getAttribute("aria-label")`),
      spoken.replace("\u0007", "\ufffd"),
    );
    assert.deepEqual(await ask(svg, `[...new Set([...d.querySelectorAll("*")].map((e) => e.localName))].sort()`), [
      "defs",
      "g",
      "image",
      "path",
      "rect",
      "svg",
      "use",
    ]);
    const links = (await ask(svg, `[...d.querySelectorAll("[href]")].map((e) => e.getAttribute("href"))`)) as string[];
    assert.ok(links.length > 5);
    assert.ok(links.every((link) => link.startsWith("#") || link.startsWith("data:image/png;base64,")));
    const attributes = (await ask(
      svg,
      `[...d.querySelectorAll("*")].flatMap((e) => e.getAttributeNames())`,
    )) as string[];
    assert.ok(attributes.every((name) => !name.startsWith("on")));
  });

  it("embeds pictures that a browser can show, turned and filled", async () => {
    const picture = { type: "picture", key: "a", alt: "", x: 10, y: 10, w: 40, h: 20, turn: 1 } as const;
    const svg = renderSvg(sheetOf([picture]), typeface, new Map([["a", png([[0, 255]])]]));
    const pixels = await page.evaluate(
      `(async () => {
        const image = new Image();
        image.src = URL.createObjectURL(new Blob([${JSON.stringify(svg)}], { type: "image/svg+xml" }));
        await image.decode();
        const context = new OffscreenCanvas(210, 297).getContext("2d");
        context.drawImage(image, 0, 0, 210, 297);
        return [[22, 2], [38, 2], [22, 38], [38, 38], [12, 20], [48, 20]].map(([x, y]) => context.getImageData(x, y, 1, 1).data[0]);
      })()`,
    );
    const [a, b, c, d, e, f] = pixels as number[];
    assert.ok(Number(a) < 40 && Number(b) < 40 && Number(c) > 215 && Number(d) > 215, String(pixels));
    assert.deepEqual([e, f], [255, 255]);
  });

  it("draws a grey box with its description for a picture that is not there", async () => {
    const picture = { type: "picture", key: "lost", alt: "uma colher", x: 10, y: 10, w: 40, h: 20, turn: 0 } as const;
    const svg = renderSvg(sheetOf([picture]), typeface, new Map([["lost", new Uint8Array([1, 2, 3])]]));
    assert.equal(await ask(svg, `d.querySelector("rect.picture").getAttribute("aria-label")`), "uma colher");
  });

  it("is the same for the same sheet", () => {
    assert.equal(renderSvg(wordSheet(), typeface, new Map()), renderSvg(wordSheet(), typeface, new Map()));
  });
});
