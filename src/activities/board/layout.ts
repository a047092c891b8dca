import { atOnce, type Steps } from "../../base/steps";
import { type CardFace, fittingCards, inset, linesOn, turned } from "../../page/cards";
import { bodyBox } from "../../page/furniture";
import { sizeFor } from "../../page/legibility";
import { type Box, type Paper, papers } from "../../page/paper";
import type { Press } from "../contract";
import { keptLayout } from "../kept-layout";
import { cardFace } from "../printed";
import type { BoardWord, DealtBoard } from "./model";
import type { BoardOptions, Grid } from "./options";

/*
 * A board fills a sheet, upright or lying, whichever gives the larger words, or breaks fewer of them. For players opposite each
 * other each cell has its word twice, the upper one turned by half. Under the cells there is room for the board's mark.
 */

/** Clear of the lines, and between a word and its turned twin, mm. */
const clear = 2.5;
/** For the mark under the cells, mm. */
const footHeight = 2.5;
const between = 2.5;
const smallestSize = 4;
/** x-height in mm beyond which words on a board gain nothing. */
const largestOnBoard = 9;

export const maxLines = 3;

export interface BoardLayout {
  /** As printed on. */
  readonly paper: Paper;
  readonly margin: number;
  /** The cells and the mark under them: what a player has before him. mm */
  readonly board: Box;
  /** By cell, row by row. */
  readonly cells: readonly Box[];
  /** One size for all words, pt; undefined where some fit at none. */
  readonly size: number | undefined;
}

export const layingBoard = keptLayout(
  (dealt: DealtBoard, press: Press) =>
    layingOut(dealt.words, dealt.grid ?? { rows: 1, columns: 1 }, dealt.options, press),
  ({ words, grid, options }) => ({ words: words.map(({ shown }) => shown), settings: [grid, options] }),
);

export const layoutBoard = atOnce(layingBoard);

/**
 * The board of these words on the side of the paper on which they are larger, else on which they take fewer lines; upright where
 * that is all the same.
 */
export const layoutOf = atOnce(layingOut);

/** The same in steps. */
function* layingOut(
  words: readonly BoardWord[],
  grid: Grid,
  options: BoardOptions,
  press: Press,
): Steps<BoardLayout, undefined> {
  const { margin, facing } = options;
  const faces = words.map(({ shown }) => cardFace(shown, press));
  const upright = papers[options.paper];
  const choices: BoardLayout[] = [];
  for (const paper of [upright, turned(upright)]) {
    const board = bodyBox(paper, margin);
    const cells = cellsOn(inset(board, { bottom: footHeight }), grid);
    const [first = { x: 0, y: 0, w: 1, h: 1 }] = cells;
    choices.push({ paper, margin, board, cells, size: yield* sizingOn(faces, first, facing, press) });
  }
  const lines = ({ cells, size }: BoardLayout): number => {
    const [area] = cells[0] ? areasOf(cells[0], facing) : [];
    return area && size !== undefined ? linesOn(faces, area.box, press.typeface, size, maxLines) : 0;
  };
  return choices.reduce((a, b) => {
    const gain = (b.size ?? 0) - (a.size ?? 0);
    return gain > 0 || (gain === 0 && lines(b) < lines(a)) ? b : a;
  });
}

function cellsOn(box: Box, { rows, columns }: Grid): Box[] {
  const [w, h] = [box.w / columns, box.h / rows];
  return Array.from({ length: rows * columns }, (_, i) => ({
    x: box.x + (i % columns) * w,
    y: box.y + Math.floor(i / columns) * h,
    w,
    h,
  }));
}

/** Where a cell's word stands: once, or below and, turned, above. */
export function areasOf(cell: Box, facing: BoardOptions["facing"]): { readonly box: Box; readonly turn: 0 | 2 }[] {
  const inner = inset(cell, clear);
  if (facing === "side") return [{ box: inner, turn: 0 }];
  const h = Math.max(0, (inner.h - 2 * between) / 2);
  return [
    { box: { ...inner, h }, turn: 2 },
    { box: { ...inner, y: inner.y + inner.h - h, h }, turn: 0 },
  ];
}

/** The largest size in pt at which faces fit a cell; undefined where one fits at none. */
export const sizeOn = atOnce(sizingOn);

/** The same in steps. */
function* sizingOn(
  faces: readonly CardFace[],
  cell: Box,
  facing: BoardOptions["facing"],
  { typeface }: Press,
): Steps<number | undefined, undefined> {
  const [area] = areasOf(cell, facing);
  const largest = sizeFor(largestOnBoard, typeface);
  return area && (yield* fittingCards(faces, area.box, typeface, { smallest: smallestSize, largest, maxLines }));
}
