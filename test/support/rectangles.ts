import type { PrintedLine, PrintedPage, PrintedPicture, PrintedText } from "./print";

export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** The rectangles of a grid between the upright and level lines of a weight (pt), row by row, from the lines alone. */
export function rectanglesOn({ lines }: Pick<PrintedPage, "lines">, weight: number): Rectangle[] {
  const own = lines.filter((line) => Math.abs(line.weight - weight) < 0.01);
  const level = own.filter(({ y1, y2 }) => Math.abs(y1 - y2) < 0.01);
  const upright = own.filter(({ x1, x2 }) => Math.abs(x1 - x2) < 0.01);
  const ys = distinct(level.map(({ y1 }) => y1));
  const xs = distinct(upright.map(({ x1 }) => x1));
  const runs = (line: PrintedLine, x: number, y: number): boolean => {
    const near = (a: number, b: number, at: number): boolean =>
      Math.min(a, b) - 0.05 < at && at < Math.max(a, b) + 0.05;
    return near(line.x1, line.x2, x) && near(line.y1, line.y2, y);
  };
  return ys.slice(0, -1).flatMap((y, r) =>
    xs.slice(0, -1).flatMap((x, c): Rectangle[] => {
      const [w, h] = [(xs[c + 1] ?? x) - x, (ys[r + 1] ?? y) - y];
      const [mx, my] = [x + w / 2, y + h / 2];
      const bounded =
        [y, y + h].every((at) => level.some((line) => runs(line, mx, at))) &&
        [x, x + w].every((at) => upright.some((line) => runs(line, at, my)));
      return bounded ? [{ x, y, w, h }] : [];
    }),
  );
}

/** Texts whose middle lies in a box, from top to bottom and left to right. */
export function textsIn({ texts }: Pick<PrintedPage, "texts">, { x, y, w, h }: Rectangle): PrintedText[] {
  return texts
    .filter(({ middle: [tx, ty] }) => tx > x && tx < x + w && ty > y && ty < y + h)
    .sort((a, b) => a.y - b.y || a.x - b.x);
}

/** Pictures whose middle lies in a box. */
export function picturesIn({ pictures }: Pick<PrintedPage, "pictures">, box: Rectangle): PrintedPicture[] {
  return pictures.filter(({ x, y, w, h }) => {
    const [px, py] = [x + w / 2, y + h / 2];
    return px > box.x && px < box.x + box.w && py > box.y && py < box.y + box.h;
  });
}

function distinct(values: readonly number[]): number[] {
  const out: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) if (value - (out.at(-1) ?? -1) > 0.05) out.push(value);
  return out;
}
