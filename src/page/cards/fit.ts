import type { Range } from "../../base/range";
import { plain, type Run, runsKey } from "../../base/run";
import { atOnce, type Steps } from "../../base/steps";
import { type FittedLine, fitAt, largestSize } from "../../text/fit";
import { type KeptFits, keptFits } from "../../text/kept-fit";
import { blockHeight, type Rows, rectangle } from "../../text/space";
import type { Typeface } from "../../text/typeface";
import { type Box, mm } from "../paper";
import type { QuarterTurn, SheetItem } from "../sheet";

/*
 * What stands on a card: words, a picture, or a picture over its words. All cards of a set have words of one size.
 */

export interface CardFace {
  /** Empty for a picture alone. */
  readonly runs: readonly Run[];
  readonly picture?: CardPicture | undefined;
  readonly lang?: string | undefined;
  readonly source?: Range | undefined;
}

export interface CardPicture {
  readonly key: string;
  readonly alt: string;
  /** Width divided by height. */
  readonly ratio: number;
}

export interface FitLimits {
  /** pt */
  readonly smallest: number;
  /** pt */
  readonly largest: number;
  readonly maxLines: number;
}

/** Vertical measures of words on a card, em: what ascenders and descenders need. */
export const cardRows: Rows = { above: 0.78, below: 0.24, leading: 1.2 };

/** Of the height, what a picture over words gets; mm between them. */
const pictureShare = 0.6;
const captionGap = 1;

/**
 * The largest size (pt) at which the words of all faces fit boxes of so many millimetres, each in at most `maxLines` lines:
 * one box for all, or one for each. `largest` where there are no words; undefined where some words fit at no size.
 */
export const fitCards = atOnce(fittingCards);

/** The same with a pause after each face. */
export function* fittingCards(
  faces: readonly CardFace[],
  room: Pick<Box, "w" | "h"> | readonly Pick<Box, "w" | "h">[],
  typeface: Pick<Typeface, "measure">,
  limits: FitLimits,
): Steps<number | undefined, undefined> {
  const { smallest, largest, maxLines } = limits;
  let common = largest;
  let known: { readonly w: number; readonly h: number; readonly fits: KeptFits } | undefined;
  for (const [i, face] of faces.entries()) {
    const box = "w" in room ? room : room[i];
    const words = wordsOf(face.runs);
    if (!box || words === "") continue;
    const { w, h } = roomOf(face, box);
    if (known?.w !== w || known.h !== h)
      known = { w, h, fits: keptFits(typeface, `card ${w} ${h} ${smallest} ${largest} ${maxLines}`) };
    const own = known.fits.get(
      words,
      () => largestSize(typeface, face.runs, rectangle(w, h, cardRows), limits) ?? null,
    );
    if (own === null) return undefined;
    common = Math.min(common, own);
    yield;
  }
  return common;
}

const keys = new WeakMap<readonly Run[], string>();

/** What sizes are kept by; empty where there is nothing to set. Most words are the very ones of the last reading. */
function wordsOf(runs: readonly Run[]): string {
  const known = keys.get(runs) ?? (plain(runs).trim() === "" ? "" : runsKey(runs));
  keys.set(runs, known);
  return known;
}

/** How many lines the words of all faces take in such a box (mm) at `size` pt. */
export function linesOn(
  faces: readonly CardFace[],
  room: Pick<Box, "w" | "h">,
  typeface: Pick<Typeface, "measure">,
  size: number,
  maxLines: number,
): number {
  return faces.reduce((sum, face) => {
    const { w, h } = roomOf(face, room);
    return sum + (fitAt(typeface, face.runs, rectangle(w, h, cardRows), size, maxLines)?.lines.length ?? 0);
  }, 0);
}

/** The height (mm) of a box in which a picture leaves so much for its words. */
export function heightWithPicture(words: number): number {
  return (words + captionGap) / (1 - pictureShare);
}

/** What a face's picture leaves of a box for words, mm. */
function roomOf({ picture }: CardFace, { w, h }: Pick<Box, "w" | "h">): Pick<Box, "w" | "h"> {
  const taken = picture ? h * pictureShare + captionGap : 0;
  return { w, h: Math.max(0, h - taken) };
}

export interface CardSetting {
  /** Quarter turns of the whole content; 2 for a back that stands upside down. 0 if left out. */
  readonly turn?: 0 | 2;
  readonly align?: "start" | "middle";
  readonly maxLines: number;
}

/**
 * Draws a face in a box (mm), centred, its words at `size` pt. Undefined where the words do not fit at that size: nothing is
 * clipped.
 */
export function setCard(
  face: CardFace,
  box: Box,
  size: number,
  typeface: Pick<Typeface, "measure">,
  { turn = 0, align = "middle", maxLines }: CardSetting,
): SheetItem[] | undefined {
  const room = roomOf(face, box);
  const fitted = fitAt(typeface, face.runs, rectangle(room.w, room.h, cardRows), size, maxLines);
  if (!fitted) return undefined;
  const { lines } = fitted;
  const { picture } = face;
  const share = lines.length > 0 ? pictureShare : 1;
  const drawn = picture && within(picture.ratio, box.w, box.h * share);
  const words = blockHeight(cardRows, lines.length, size);
  const gap = drawn && lines.length > 0 ? captionGap : 0;
  const top = box.y + (box.h - (drawn?.h ?? 0) - gap - words) / 2;
  const upright: SheetItem[] = [];
  const from = face.source ? { source: face.source } : {};
  if (picture && drawn) {
    const { key, alt } = picture;
    upright.push({ type: "picture", key, alt, x: box.x + (box.w - drawn.w) / 2, y: top, ...drawn, turn: 0, ...from });
  }
  const first = top + (drawn?.h ?? 0) + gap + cardRows.above * mm(size);
  const x = align === "middle" ? box.x + box.w / 2 : box.x;
  lines.forEach(({ runs }: FittedLine, i) => {
    const y = first + i * cardRows.leading * mm(size);
    const lang = face.lang === undefined ? {} : { lang: face.lang };
    upright.push({ type: "text", runs, x, y, size, turn: 0, anchor: align, ...lang, ...from });
  });
  return turn === 2 ? upright.map((item) => turnOver(item, box)) : upright;
}

function within(ratio: number, w: number, h: number): { readonly w: number; readonly h: number } {
  const width = Math.min(w, h * ratio);
  return { w: width, h: width / ratio };
}

/** An item turned by half about the middle of a box. */
function turnOver(item: SheetItem, { x, y, w, h }: Box): SheetItem {
  const half = (turn: QuarterTurn): QuarterTurn => (turn === 0 ? 2 : 0);
  if (item.type === "text") return { ...item, x: 2 * x + w - item.x, y: 2 * y + h - item.y, turn: half(item.turn) };
  if (item.type !== "picture") return item;
  return { ...item, x: 2 * x + w - item.x - item.w, y: 2 * y + h - item.y - item.h, turn: half(item.turn) };
}
