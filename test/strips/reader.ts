import type { PrintedPage } from "../support/print";
import { type Rectangle, textsIn } from "../support/rectangles";

/** The strips between the cut lines of a page, top to bottom: letter, words and mark, and the desk that they lie on, if they say so. */
export function stripsOn(
  page: PrintedPage,
): { sign: string; text: string; mark: string; desk: string | undefined; box: Rectangle }[] {
  const cuts = page.lines.filter(({ weight, y1, y2 }) => weight === 0.25 && Math.abs(y1 - y2) < 0.01);
  const ys = [...new Set(cuts.map(({ y1 }) => Math.round(y1 * 1000) / 1000))].sort((a, b) => a - b);
  const xs = cuts.flatMap(({ x1, x2 }) => [x1, x2]);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  return ys.slice(0, -1).map((y, i) => {
    const box = { x: left, y, w: right - left, h: (ys[i + 1] ?? y) - y };
    const texts = textsIn(page, box);
    const marks = texts.filter(({ size }) => size < 5.5);
    const isDesk = ({ text }: { text: string }): boolean => /^Desk \d+$/.test(text);
    const words = texts.filter((each) => each.size >= 5.5 && !isDesk(each));
    const sign = words.reduce((a, b) => (b.x < a.x ? b : a));
    return {
      sign: sign.text,
      text: words
        .filter((each) => each !== sign)
        .map(({ text }) => text)
        .join(" "),
      mark: marks.map(({ text }) => text).join("-"),
      desk: texts.find(isDesk)?.text.slice(5),
      box,
    };
  });
}
