import { upTo } from "../../base/seed";
import { atOnce, type Steps } from "../../base/steps";
import {
  type CardFace,
  type CardGrid,
  fittingCards,
  inset,
  type PlacedCard,
  packGrid,
  placeGrid,
  turned,
} from "../../page/cards";
import { bodyBox } from "../../page/furniture";
import { largestAtDesk, sizeFor, xHeightAt, xHeights } from "../../page/legibility";
import { type Box, mm, type Paper, papers } from "../../page/paper";
import type { Press } from "../contract";
import { blanksOf } from "../copies";
import { keptLayout } from "../kept-layout";
import { cardFace, looksLike, type Printed } from "../printed";
import { cardCount, type DealtLoop, type LoopDeal } from "./model";

/*
 * A card has its answer above a line and its prompt under it. In the room its sign stands large above both; on a mini card
 * sign and mark stand beside them, on the left and on the right.
 */

/** From where a card on the wall is read, mm: a group stands before it. Ours. */
export const wallDistance = 1000;

/** x-heights in mm that the words of a card should and must have. */
export function limitsFor({ size }: DealtLoop["options"]): { readonly comfortable: number; readonly least: number } {
  if (size === "mini") return xHeights.desk;
  return { comfortable: xHeightAt(wallDistance, 20), least: xHeightAt(wallDistance, 16) };
}

/** Room for the columns beside the words of a mini card, and clear of the cut; the same for the room. mm */
const mini = { side: 9, clear: 2.5 };
const room = { side: 14, clear: 8, gap: 4 };

/** Mini cards are no flatter and no narrower than this, width by height. */
const flattest = 4;
const narrowest = 0.8;
const smallestSize = 4;
/** x-height in mm beyond which words on a wall gain nothing. */
const largestOnWall = 16;

export const maxLines = 4;

export interface LoopLayout {
  /** As printed on: turned for one card a sheet. */
  readonly paper: Paper;
  readonly margin: number;
  readonly grid: CardGrid;
  /** Cards of a set, the blank ones last. */
  readonly places: readonly PlacedCard[];
  /** One size for all words, pt; undefined where some fit at none. */
  readonly size: number | undefined;
  /** Of the signs, pt. */
  readonly signSize: number;
}

export interface CardAreas {
  readonly sign: Box;
  readonly answer: Box;
  readonly prompt: Box;
  /** The line between them: its height, and from where to where. */
  readonly line: { readonly y: number; readonly x1: number; readonly x2: number };
  /** Where a triangle shows which half asks: its middle. */
  readonly pointer: readonly [number, number];
  readonly mark: Box;
}

/** The places on a card. */
export function areasOf(card: Box, size: "room" | "mini", signSize: number): CardAreas {
  return size === "mini" ? miniAreas(card) : roomAreas(card, signSize);
}

function miniAreas(card: Box): CardAreas {
  const words = inset(card, { left: mini.side, right: mini.side, top: mini.clear, bottom: mini.clear });
  const half = words.h / 2;
  const column = { ...words, x: card.x, w: mini.side };
  return {
    sign: { ...column, h: half },
    answer: inset({ ...words, h: half }, { bottom: 1 }),
    prompt: inset({ ...words, y: words.y + half, h: half }, { top: 1 }),
    line: { y: words.y + half, x1: words.x, x2: words.x + words.w },
    pointer: [card.x + mini.side / 2, words.y + 1.5 * half],
    mark: { ...column, x: card.x + card.w - mini.side, y: words.y + half, h: half },
  };
}

function roomAreas(card: Box, signSize: number): CardAreas {
  const inner = inset(card, room.clear);
  const head = capHeight(signSize);
  const words = inset(inner, { top: head + room.gap, left: room.side, right: room.side });
  const half = words.h / 2;
  const markHeight = 6;
  return {
    sign: { ...inner, h: head },
    answer: inset({ ...words, h: half }, { bottom: 2 }),
    prompt: inset({ ...words, y: words.y + half, h: half }, { top: 2 }),
    line: { y: words.y + half, x1: words.x, x2: words.x + words.w },
    pointer: [inner.x + room.side / 2, words.y + 1.5 * half],
    mark: { x: inner.x + inner.w - 14, y: inner.y, w: 14, h: markHeight },
  };
}

/** Height of a capital or figure, mm. */
export function capHeight(size: number): number {
  return 0.714 * mm(size);
}

export const layingLoop = keptLayout(findLayout, ({ deals, options, request }: DealtLoop) => ({
  words: deals.flatMap(wordsOf),
  settings: [options, request.classes, deals.map(cardCount)],
}));

export const layoutLoop = atOnce(layingLoop);

/** The cards a sheet that are asked for; else the fewest sheets on which the words are comfortable, else the largest words. */
function* findLayout(dealt: DealtLoop, press: Press): Steps<LoopLayout, undefined> {
  const { options, deals, request } = dealt;
  const count = Math.max(1, ...deals.map(cardCount)) + blanksOf(options, request.classes);
  const faces = facesOf(dealt, press);
  const comfort = sizeFor(limitsFor(options).comfortable, press.typeface);
  const choices = options.size === "mini" ? miniChoices(dealt, count) : roomChoices(dealt);
  let best: LoopLayout | undefined;
  for (const sheets of choices) {
    for (const { paper, box, columns, rows } of sheets) {
      const grid = gridOf(box, columns, rows, count);
      const signSize = signSizeFor(options.size, press);
      const size = yield* sizingOn(faces, grid, options.size, signSize, press);
      const { margin } = options;
      const layout = { paper, margin, grid, places: placeGrid(box, grid, count), size, signSize };
      if (!best || (size ?? 0) > (best.size ?? 0)) best = layout;
    }
    if (best?.size !== undefined && best.size >= comfort) break;
  }
  if (!best) throw new RangeError("no sheet of cards to choose from");
  return best;
}

interface SheetChoice {
  readonly paper: Paper;
  readonly box: Box;
  readonly columns: number;
  readonly rows: number;
}

/** Two cards one above the other, or one on a sheet that lies on its side. */
function roomChoices({ options }: DealtLoop): SheetChoice[][] {
  const upright = papers[options.paper];
  const lying = turned(upright);
  const two = { paper: upright, box: bodyBox(upright, options.margin), columns: 1, rows: 2 };
  const one = { paper: lying, box: bodyBox(lying, options.margin), columns: 1, rows: 1 };
  if (options.cards === undefined) return [[two], [one]];
  return [[options.cards === 2 ? two : one]];
}

/** Grids by the number of sheets, fewest first; of one number all shapes of card. */
function miniChoices({ options }: DealtLoop, count: number): SheetChoice[][] {
  const paper = papers[options.paper];
  const box = bodyBox(paper, options.margin);
  const shapes = upTo(4)
    .flatMap((c) => upTo(16).map((r) => ({ paper, box, columns: c + 1, rows: r + 1 })))
    .filter(({ columns, rows }) => columns * rows >= 2 && columns * rows <= 16)
    .filter(({ columns, rows }) => {
      const ratio = box.w / columns / (box.h / rows);
      return ratio <= flattest && ratio >= narrowest;
    });
  const asked = shapes.filter(({ columns, rows }) => columns * rows === options.cards);
  if (options.cards !== undefined && asked.length > 0) return [asked];
  const sheets = new Map<number, SheetChoice[]>();
  for (const shape of shapes) {
    const pages = Math.ceil(count / (shape.columns * shape.rows));
    sheets.set(pages, [...(sheets.get(pages) ?? []), shape]);
  }
  return [...sheets].sort(([a], [b]) => a - b).map(([, each]) => each);
}

function gridOf(box: Box, columns: number, rows: number, count: number): CardGrid {
  const half = (length: number): number => Math.floor(length * 2) / 2;
  const size = { w: half(box.w / columns), h: half(box.h / rows) };
  return packGrid(box, size, count) ?? { columns, rows, pages: Math.ceil(count / (columns * rows)), ...size };
}

/** Signs on the wall are read from 6 m; on a table from 400 mm, a little larger than the words must be. */
function signSizeFor(size: "room" | "mini", { typeface }: Press): number {
  return sizeFor(size === "room" ? xHeights.wall.comfortable : 2.6, typeface);
}

function wordsOf({ cards, decoys }: LoopDeal): Printed[] {
  return [...cards, ...decoys].flatMap(({ answer, prompt }) => [answer, prompt]);
}

/** All that stands on the cards, each once. */
function facesOf({ deals }: DealtLoop, press: Press): CardFace[] {
  const shown = new Map<string, Printed>();
  for (const each of deals.flatMap(wordsOf)) shown.set(looksLike(each), each);
  return [...shown.values()].map((each) => cardFace(each, press));
}

/** The largest size in pt at which all faces fit cards of a size; undefined where one fits at none. */
export const sizeOn = atOnce(sizingOn);

/** The same in steps. */
function* sizingOn(
  faces: readonly CardFace[],
  card: Pick<Box, "w" | "h">,
  size: "room" | "mini",
  signSize: number,
  { typeface }: Press,
): Steps<number | undefined, undefined> {
  const { answer } = areasOf({ x: 0, y: 0, w: card.w, h: card.h }, size, signSize);
  const largest = sizeFor(size === "mini" ? largestAtDesk : largestOnWall, typeface);
  return yield* fittingCards(faces, answer, typeface, { smallest: smallestSize, largest, maxLines });
}
