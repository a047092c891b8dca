import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium } from "playwright-core";

/*
 * Programs that read and draw what the product writes: poppler's tools and a headless Chromium.
 */

export interface Raster {
  readonly width: number;
  readonly height: number;
  /** One byte a pixel, 0 black. */
  readonly grey: Uint8Array;
}

function inFolder<Result>(use: (folder: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), "cutwork-"));
  try {
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A page of a PDF (from 1) as poppler draws it. */
export function rasterOf(pdf: Uint8Array, dpi: number, page = 1): Raster {
  return inFolder((folder) => {
    writeFileSync(join(folder, "in.pdf"), pdf);
    const args = ["-r", String(dpi), "-gray", "-f", String(page), "-l", String(page), "-singlefile"];
    execFileSync("pdftoppm", [...args, join(folder, "in.pdf"), join(folder, "out")]);
    return parsePgm(new Uint8Array(readFileSync(join(folder, "out.pgm"))));
  });
}

function parsePgm(file: Uint8Array): Raster {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(String.fromCharCode(...file.subarray(0, 40)));
  if (!head) throw new Error("not a grey map");
  const width = Number(head[1]);
  return { width, height: Number(head[2]), grey: file.subarray(head[0].length) };
}

export interface Word {
  readonly text: string;
  /** pt from the page's top left corner */
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The words that poppler reads on a PDF's pages, with their boxes. */
export function wordsOf(pdf: Uint8Array): readonly Word[] {
  const html = inFolder((folder) => {
    writeFileSync(join(folder, "in.pdf"), pdf);
    return execFileSync("pdftotext", ["-bbox", join(folder, "in.pdf"), "-"], { encoding: "utf8" });
  });
  const pattern = /<word xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*?)<\/word>/g;
  return [...html.matchAll(pattern)].map(([, left, top, right, bottom, text]) => ({
    text: (text ?? "")
      .replaceAll("&lt;", "<")
      .replaceAll("&gt;", ">")
      .replaceAll("&quot;", '"')
      .replaceAll("&amp;", "&"),
    left: Number(left),
    top: Number(top),
    right: Number(right),
    bottom: Number(bottom),
  }));
}

/** What poppler reads, in the order of the content stream. */
export function rawText(pdf: Uint8Array): string {
  return inFolder((folder) => {
    writeFileSync(join(folder, "in.pdf"), pdf);
    return execFileSync("pdftotext", ["-raw", join(folder, "in.pdf"), "-"], { encoding: "utf8" });
  });
}

/** A headless Chromium; the environment variable CHROMIUM names another than the system's. */
export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env["CHROMIUM"] || "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--font-render-hinting=none"],
  });
}
