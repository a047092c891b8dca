import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/*
 * What stands on a printed page, read by pdf.js from the file alone: straight lines and texts with their places in mm from
 * the top left corner, and the quarter turn in which each text reads.
 */

export interface PrintedLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** pt */
  readonly weight: number;
}

export interface PrintedText {
  readonly text: string;
  /** Start of the baseline. */
  readonly x: number;
  readonly y: number;
  /** Middle of the baseline. */
  readonly middle: readonly [number, number];
  /** pt */
  readonly size: number;
  /** Quarter turns clockwise. */
  readonly turn: number;
}

export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PrintedLine[];
  readonly texts: readonly PrintedText[];
}

const mm = 25.4 / 72;

export async function readPrint(pdf: Uint8Array): Promise<PrintedPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    const lines: PrintedLine[] = [];
    let weight = 1;
    fnArray.forEach((operator, i) => {
      const args: unknown = argsArray[i];
      if (operator === OPS.setLineWidth && Array.isArray(args)) weight = Number(args[0]);
      if (operator !== OPS.constructPath || !Array.isArray(args)) return;
      const [path] = Array.isArray(args[1]) ? args[1] : [];
      const values: number[] = Object.values(path ?? {}).map(Number);
      if (values.length !== 6 || values[0] !== 0 || values[3] !== 1) return;
      const [, x1 = 0, y1 = 0, , x2 = 0, y2 = 0] = values;
      lines.push({ x1: x1 * mm, y1: (height - y1) * mm, x2: x2 * mm, y2: (height - y2) * mm, weight });
    });
    const content = await page.getTextContent();
    const texts = content.items.flatMap((item): PrintedText[] => {
      if (!("str" in item) || item.str.trim() === "") return [];
      const [a = 1, b = 0, , , x = 0, y = 0] = item.transform.map(Number);
      const size = Math.hypot(a, b);
      const [ux, uy] = [a / size, b / size];
      const turn = ((Math.round(Math.atan2(-b, a) / (Math.PI / 2)) % 4) + 4) % 4;
      const half = item.width / 2;
      return [
        {
          text: item.str,
          x: x * mm,
          y: (height - y) * mm,
          middle: [(x + ux * half) * mm, (height - y - uy * half) * mm],
          size,
          turn,
        },
      ];
    });
    pages.push({ width: width * mm, height: height * mm, lines, texts });
  }
  await document.destroy();
  return pages;
}

/** A square between cut lines, with the words on its sides as they lie: clockwise from the top, and its small print. */
export interface PrintedTile {
  readonly x: number;
  readonly y: number;
  readonly side: number;
  readonly edges: readonly [string, string, string, string];
  readonly centre: readonly string[];
}

/** Tiles of a page from its lines and texts alone. Lines of `weight` pt bound them. */
export function tilesOn({ lines, texts }: PrintedPage, weight = 0.25): PrintedTile[] {
  const cuts = lines.filter((line) => Math.abs(line.weight - weight) < 0.01);
  const across = cuts.filter(({ y1, y2 }) => Math.abs(y1 - y2) < 0.01);
  const down = cuts.filter(({ x1, x2 }) => Math.abs(x1 - x2) < 0.01);
  const xs = distinct(down.map(({ x1 }) => x1));
  const ys = distinct(across.map(({ y1 }) => y1));
  const covers = (from: number, to: number, at: number): boolean => Math.min(from, to) < at && at < Math.max(from, to);
  const tiles: PrintedTile[] = [];
  ys.slice(0, -1).forEach((y, r) => {
    xs.slice(0, -1).forEach((x, c) => {
      const side = (xs[c + 1] ?? x) - x;
      const bottom = ys[r + 1] ?? y;
      const [mx, my] = [x + side / 2, (y + bottom) / 2];
      const bounded = (lineY: number): boolean =>
        across.some((line) => Math.abs(line.y1 - lineY) < 0.01 && covers(line.x1, line.x2, mx));
      const walled = (lineX: number): boolean =>
        down.some((line) => Math.abs(line.x1 - lineX) < 0.01 && covers(line.y1, line.y2, my));
      if (!bounded(y) || !bounded(bottom) || !walled(x) || !walled(x + side)) return;
      const inside = texts.filter(({ middle: [tx, ty] }) => tx > x && tx < x + side && ty > y && ty < bottom);
      const central = inside.filter(
        ({ size }) => size <= Math.min(...inside.map((each) => each.size)) + 0.01 && size <= 8,
      );
      const edges = ["", "", "", ""];
      const depth = ({ middle: [tx, ty], turn }: PrintedText): number =>
        turn === 0 ? ty - y : turn === 1 ? x + side - tx : turn === 2 ? bottom - ty : tx - x;
      for (const text of inside.filter((each) => !central.includes(each)).sort((a, b) => depth(a) - depth(b))) {
        edges[text.turn] = [edges[text.turn], text.text].filter(Boolean).join(" ");
      }
      const [n = "", e = "", s = "", w = ""] = edges;
      tiles.push({
        x,
        y,
        side,
        edges: [n, e, s, w],
        centre: central.sort((a, b) => a.y - b.y).map(({ text }) => text),
      });
    });
  });
  return tiles;
}

function distinct(values: readonly number[]): number[] {
  const out: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) if (value - (out.at(-1) ?? -1) > 0.05) out.push(value);
  return out;
}
