import { upTo } from "../../base/seed";
import { atOnce, type Steps } from "../../base/steps";
import { type CardFace, fittingCards, heightWithPicture, type PlacedCard, packRows } from "../../page/cards";
import { readsRightToLeft } from "../../page/document/words";
import { bodyBox } from "../../page/furniture";
import { largestAtDesk, sizeFor, xHeights } from "../../page/legibility";
import { type Box, mm, type Paper, papers } from "../../page/paper";
import { sizeStep } from "../../text/fit";
import type { Press } from "../contract";
import { blanksOf } from "../copies";
import { keptLayout } from "../kept-layout";
import { cardPicture } from "../printed";
import type { DealtRebuild, RebuildDeal, Sentence, SentenceCard } from "./model";
import { readOrder } from "./proof";

/*
 * Cards of one height, as wide as their words, in rows: a row is cut off first and then cut across. Packets follow each other, so
 * that what is cut lies together; a row is filled by making its cards a little wider. The packet's number stands above the
 * words and the mark below.
 */

/** Clear at the sides, and what number and mark take above and below the words, mm. */
const side = 3;
const top = 5.4;
const bottom = 4;
/** Room for the number above and for the mark below, mm. */
const narrowest = 19;
/** Least width of a blank card, mm. */
const blankWidth = 34;
/** Taller cards gain nothing, mm. */
const lowest = 15;

/** A picture that stands alone on its card has this height at least, mm. */
const leastPicture = 14;

export const maxLines = 3;
/** Height of a block of lines, em: what ascenders and descenders need, and from line to line. */
const rows = { ends: 1.02, leading: 1.2 };
const smallestSize = 4;

export interface RebuildLayout {
  readonly paper: Paper;
  readonly margin: number;
  readonly box: Box;
  /** mm */
  readonly height: number;
  /** pt; undefined where some card fits at no size. */
  readonly size: number | undefined;
  readonly rightToLeft: boolean;
}

/** Where the cards of a deal lie, the blank ones last. */
export interface RebuildPlaces {
  readonly pages: number;
  readonly places: readonly PlacedCard[];
}

/** The places of number, words and mark on a card; from right to left the number stands on the right. */
export function areasOf(card: Box): { readonly head: Box; readonly words: Box; readonly foot: Box } {
  return {
    head: { x: card.x + side, y: card.y + 1.6, w: card.w - 2 * side, h: top - 2 },
    words: { x: card.x + side, y: card.y + top, w: card.w - 2 * side, h: card.h - top - bottom },
    foot: { x: card.x, y: card.y + card.h - bottom, w: card.w, h: bottom - 1.2 },
  };
}

export const layingRebuild = keptLayout(findLayout, ({ deals, sentences, options, request }: DealtRebuild) => ({
  // What a level hides of a sentence still says how it is read.
  words: [...deals.flatMap((deal) => deal.dealt), ...sentences.flatMap(({ parts }) => parts)],
  settings: [
    options,
    request.classes,
    sentences.map(({ orders }) => orders),
    deals.map((deal) => [deal.sentences, deal.dealt.map(({ sentence, part }) => [sentence, part])]),
  ],
}));

export const layoutRebuild = atOnce(layingRebuild);

/** The largest words that need no more sheets than comfortable ones; with a height, what fits it. */
function* findLayout(dealt: DealtRebuild, press: Press): Steps<RebuildLayout, undefined> {
  const { options, deals, sentences } = dealt;
  const paper = papers[options.paper];
  const { margin } = options;
  const box = bodyBox(paper, margin);
  const rightToLeft = readsRightToLeft(sentences.map(({ parts }) => parts.map(({ text }) => text).join(" ")).join(" "));
  const base = { paper, margin, box, rightToLeft };
  const cards = distinct(deals.flatMap((deal) => deal.dealt));
  const asked = options.height === undefined ? undefined : Math.min(options.height, box.h);
  const comfort = sizeFor(xHeights.desk.comfortable, press.typeface);
  const largest = yield* sizingOn(cards, box.w, asked ?? box.h, press);
  if (largest === undefined) return { ...base, height: asked ?? lowest, size: undefined };
  const heightFor = (size: number): number => asked ?? Math.max(lowest, heightAt(cards, box.w, size, press));
  const pagesAt = (size: number): number =>
    Math.max(1, ...deals.map((deal) => placesAt(dealt, deal, { ...base, size, height: heightFor(size) }, press).pages));
  const fewest = pagesAt(Math.min(largest, comfort));
  // Smaller words never need more sheets, so that halving finds the largest that need no more than comfortable ones.
  let [low, high] = [Math.min(largest, comfort) / sizeStep, largest / sizeStep];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (pagesAt(middle * sizeStep) > fewest) high = middle - 1;
    else low = middle;
  }
  const size = low * sizeStep;
  return { ...base, size, height: heightFor(size) };
}

function distinct(cards: readonly SentenceCard[]): SentenceCard[] {
  return [...new Map(cards.map((card) => [JSON.stringify([card.runs, card.picture?.path]), card])).values()];
}

/** The largest size in pt at which all cards fit a height and the page's width, mm; undefined where one fits at none. */
export const sizeOn = atOnce(sizingOn);

/** The same in steps. */
function* sizingOn(
  cards: readonly SentenceCard[],
  width: number,
  height: number,
  press: Press,
): Steps<number | undefined, undefined> {
  const { words } = areasOf({ x: 0, y: 0, w: width, h: height });
  const largest = sizeFor(largestAtDesk, press.typeface);
  const faces = cards.map((card) => faceOf(card, press));
  return yield* fittingCards(faces, words, press.typeface, { smallest: smallestSize, largest, maxLines });
}

/** What stands on a card; a picture that cannot be read leaves its alternative text. */
export function faceOf({ runs, picture, text, source }: SentenceCard, press: Press): CardFace {
  const drawn = cardPicture(picture, press);
  return drawn ? { runs, source, picture: drawn } : { runs: runs.length > 0 ? runs : [{ text }], source };
}

/** The least height of cards (half mm) at which all words have room at a size, each in as few lines as the page's width allows. */
export function heightAt(cards: readonly SentenceCard[], width: number, size: number, press: Press): number {
  const heights = cards.map((card) => {
    const { runs, picture } = faceOf(card, press);
    const lines = Math.max(1, linesAt(press.typeface.measure(runs) * mm(size), width));
    const words = (rows.ends + (lines - 1) * rows.leading) * mm(size) + 0.5;
    if (!picture) return words;
    return runs.length > 0 ? heightWithPicture(words) : leastPicture;
  });
  return Math.ceil((top + bottom + Math.max(...heights, rows.ends * mm(size) + 0.5)) * 2) / 2;
}

function linesAt(words: number, width: number): number {
  // Lines that are broken between words are not filled to the end.
  return words <= width - 2 * side ? 1 : words <= 1.6 * (width - 2 * side) ? 2 : 3;
}

function widthAt(card: SentenceCard, { box, size, height }: RebuildLayout, press: Press): number {
  const { runs, picture } = faceOf(card, press);
  const words = press.typeface.measure(runs) * mm(size ?? smallestSize);
  // A bare picture is as high as its card allows, unless it is long.
  const drawn = picture ? Math.min(box.w / 3, picture.ratio * (height - top - bottom)) : 0;
  const width = Math.max(narrowest, words + 2 * side + 0.2, drawn + 2 * side);
  return Math.min(box.w, Math.ceil(width * 2) / 2);
}

export function placeRebuild(dealt: DealtRebuild, deal: RebuildDeal, press: Press): RebuildPlaces {
  return placesAt(dealt, deal, layoutRebuild(dealt, press), press);
}

/** Rows in the order dealt; rows packed by width instead where that saves a sheet and shows no sentence in order. */
function placesAt(
  { options, sentences, request }: DealtRebuild,
  deal: RebuildDeal,
  layout: RebuildLayout,
  press: Press,
): RebuildPlaces {
  const { box, height } = layout;
  const widths = [
    ...deal.dealt.map((card) => widthAt(card, layout, press)),
    ...upTo(blanksOf(options, request.classes)).map(() => blankWidth),
  ];
  const flowing = flowRows(box, widths, height);
  const perPage = Math.max(1, Math.floor(box.h / height + 1e-6));
  const least = Math.ceil(widths.reduce((sum, width) => sum + width, 0) / box.w / perPage - 1e-6);
  if (least >= flowing.pages) return flowing;
  const packed = packRows(box, widths, height);
  return packed && packed.pages < flowing.pages && !tells(deal, sentences, packed.places) ? packed : flowing;
}

/** Cards in rows one after the other, each row as wide as the box; the last one only as wide as its cards. */
export function flowRows(box: Box, widths: readonly number[], height: number): RebuildPlaces {
  const perPage = Math.max(1, Math.floor(box.h / height + 1e-6));
  const filled: number[][] = [];
  let used = Number.POSITIVE_INFINITY;
  widths.forEach((width, card) => {
    if (used + width > box.w + 1e-6) {
      filled.push([]);
      used = 0;
    }
    filled.at(-1)?.push(card);
    used += width;
  });
  const places = filled.flatMap((cards, row): PlacedCard[] => {
    const own = cards.map((card) => widths[card] ?? 0);
    const spare = box.w - own.reduce((sum, width) => sum + width, 0);
    const more = row < filled.length - 1 || spare < box.w / 8 ? spare / cards.length : 0;
    let x = box.x;
    return cards.map((card, i) => {
      const w = (own[i] ?? 0) + more;
      const place = { card, page: Math.floor(row / perPage), x, y: box.y + (row % perPage) * height, w, h: height };
      x += w;
      return place;
    });
  });
  return { pages: Math.max(1, Math.ceil(filled.length / perPage)), places };
}

/** Whether the cards of some sentence, read row by row where they lie, stand in an accepted order. */
function tells(deal: RebuildDeal, sentences: readonly Sentence[], places: readonly PlacedCard[]): boolean {
  const { cards, dealt } = deal;
  const lying = [...places]
    .sort((a, b) => a.page - b.page || a.y - b.y || a.x - b.x)
    .flatMap(({ card }) => dealt[card] ?? []);
  return deal.sentences.some((sentence) => {
    const orders = sentences[sentence]?.orders ?? [];
    const own = cards[sentence] ?? [];
    const read = readOrder(
      own,
      lying.filter((card) => card.sentence === sentence).map(({ part }) => part),
    );
    return orders.some((order) => readOrder(own, order) === read);
  });
}
