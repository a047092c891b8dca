import assert from "node:assert/strict";
import type { PrintedPage } from "../support/print";
import { picturesIn, rectanglesOn, textsIn } from "../support/rectangles";

export interface CutCard {
  readonly sign: string;
  readonly answer: string;
  readonly prompt: string;
  readonly mark: string;
  readonly sizes: readonly number[];
}

/** Cards of a page between its cut lines: what is above and under the line in the middle (`[a pear]` for a picture), its sign and its mark. */
export function cardsOn(page: PrintedPage, ruleWeight: number): CutCard[] {
  return rectanglesOn(page, 0.25).flatMap((box): CutCard[] => {
    const rule = page.lines.find(
      ({ weight, x1, y1 }) =>
        Math.abs(weight - ruleWeight) < 0.01 && x1 > box.x && x1 < box.x + box.w && y1 > box.y && y1 < box.y + box.h,
    );
    const texts = textsIn(page, box);
    const words = texts.filter(({ size, text }) => size > 5.5 && !/^[A-Z]+\d*$/.test(text));
    const sign = texts.find(({ size, text }) => size > 5.5 && /^[A-Z]+\d*$/.test(text));
    const pictures = picturesIn(page, box);
    if (!rule || words.length + pictures.length === 0) return [];
    const join = (above: boolean): string =>
      [
        ...pictures.filter(({ y }) => y < rule.y1 === above).map(({ alt }) => `[${alt}]`),
        ...words.filter(({ y }) => y < rule.y1 === above).map(({ text }) => text),
      ].join(" ");
    const mark = texts.filter(({ size }) => size < 5.5).map(({ text }) => text);
    return [
      {
        sign: sign?.text ?? "",
        answer: join(true),
        prompt: join(false),
        mark: mark.join("-"),
        sizes: words.map(({ size }) => size),
      },
    ];
  });
}

/** Goes from a card to the one that answers it until a card comes again; the signs. Fails where a card is not answered once. */
export function walk(cards: readonly CutCard[], start: string, meanings: ReadonlyMap<string, string>): string[] {
  const visited: string[] = [];
  let sign = start;
  while (!visited.includes(sign)) {
    visited.push(sign);
    const card = cards.find((each) => each.sign === sign);
    const next = cards.filter(({ answer }) => answer === meanings.get(card?.prompt ?? ""));
    assert.equal(next.length, 1, `${card?.prompt} is answered ${next.length} times`);
    sign = next[0]?.sign ?? "";
  }
  assert.equal(sign, start);
  return visited;
}
