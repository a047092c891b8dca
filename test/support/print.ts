import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/*
 * What stands on a printed page, read by pdf.js from the file alone: straight lines, texts and pictures with their places in
 * mm from the top left corner, and the quarter turn in which each text reads.
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

/** A picture where it is drawn: its box as seen. */
export interface PrintedPicture {
  /** What is said of it to who cannot see it. */
  readonly alt: string;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** Which way the right edge and the upper edge of the picture as it is stored point on the page: y down, length 1. */
  readonly right: readonly [number, number];
  readonly up: readonly [number, number];
}

export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PrintedLine[];
  readonly texts: readonly PrintedText[];
  readonly pictures: readonly PrintedPicture[];
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
    const alts = figuresIn(await page.getStructTree());
    const matrices = pictureMatrices(fnArray, argsArray);
    // As many are described as are drawn, in one order; else no description can be trusted.
    const told = alts.length === matrices.length ? alts : [];
    const pictures = matrices.map((matrix, i) => pictureAt(matrix, told[i] ?? "", height));
    pages.push({ width: width * mm, height: height * mm, lines, texts, pictures });
  }
  await document.destroy();
  return pages;
}

type Matrix = readonly [number, number, number, number, number, number];

/** The matrix in force at each picture: from the unit square to the page, pt, y up. */
function pictureMatrices(operators: readonly number[], values: readonly unknown[]): Matrix[] {
  const found: Matrix[] = [];
  const stack: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  operators.forEach((operator, i) => {
    if (operator === OPS.save) stack.push(now);
    if (operator === OPS.restore) now = stack.pop() ?? [1, 0, 0, 1, 0, 0];
    if (operator === OPS.paintImageXObject) found.push(now);
    if (operator !== OPS.transform) return;
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = Object.values(values[i] ?? {}).map(Number);
    const [p, q, r, s, t, u] = now;
    now = [a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u];
  });
  return found;
}

function pictureAt([a, b, c, d, e, f]: Matrix, alt: string, height: number): PrintedPicture {
  const xs = [e, e + a, e + c, e + a + c];
  const ys = [f, f + b, f + d, f + b + d];
  const unit = (x: number, y: number): readonly [number, number] => {
    const length = Math.hypot(x, y);
    return [Math.round(x / length), Math.round(-y / length)];
  };
  return {
    alt,
    x: Math.min(...xs) * mm,
    y: (height - Math.max(...ys)) * mm,
    w: (Math.max(...xs) - Math.min(...xs)) * mm,
    h: (Math.max(...ys) - Math.min(...ys)) * mm,
    right: unit(a, b),
    up: unit(c, d),
  };
}

/** What the structure tree says of the figures, in reading order. */
function figuresIn(node: unknown): string[] {
  if (typeof node !== "object" || node === null) return [];
  const own = "role" in node && node.role === "Figure" ? [String("alt" in node ? node.alt : "")] : [];
  return [...own, ...("children" in node && Array.isArray(node.children) ? node.children.flatMap(figuresIn) : [])];
}

/** A square between cut lines, with what is on its sides as it lies, clockwise from the top, and its small print: words, `[a pear]` for a picture. */
export interface PrintedTile {
  readonly x: number;
  readonly y: number;
  readonly side: number;
  readonly edges: readonly [string, string, string, string];
  readonly centre: readonly string[];
}

/** Tiles of a page from its lines and texts alone. Lines of `weight` pt bound them. */
export function tilesOn({ lines, texts, pictures }: PrintedPage, weight = 0.25): PrintedTile[] {
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
      for (const picture of pictures) {
        const [px, py] = [picture.x + picture.w / 2 - mx, picture.y + picture.h / 2 - my];
        if (Math.abs(px) > side / 2 || Math.abs(py) > side / 2) continue;
        const nearest = Math.abs(py) > Math.abs(px) ? (py < 0 ? 0 : 2) : px > 0 ? 1 : 3;
        edges[nearest] = [`[${picture.alt}]`, edges[nearest]].filter(Boolean).join(" ");
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
