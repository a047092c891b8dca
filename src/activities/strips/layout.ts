import { atOnce, type Steps } from "../../base/steps";
import {
  type CardFace,
  type CardGrid,
  type CardPicture,
  fittingCards,
  inset,
  type PlacedCard,
  packStrips,
  placeGrid,
} from "../../page/cards";
import { readsRightToLeft } from "../../page/document/words";
import { bodyBox } from "../../page/furniture";
import { largestAtDesk, sizeFor, xHeights } from "../../page/legibility";
import { type Box, type Paper, papers } from "../../page/paper";
import type { Press } from "../contract";
import { blanksOf } from "../copies";
import { keptLayout } from "../kept-layout";
import { cardPicture } from "../printed";
import type { DealtStrips, StripEvent, StripsDeal } from "./model";
import { printedEvent } from "./story";

/*
 * Strips are as wide as the page's body and all of one height, so that none can be told by its size. A letter stands before
 * the text and the mark behind it.
 */

/** What the letter and the mark take, and the clearance above and below the text, mm. */
const signWidth = 15;
const markWidth = 13;
const clear = 3;

export const maxLines = 4;
/** Heights to choose from, mm. */
const lowest = 14;
const highest = 32;
const smallestSize = 4;

export interface StripsLayout {
  readonly paper: Paper;
  readonly margin: number;
  readonly box: Box;
  readonly grid: CardGrid;
  /** Strips of the set with the most, the blank ones last. */
  readonly places: readonly PlacedCard[];
  /** One size for all texts, pt; undefined where one fits at no size. */
  readonly size: number | undefined;
  readonly rightToLeft: boolean;
}

/** The places of letter, text and mark on a strip; from right to left the letter stands on the right. */
export function areasOf(
  strip: Box,
  rightToLeft: boolean,
): { readonly sign: Box; readonly text: Box; readonly mark: Box } {
  const [left, right] = rightToLeft ? [markWidth, signWidth] : [signWidth, markWidth];
  const text = inset(strip, { left, right, top: clear, bottom: clear });
  const first = { ...strip, w: left };
  const last = { ...strip, x: strip.x + strip.w - right, w: right };
  return rightToLeft ? { sign: last, text, mark: first } : { sign: first, text, mark: last };
}

/** The places that a deal takes: not all where another desk's story is longer. */
export function placesOn(
  { places }: StripsLayout,
  { options, request }: DealtStrips,
  deal: StripsDeal,
): readonly PlacedCard[] {
  return places.slice(0, deal.dealt.length + blanksOf(options, request.classes));
}

export const layingStrips = keptLayout(findLayout, (dealt: DealtStrips) => ({
  words: printedOn(dealt),
  settings: [dealt.options, dealt.request.classes, dealt.events.length, dealt.deals.map((deal) => deal.dealt.length)],
}));

export const layoutStrips = atOnce(layingStrips);

/** All events, then those that deals print in other words. */
function printedOn({ events, deals }: Pick<DealtStrips, "events" | "deals">): StripEvent[] {
  return [...events, ...deals.flatMap((deal) => deal.told.flatMap((index) => printedEvent(deal, index) ?? []))];
}

/** The height that is asked for, else the fewest sheets on which the text is comfortable, else the largest text. */
function* findLayout({ options, events, deals, request }: DealtStrips, press: Press): Steps<StripsLayout, undefined> {
  const paper = papers[options.paper];
  const { margin } = options;
  const box = bodyBox(paper, margin);
  const longest = Math.max(0, ...deals.map(({ dealt }) => dealt.length));
  const count = Math.max(1, longest + blanksOf(options, request.classes));
  const printed = printedOn({ events, deals });
  const rightToLeft = readsRightToLeft(events.map(({ text }) => text).join(" "));
  const base = { paper, margin, box, rightToLeft };
  const comfort = sizeFor(xHeights.desk.comfortable, press.typeface);
  let best: StripsLayout | undefined;
  for (const height of heightsFor(box, count, options.height)) {
    const grid = packStrips(box, height, count);
    if (!grid) continue;
    const size = yield* sizingOn(printed, { x: 0, y: 0, w: grid.w, h: grid.h }, press);
    if (!best || (size ?? 0) > (best.size ?? 0)) best = { ...base, grid, places: placeGrid(box, grid, count), size };
    if (size !== undefined && size >= comfort) break;
  }
  const whole: CardGrid = { columns: 1, rows: 1, pages: count, w: box.w, h: box.h };
  return best ?? { ...base, grid: whole, places: placeGrid(box, whole, count), size: undefined };
}

/** The height that is asked for; else the greatest for each number of sheets, the fewest first. */
function heightsFor(box: Box, count: number, asked: number | undefined): number[] {
  if (asked !== undefined) return [Math.min(asked, box.h)];
  const heights = new Set<number>();
  for (let sheets = 1; sheets <= count; sheets++) {
    const height = Math.floor((box.h / Math.ceil(count / sheets)) * 2) / 2;
    if (height >= lowest) heights.add(Math.min(highest, height));
  }
  return heights.size > 0 ? [...heights] : [lowest];
}

/** The largest size in pt at which all events fit strips of a size; undefined where one fits at none. */
export const sizeOn = atOnce(sizingOn);

/** The same in steps. */
function* sizingOn(events: readonly StripEvent[], strip: Box, press: Press): Steps<number | undefined, undefined> {
  const largest = sizeFor(largestAtDesk, press.typeface);
  const { text } = areasOf(strip, false);
  const faces = events.map((event) => faceOf(event, press));
  const rooms = events.map((event) => partsOf(event, text, false, press).words);
  return yield* fittingCards(faces, rooms, press.typeface, { smallest: smallestSize, largest, maxLines });
}

/** Of a strip's width, what a picture beside words gets at most; mm between them. */
const pictureShare = 0.3;
const pictureGap = 4;

/** Where an event's picture and words stand in a box: the picture first, as high as the box allows. */
export function partsOf(
  { runs, picture }: StripEvent,
  box: Box,
  rightToLeft: boolean,
  press: Press,
): { readonly picture: (CardPicture & Box) | undefined; readonly words: Box } {
  const drawn = cardPicture(picture, press);
  if (!drawn) return { picture: undefined, words: box };
  const most = runs.length > 0 ? box.w * pictureShare : box.w;
  const w = Math.min(most, box.h * drawn.ratio);
  const h = w / drawn.ratio;
  const taken = w + pictureGap;
  return {
    picture: { ...drawn, x: rightToLeft ? box.x + box.w - w : box.x, y: box.y + (box.h - h) / 2, w, h },
    words: { ...box, x: rightToLeft ? box.x : box.x + taken, w: Math.max(0, box.w - taken) },
  };
}

/** What stands on a strip in words; a picture that cannot be read leaves its alternative text. */
export function faceOf({ runs, text, picture, source }: StripEvent, press: Press): CardFace {
  const lost = picture && runs.length === 0 && !cardPicture(picture, press);
  return { runs: lost ? [{ text }] : runs, source };
}
