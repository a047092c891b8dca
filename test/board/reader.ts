import type { PrintedPage } from "../support/print";
import { picturesIn, rectanglesOn, textsIn } from "../support/rectangles";

/** What stands in each cell, read upright or turned by half: lines of a turned text run upwards. `[a pear]` for a picture. */
export function cellsOn(page: PrintedPage, turn: 0 | 2): string[] {
  return rectanglesOn(page, 0.5).map((cell) => {
    const texts = textsIn(page, cell).filter((text) => text.turn === turn);
    // Of two pictures in a cell the upper one is for the player opposite.
    const pictures = picturesIn(page, cell).sort((a, b) => b.y - a.y);
    const shown = pictures.slice(turn === 0 ? 0 : 1, turn === 0 ? 1 : 2);
    const words = (turn === 2 ? [...texts].reverse() : texts).map(({ text }) => text.trim());
    return [...shown.map(({ alt }) => `[${alt}]`), ...words].join(" ").replace("saca- rolhas", "saca-rolhas");
  });
}

export interface Call {
  readonly number: number;
  readonly say: string;
  readonly word: string;
}

/** The rows of a caller's list: a number, what is said, and what it is on the board. */
export function callsOn(page: PrintedPage): Call[] {
  const head = (text: string): number => page.texts.find((each) => each.text === text)?.x ?? -1;
  const [say, word] = [head("Say"), head("On the board")];
  return page.texts
    .filter(({ text, x }) => /^\d+$/.test(text) && x < say)
    .map(({ text, y }) => {
      const row = page.texts.filter((each) => Math.abs(each.y - y) < 0.3);
      const at = (x: number): string => row.find((each) => Math.abs(each.x - x) < 0.3)?.text ?? "";
      return { number: Number(text), say: at(say), word: at(word) };
    })
    .sort((a, b) => a.number - b.number);
}
