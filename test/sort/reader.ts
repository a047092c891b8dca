import type { PrintedPage, PrintedText } from "../support/print";
import { type Rectangle, textsIn } from "../support/rectangles";

export interface Card {
  readonly text: string;
  readonly mark: string;
  readonly label: string | undefined;
}

/** A card by the print alone: its words, the small mark at the right of its foot and the label at the left. */
export function cardIn(page: PrintedPage, box: Rectangle): Card {
  const texts = textsIn(page, box);
  const mark = texts.find(({ size }) => size < 5.5);
  const foot = (text: PrintedText): boolean => mark !== undefined && Math.abs(text.y - mark.y) < 0.1;
  return {
    text: texts
      .filter((each) => !foot(each))
      .map(({ text }) => text)
      .join(" "),
    mark: mark?.text ?? "",
    label: texts.find((each) => foot(each) && each !== mark)?.text,
  };
}

/** The key by zones: each heading “Name (3)” with the lines below it, column by column. */
export function keyOf(page: PrintedPage): Map<string, string[]> {
  const heads = page.texts.filter(({ text }) => /\(\d+\)$/.test(text)).sort((a, b) => a.y - b.y);
  return new Map(
    heads.map((head, i): [string, string[]] => {
      const until = heads[i + 1]?.y ?? 280;
      const own = page.texts.filter(({ y }) => y > head.y + 1 && y < until - 1);
      return [head.text.replace(/ \(\d+\)$/, ""), own.map(({ text }) => text.trim())];
    }),
  );
}
