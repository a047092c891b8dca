import type { LineIndex } from "../../base/range";
import type { RawItem } from "../items";
import type { Problems } from "../problems";
import { textOf } from "./lines";
import { movedOut } from "./nested-item";
import { isItem } from "./piles";

/*
 * Cards of a pile that are not read, since they stand in a line without a bullet, or under another card.
 */

export function lostCards(lines: LineIndex, item: RawItem, problems: Problems): void {
  if (item.nested.length > 0) cardsUnder(lines, item, problems);
  else cardsBelow(lines, item, problems);
}

/** `  - bolo` under `- ovo`. It may be a word about that card, which nothing uses. */
function cardsUnder(lines: LineIndex, owner: RawItem, problems: Problems): void {
  const cards = owner.nested.filter(({ text }) => isItem(text.text.trim()));
  const [first] = cards;
  if (!first) return;
  problems.tell("piles", "nested-item", first.text.whole, "This stands under another card, so that it is not read.", {
    title: cards.length > 1 ? "Move them out" : "Move it out",
    edits: cards.flatMap((card) => movedOut(card, owner, lines)),
    unsure: true,
  });
}

/** No program breaks a line where the first words of the next one would still have stood within so many characters. */
const wrapped = 60;

/**
 * `luz` in the line below `- roda`: where all lines are a few words they are cards, and no text that is broken. Lines of three or four
 * words are such where they stand at the margin.
 */
function cardsBelow(lines: LineIndex, { text: source, block, nested }: RawItem, problems: Problems): void {
  const [first = "", ...below] = source.text.split("\n").map((text) => text.trim());
  const sign = lines.text.slice(block.start, source.source(0));
  const from = lines.lineAt(source.source(0)) + 1;
  const outer = below.every((_, i) => !/^\s/.test(textOf(lines, from + i)));
  const room = below.every((text, i) => `${[first, ...below][i]} ${text.split(/\s/, 1)[0]}`.length < wrapped);
  const short = (text: string): boolean => isItem(text) && text.split(/\s+/).length <= (outer && room ? 4 : 2);
  if (below.length === 0 || nested.length > 0 || ![first, ...below].every(short)) return;
  const places = below.map((_, i) => {
    const text = textOf(lines, from + i);
    const start = lines.start(from + i);
    return { start, at: start + text.length - text.trimStart().length };
  });
  const [place] = places;
  if (!place || sign.includes("\n")) return;
  problems.tell(
    "piles",
    "not-an-item",
    { start: place.at, end: place.at + (below[0] ?? "").length },
    "This line goes on the item above it, with which it would be one card.",
    {
      title: below.length > 1 ? "Make items of these lines" : "Make it an item",
      edits: places.map(({ start, at }) => ({ range: { start, end: at }, text: sign })),
      unsure: true,
    },
  );
}
