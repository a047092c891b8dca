import type { Run } from "../../base/run";
import { sizeStep } from "../../text/fit";
import { bodyBox, furniture } from "../furniture";
import type { Box, Paper } from "../paper";
import type { Sheet, SheetItem, Stock } from "../sheet";
import type { Block } from "./blocks";
import { compile } from "./compile";
import { paginate } from "./paginate";
import { drawStack, slack, stackHeight } from "./part";
import type { Measure } from "./words";

/** Size of running text, pt, where a paper does not say. */
export const textSize = 10;

/** What a paper is printed on and what stands on all of its pages. */
export interface DocumentPage {
  /** As it is printed on: width above height for landscape. */
  readonly paper: Pick<Paper, "width" | "height">;
  /** mm */
  readonly margin: number;
  /** Left above: unit and activity. */
  readonly title: readonly Run[];
  /** Right above: level, version, class, deal code. */
  readonly state: readonly Run[];
  /** What to do with the bar that shows whether the print was scaled. */
  readonly barLabel: string;
  /** Right below. `page` from 0. */
  readonly folio: (page: number, pages: number) => string;
  /** Names a page to a reader of the file; `page` from 0. */
  readonly label: string | ((page: number, pages: number) => string);
  /** BCP 47 */
  readonly lang: string;
  /** Running text, pt; 10 if left out. */
  readonly size?: number;
  /** `paper` if left out. */
  readonly stock?: Stock;
}

/**
 * Sets a paper: as many sheets as its blocks need, one at least. Nothing is clipped: a word that is too wide makes its text
 * smaller, or is broken where that would take more than a quarter of its size or go below 6.5 pt.
 */
export function setDocument(blocks: readonly Block[], page: DocumentPage, typeface: Measure): Sheet[] {
  const box = bodyBox(page.paper, page.margin);
  const setting = { size: page.size ?? textSize, width: box.w, typeface };
  const pages = paginate(compile(blocks, setting, box.h), box.h);
  return pages.map((placed, i) =>
    sheetOf(
      page,
      i,
      pages.length,
      placed.flatMap(({ part, y }) => part.draw(box.x, box.y + y)),
    ),
  );
}

/** A sheet with title line, folio and size bar round its items. `page` from 0. */
export function sheetOf(page: DocumentPage, index: number, pages: number, items: readonly SheetItem[]): Sheet {
  const { paper, margin, title, state, label, lang } = page;
  const texts = { title, state, folio: page.folio(index, pages) };
  return {
    width: paper.width,
    height: paper.height,
    stock: page.stock ?? "paper",
    label: typeof label === "string" ? label : label(index, pages),
    lang,
    items: [...furniture(paper, margin, texts, page.barLabel), ...items],
  };
}

export interface BoxSetting {
  /** pt; 10 if left out. */
  readonly size?: number;
  /** The least size that the box's height may make of it, pt; 6.5 if left out. */
  readonly least?: number;
}

/** Blocks that have been set in a box. */
export interface BoxedBlocks {
  readonly items: readonly SheetItem[];
  /** mm, from the box's top. */
  readonly height: number;
  /** pt */
  readonly size: number;
  /** Whether they end within the box; if not, the items reach below it. */
  readonly fits: boolean;
}

/** Blocks in a box of one page, for slips, labels and station cards: at `size`, or at the largest below it that fits. */
export function setInBox(
  blocks: readonly Block[],
  box: Box,
  typeface: Measure,
  { size = textSize, least = Math.min(size, 6.5) }: BoxSetting = {},
): BoxedBlocks {
  for (let trial = size; ; trial = Math.max(least, trial - sizeStep)) {
    const parts = compile(blocks, { size: trial, width: box.w, typeface }, box.h);
    const height = stackHeight(parts);
    const fits = height <= box.h + slack;
    if (fits || trial <= least) return { items: drawStack(parts, box.x, box.y), height, size: trial, fits };
  }
}

/** Height in mm of blocks at a width (mm) and size (pt), on one page without end. */
export function heightOfBlocks(blocks: readonly Block[], width: number, typeface: Measure, size = textSize): number {
  return stackHeight(compile(blocks, { size, width, typeface }, Number.POSITIVE_INFINITY));
}
