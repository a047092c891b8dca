import type { PrintedPage, PrintedText } from "../support/print";

export interface Card {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly head: string;
  readonly text: string;
  readonly mark: string;
}

/** The cards between the cut lines of a page, row by row: packet and letter, words, mark. */
export function cardsOn({ lines, texts }: PrintedPage): Card[] {
  const cuts = lines.filter(({ weight }) => Math.abs(weight - 0.25) < 0.01);
  const across = cuts.filter(({ y1, y2 }) => Math.abs(y1 - y2) < 0.01);
  const down = cuts.filter(({ x1, x2 }) => Math.abs(x1 - x2) < 0.01);
  const ys = [...new Set(across.map(({ y1 }) => Math.round(y1 * 100) / 100))].sort((a, b) => a - b);
  return ys.slice(0, -1).flatMap((y, row) => {
    const h = (ys[row + 1] ?? y) - y;
    const middle = y + h / 2;
    const xs = down
      .filter(({ y1, y2 }) => Math.min(y1, y2) < middle && middle < Math.max(y1, y2))
      .map(({ x1 }) => x1)
      .sort((a, b) => a - b);
    return xs.slice(0, -1).map((x, i): Card => {
      const w = (xs[i + 1] ?? x) - x;
      const inside = texts
        .filter(({ middle: [tx, ty] }) => tx > x && tx < x + w && ty > y && ty < y + h)
        .sort((a, b) => a.y - b.y || a.x - b.x);
      const words = (of: (text: PrintedText) => boolean): string =>
        inside
          .filter(of)
          .map(({ text }) => text)
          .join(" ");
      return {
        x,
        y,
        w,
        h,
        head: words(({ size }) => size > 6 && size < 9),
        text: words(({ size }) => size >= 9),
        mark: words(({ size }) => size <= 6),
      };
    });
  });
}

/** Sentences of the unit's text, a line of regular expression each, as bare words. */
export function sentencesIn(text: string): string[] {
  return [...text.matchAll(/^- (.+?) = /gm)].map(([, left = ""]) => bare(left.replace(/ ?\| ?/g, " ")));
}

export function bare(text: string): string {
  return text
    .toLowerCase()
    .replace(/[.,?!]/g, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** Whether some order of the parts makes the sentence. */
export function makes(parts: readonly string[], sentence: string): boolean {
  if (parts.length === 0) return sentence === "";
  return parts.some((part, i) => {
    const rest = [...parts.slice(0, i), ...parts.slice(i + 1)];
    return (
      (sentence === part && rest.length === 0) ||
      (sentence.startsWith(`${part} `) && makes(rest, sentence.slice(part.length + 1)))
    );
  });
}
