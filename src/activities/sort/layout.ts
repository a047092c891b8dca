import { atOnce, type Steps } from "../../base/steps";
import {
  type CardFace,
  type CardGrid,
  fittingCards,
  inset,
  largestCards,
  type PlacedCard,
  packGrid,
  placeGrid,
  turned,
} from "../../page/cards";
import { bodyBox } from "../../page/furniture";
import { largestAtDesk, sizeFor, xHeights } from "../../page/legibility";
import { type Box, type Paper, papers } from "../../page/paper";
import type { Press } from "../contract";
import { blanksOf } from "../copies";
import { keptLayout } from "../kept-layout";
import { cardPicture } from "../printed";
import { largestOnCircles, matsOf } from "./mats";
import type { CardText, DealtSort, SortCard, SortDeal } from "./model";

/*
 * All cards of a set have one size and their words another; header cards stand in the same grid.
 */

/** Clear of the cut, mm; above and below as much as the line with the mark takes, so that words stand in the middle. */
const clear = { left: 3.5, right: 3.5, top: 5, bottom: 5 };
const limits = { minW: 34, minH: 20, maxW: 95, maxH: 62, ratio: [1.3, 3] as const };
/** On a mat several cards must find room in each place. */
const onFields = { maxW: 70, maxH: 42 };
const smallestSize = 4;
const pleasantRatio = 1.7;

export const maxLines = 4;

export interface SortLayout {
  readonly paper: Paper;
  readonly margin: number;
  readonly box: Box;
  readonly grid: CardGrid;
  /** Header cards, cards as dealt, blank ones. */
  readonly places: readonly PlacedCard[];
  /** One size for all words, pt; undefined where some fit at no size. */
  readonly size: number | undefined;
  /** One size for all names of piles. */
  readonly headerSize: number | undefined;
  /** One size for the examples on header cards; undefined where there are none. */
  readonly exampleSize: number | undefined;
}

export function wordsBox(card: Box): Box {
  return inset(card, clear);
}

export function headerCount({ options, piles }: DealtSort): number {
  return options.headers === "cards" ? piles.length : 0;
}

/** Header and other cards of a deal, without blank ones; without a deal, of the largest. */
export function pieceCount(dealt: DealtSort, deal?: SortDeal): number {
  const deals = deal ? [deal] : dealt.deals;
  return headerCount(dealt) + Math.max(0, ...deals.map(({ order }) => order.length));
}

/** Where a header card has its name, and its example under it. */
export function headerBoxes(card: Box, withExample: boolean): { readonly name: Box; readonly example: Box } {
  const words = wordsBox(card);
  const h = withExample ? words.h / 2 : words.h;
  return { name: { ...words, h }, example: { ...words, y: words.y + h, h: words.h - h } };
}

/** Examples that the header cards of a deal show. */
export function examplesIn({ cards }: DealtSort, { examples }: SortDeal): SortCard[] {
  return examples.flatMap((card) => cards[card ?? -1] ?? []);
}

export const layingSort = keptLayout(findLayout, (dealt: DealtSort) => ({
  words: [...dealt.cards, ...dealt.deals.flatMap((deal) => examplesIn(dealt, deal))],
  settings: [
    dealt.options,
    dealt.request.classes,
    pieceCount(dealt),
    dealt.piles.map(({ name }) => name),
    matsOf(dealt),
  ],
}));

export const layoutSort = atOnce(layingSort);

function* findLayout(dealt: DealtSort, press: Press): Steps<SortLayout, undefined> {
  const { options, request } = dealt;
  const paper = papers[options.paper];
  const box = bodyBox(paper, options.margin);
  const count = Math.max(1, pieceCount(dealt) + blanksOf(options, request.classes));
  const base = { paper, margin: options.margin, box };
  const comfort = sizeFor(xHeights.desk.comfortable, press.typeface);
  let best: SortLayout | undefined;
  const mats = matsOf(dealt);
  const matBox = bodyBox(turned(paper), options.margin);
  const round = largestOnCircles(dealt.piles.length, matBox);
  const least = { maxW: Math.max(limits.minW, round.maxW), maxH: Math.max(limits.minH, round.maxH) };
  const onMat = { circles: least, fields: onFields, none: {} }[mats];
  const grids =
    options.cards === undefined
      ? largestCards(box, count, { ...limits, ...onMat })
      : gridsOf(box, count, options.cards);
  for (const grid of grids) {
    const size = yield* sizingOn(dealt, grid, press);
    if (!best || (size ?? 0) > (best.size ?? 0))
      best = {
        ...base,
        grid,
        places: placeGrid(box, grid, count),
        size,
        ...(yield* headerSizesOn(dealt, grid, press)),
      };
    if (size !== undefined && size >= comfort) break;
  }
  const whole: CardGrid = { columns: 1, rows: 1, pages: count, w: box.w, h: box.h };
  return (
    best ?? {
      ...base,
      grid: whole,
      places: placeGrid(box, whole, count),
      size: undefined,
      headerSize: undefined,
      exampleSize: undefined,
    }
  );
}

/** Grids of so many cards a sheet, as large as the sheet allows, those of a pleasant shape first. */
export function gridsOf(box: Box, count: number, asked: number): CardGrid[] {
  const found: CardGrid[] = [];
  for (let columns = 1; columns <= Math.min(asked, 6); columns++) {
    const rows = Math.ceil(asked / columns);
    const w = Math.floor((box.w / columns) * 2) / 2;
    const h = Math.min(Math.floor((box.h / rows) * 2) / 2, w);
    const grid = packGrid(box, { w, h }, count);
    if (!grid || (columns > 1 && w / h < 1)) continue;
    // A sheet that could hold more than asked for holds no more.
    found.push({ ...grid, columns, rows, pages: Math.ceil(count / (columns * rows)) });
  }
  const unlike = ({ w, h }: CardGrid): number => Math.abs(Math.log(w / h / pleasantRatio));
  return found.sort((a, b) => unlike(a) - unlike(b));
}

/** The largest size in pt at which the words of all cards fit a card; undefined where some fit at none. */
export const sizeOn = atOnce(sizingOn);

/** The same in steps. */
function* sizingOn(
  { cards }: Pick<DealtSort, "cards">,
  size: Pick<Box, "w" | "h">,
  press: Press,
): Steps<number | undefined, undefined> {
  const room = wordsBox({ x: 0, y: 0, ...pick(size) });
  const largest = sizeFor(largestAtDesk, press.typeface);
  return yield* fittingCards(
    cards.map((card) => faceOf(card, press)),
    room,
    press.typeface,
    { smallest: smallestSize, largest, maxLines },
  );
}

function* headerSizesOn(
  dealt: DealtSort,
  size: Pick<Box, "w" | "h">,
  press: Press,
): Steps<Pick<SortLayout, "headerSize" | "exampleSize">, undefined> {
  const examples = dealt.deals.flatMap((deal) => examplesIn(dealt, deal));
  const { name, example } = headerBoxes({ x: 0, y: 0, ...pick(size) }, examples.length > 0);
  const largest = sizeFor(largestAtDesk, press.typeface);
  const limits = { smallest: smallestSize, largest, maxLines: 3 };
  const names = dealt.piles.map((pile) => ({ runs: [{ text: pile.name, bold: true }] }));
  const faces = examples.map((card) => faceOf(card, press));
  return {
    headerSize: yield* fittingCards(names, name, press.typeface, limits),
    exampleSize: examples.length > 0 ? yield* fittingCards(faces, example, press.typeface, limits) : undefined,
  };
}

function pick({ w, h }: Pick<Box, "w" | "h">): Pick<Box, "w" | "h"> {
  return { w, h };
}

export function faceOf({ runs, picture, lang }: CardText, press: Press): CardFace {
  return { runs, lang, picture: cardPicture(picture, press) };
}
