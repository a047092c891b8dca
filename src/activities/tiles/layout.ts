import { pictureSize } from "../../base/picture";
import { type Run, runsKey } from "../../base/run";
import { atOnce, type Steps } from "../../base/steps";
import { bodyBox } from "../../page/furniture";
import { largestAtDesk, sizeFor, xHeights } from "../../page/legibility";
import { type Box, type Paper, papers, pt } from "../../page/paper";
import type { QuarterTurn } from "../../page/sheet";
import { packSquares, type SquarePacking, squarePackings } from "../../page/squares";
import { type FittedText, fitAt, largestSize } from "../../text/fit";
import { keptFit } from "../../text/kept-fit";
import { type Room, type Rows, trapezoid } from "../../text/space";
import type { Press } from "../contract";
import { blanksOf } from "../copies";
import { keptLayout } from "../kept-layout";
import type { DealtTiles, Edge } from "./model";

/*
 * How large tiles and their words are. A word stands in the quarter of its tile between the diagonals, its top towards the
 * edge, in up to three lines; all words of an activity have one size.
 */

/** Clear of the cut, mm: what a careful pair of scissors needs. */
const inset = 2.2;
/** Clear of the diagonals, mm, each side. */
const clear = 0.9;
/** Half of the square in the middle that belongs to the mark, mm. */
export const centre = 3.4;

export const maxLines = 3;
const rows: Rows = { above: 0.8, below: 0.24, leading: 1.14 };

/** Below this no word is set, pt. */
const smallestSize = 3;

export interface TilesLayout {
  readonly paper: Paper;
  readonly margin: number;
  readonly box: Box;
  readonly packing: SquarePacking;
  /** Squares of one set: its tiles, then blank ones to write on. */
  readonly count: number;
  /** One size for all words, pt; undefined where some word does not fit at any size. */
  readonly size: number | undefined;
}

/** One edge as set, before its turn: depths in mm from the cut to the baselines, and the picture's box. */
export interface SetEdge {
  readonly lines: readonly { readonly runs: FittedText["lines"][number]["runs"]; readonly depth: number }[];
  readonly picture?: { readonly depth: number; readonly w: number; readonly h: number };
}

/** Tiles as large as asked for, else on the fewest sheets on which all words are comfortable, else as large as it goes. */
export const layingTiles = keptLayout(findLayout, ({ deals, options, frame, request }: DealtTiles) => ({
  words: edgesOf(deals),
  settings: [options, frame, request.classes],
}));

export const layoutTiles = atOnce(layingTiles);

function* findLayout({ options, deals, frame, request }: DealtTiles, press: Press): Steps<TilesLayout, undefined> {
  const paper = papers[options.paper];
  const { margin } = options;
  const box = bodyBox(paper, margin);
  const count = (frame ? frame.rows * frame.columns : 1) + blanksOf(options, request.classes);
  const edges = distinctEdges(edgesOf(deals));
  const choices =
    options.size === undefined
      ? squarePackings(box, count, { min: 20, max: 70 })
      : [packSquares(box, options.size, count)];
  const comfort = sizeFor(xHeights.desk.comfortable, press.typeface);
  let best: TilesLayout | undefined;
  for (const packing of choices) {
    if (!packing) continue;
    const size = yield* sizing(edges, packing.side, press);
    const layout = { paper, margin, box, packing, count, size };
    if (!best || (size ?? 0) > (best.size ?? 0)) best = layout;
    if (size !== undefined && size >= comfort) break;
  }
  return (
    best ?? {
      paper,
      margin,
      box,
      count,
      packing: { columns: 1, rows: 1, pages: count, side: Math.min(box.w, box.h) },
      size: undefined,
    }
  );
}

/** The words at all edges that have some. */
function edgesOf(deals: DealtTiles["deals"]): Edge[] {
  const edges: Edge[] = [];
  for (const { solved } of deals) for (const face of solved) for (const edge of face) if (edge) edges.push(edge);
  return edges;
}

function distinctEdges(edges: readonly Edge[]): Edge[] {
  const found = new Map<string, Edge>();
  for (const edge of edges)
    found.set(edge.picture ? `${wordKey(edge.runs)}\u0000${edge.picture.path}` : wordKey(edge.runs), edge);
  return [...found.values()];
}

/** The largest size at which every edge fits tiles of a side (mm); undefined where one fits at none. */
export const commonSize = atOnce(sizing);

/** The same with a pause after each edge. */
function* sizing(edges: readonly Edge[], side: number, press: Press): Steps<number | undefined, undefined> {
  let size = sizeFor(largestAtDesk, press.typeface);
  for (const edge of edges) {
    if (edge.runs.length === 0) continue;
    const own = ownSize(edge, side, press);
    if (own === undefined) return undefined;
    size = Math.min(size, own);
    yield;
  }
  return size;
}

const wordKeys = new WeakMap<readonly Run[], string>();

function wordKey(runs: readonly Run[]): string {
  const key = wordKeys.get(runs) ?? runsKey(runs);
  wordKeys.set(runs, key);
  return key;
}

/** The largest size at which an edge's words fit a tile of a side (mm); undefined where they fit at none. */
function ownSize(edge: Edge, side: number, press: Press): number | undefined {
  const { typeface } = press;
  const picture = pictureBox(side, edge, press);
  return keptFit(typeface, `tile ${side}`, picture ? `${picture.h} ${wordKey(edge.runs)}` : wordKey(edge.runs), () => {
    const limits = { smallest: smallestSize, largest: sizeFor(largestAtDesk, typeface), maxLines };
    return largestSize(typeface, edge.runs, roomOn(side, picture), limits);
  });
}

/** The smallest side (whole mm, up to 95) of a tile on which this edge can be set at `size` pt; undefined where none is. */
export function sideFor(edge: Edge, size: number, press: Press): number | undefined {
  const { typeface } = press;
  const find = (): number | undefined => {
    for (let side = 15; side <= 95; side++) {
      const room = roomOn(side, pictureBox(side, edge, press));
      if (fitAt(typeface, edge.runs, room, size, maxLines)) return side;
    }
    return undefined;
  };
  return edge.picture ? find() : keptFit(typeface, `tile for ${size}`, wordKey(edge.runs), find);
}

function depthOf(side: number): number {
  return Math.max(0, side / 2 - inset - centre);
}

function widthAt(side: number, depth: number): number {
  return side - 2 * (inset + depth) - 2 * clear;
}

interface PictureBox {
  readonly w: number;
  readonly h: number;
}

/** The box of an edge's picture, mm; undefined without a picture. A caption leaves it three fifths of the depth. */
function pictureBox(side: number, edge: Edge, press: Press): PictureBox | undefined {
  const bytes = edge.picture && press.pictures.get(edge.picture.path);
  const size = bytes && pictureSize(bytes);
  if (!size) return undefined;
  const ratio = size.width / size.height;
  const depth = depthOf(side) * (edge.runs.length > 0 ? 0.6 : 1);
  const h = Math.max(0, Math.min(depth, widthAt(side, 0) / (ratio + 2)));
  return { w: h * ratio, h };
}

const captionGap = 0.6;

/** What an edge's picture leaves for words. */
function roomOn(side: number, picture: PictureBox | undefined): Room {
  const start = picture ? picture.h + captionGap : 0;
  return trapezoid({ width: widthAt(side, start), depth: depthOf(side) - start, taper: 2, outer: "first" }, rows);
}

/** Sets one edge at a size that fits. */
export function setEdge(edge: Edge, side: number, size: number, press: Press): SetEdge {
  const picture = pictureBox(side, edge, press);
  const start = inset + (picture ? picture.h + captionGap : 0);
  const em = size / pt(1);
  const fitted =
    edge.runs.length > 0 ? fitAt(press.typeface, edge.runs, roomOn(side, picture), size, maxLines) : undefined;
  return {
    lines: (fitted?.lines ?? []).map(({ runs }, i) => ({ runs, depth: start + (rows.above + i * rows.leading) * em })),
    ...(picture ? { picture: { ...picture, depth: inset + picture.h / 2 } } : {}),
  };
}

/** The point at a depth below the middle of a side of a square, mm. */
export function below(x: number, y: number, side: number, turn: QuarterTurn, depth: number): readonly [number, number] {
  const middle = side / 2;
  if (turn === 0) return [x + middle, y + depth];
  if (turn === 1) return [x + side - depth, y + middle];
  if (turn === 2) return [x + middle, y + side - depth];
  return [x + depth, y + middle];
}
