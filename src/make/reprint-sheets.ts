import { kindNamed } from "../activities/kinds";
import { folio, sideFolio } from "../activities/sheet-page";
import { pieceMark } from "../base/mark";
import { backsOf, cardCuts, type Duplex, type PlacedCard, turned } from "../page/cards";
import { bodyBox, furniture, titleBeside } from "../page/furniture";
import { type Paper, papers } from "../page/paper";
import type { Sheet, SheetItem } from "../page/sheet";
import type { Typeface } from "../text/typeface";
import { shift } from "./drawings";
import type { Found } from "./reprint";

/*
 * Lost pieces on sheets of their own. What has something on its back gets it again: each front is followed by its back, also
 * where that stays empty, so that a whole file can be printed on both sides.
 */

/** Between pieces, which have cut lines of their own; mm. */
const gutter = 6;
const slack = 1e-6;

/** Pieces that can share a sheet. */
interface Batch {
  readonly paper: Paper;
  /** The edge about which the printer must turn the paper, where something has a back. */
  readonly flip?: Duplex;
  readonly pieces: readonly Found[];
}

/** Sheets with just these pieces: same text, size and mark, each with cut lines of its own, and its back behind it. */
export function reprintSheets(found: readonly Found[], barLabel: string, typeface: Pick<Typeface, "measure">): Sheet[] {
  const [first] = found;
  if (!first) return [];
  const { margin } = first.deal;
  const marks = found.map(({ mark }) => mark);
  const state = [{ text: first.unit }];
  const whole = [{ text: `Again: ${marks.join(", ")}` }];
  const title = titleBeside(whole, state, { paper: papers[first.deal.paper], margin }, typeface);
  const batches = batchesOf(found, papers[first.deal.paper], margin);
  const backed = batches.some(({ flip }) => flip !== undefined);
  const sheets = batches.flatMap((batch) => sidesOf(backed ? { flip: "long", ...batch } : batch, margin));
  const pages = sheets.filter(({ side }) => side !== "back").length;
  let page = -1;
  return sheets.map(({ paper, side, flip, items }): Sheet => {
    if (side !== "back") page++;
    const name = side && flip ? sideFolio(side, flip, page, pages) : folio(page, pages);
    const texts = { title, state, folio: name };
    return {
      width: paper.width,
      height: paper.height,
      stock: "card",
      label: `Pieces printed again, ${name}`,
      lang: "und",
      ...(side === "back" ? { back: true as const } : {}),
      items: [...furniture(paper, margin, texts, barLabel), ...items],
    };
  });
}

interface Side {
  readonly paper: Paper;
  /** Of paper that is printed on both sides. */
  readonly side?: "front" | "back";
  readonly flip?: Duplex;
  readonly items: readonly SheetItem[];
}

function sidesOf({ paper, flip, pieces }: Batch, margin: number): Side[] {
  return placed(pieces, paper, margin).flatMap((here): Side[] => {
    const front = here.flatMap(({ place, piece }) => [
      ...(kindNamed(piece.deal.make)?.wholeSheets ? [] : cardCuts([place])),
      ...marked(piece).map((item) => shift(item, place.x, place.y)),
    ]);
    if (flip === undefined) return [{ paper, items: front }];
    const places = backsOf(
      here.map(({ place }) => place),
      flip,
      paper,
    );
    const back = places.flatMap(({ x, y }, i) =>
      (here[i]?.piece.drawing.back?.items ?? []).map((item) => shift(item, x, y)),
    );
    return [
      { paper, side: "front", flip, items: front },
      { paper, side: "back", flip, items: back },
    ];
  });
}

/** Upright before lying sheets, and by how backs are turned; pieces without a back go with the first that have one. */
function batchesOf(found: readonly Found[], paper: Paper, margin: number): Batch[] {
  const upright = bodyBox(paper, margin);
  const fits = ({ drawing: { w, h } }: Found): boolean => w <= upright.w + slack && h <= upright.h + slack;
  return [true, false].flatMap((stands): Batch[] => {
    const here = found.filter((each) => fits(each) === stands);
    const turns = [...new Set(here.flatMap(({ drawing }) => drawing.back?.turn ?? []))];
    const own = (turn: number | undefined): readonly Found[] =>
      here.filter(({ drawing }) => (drawing.back?.turn ?? turns[0]) === turn);
    const groups = turns.length === 0 ? [undefined] : turns;
    return groups.flatMap((turn): Batch[] => {
      const pieces = own(turn);
      // A book's page turns about an upright edge: the long one of a sheet that stands, the short one of one that lies.
      const flip = turn === undefined ? {} : { flip: (turn === 0) === stands ? ("long" as const) : ("short" as const) };
      return pieces.length > 0 ? [{ paper: stands ? paper : turned(paper), pieces, ...flip }] : [];
    });
  });
}

interface Placed {
  readonly place: PlacedCard;
  readonly piece: Found;
}

/** Pieces in rows, page by page. */
function placed(pieces: readonly Found[], paper: Paper, margin: number): Placed[][] {
  const box = bodyBox(paper, margin);
  const pages: Placed[][] = [[]];
  let [x, y, rowHeight] = [box.x, box.y, 0];
  pieces.forEach((piece, card) => {
    const { w, h } = piece.drawing;
    if (x > box.x && x + w > box.x + box.w + slack) {
      x = box.x;
      y += rowHeight + gutter;
      rowHeight = 0;
    }
    if (y > box.y && y + h > box.y + box.h + slack) {
      pages.push([]);
      [x, y, rowHeight] = [box.x, box.y, 0];
    }
    pages.at(-1)?.push({ place: { card, page: pages.length - 1, x, y, w, h }, piece });
    x += w + gutter;
    rowHeight = Math.max(rowHeight, h);
  });
  return pages;
}

/** The drawing with this very copy's mark: what was kept is that of the first copy. */
function marked({ mark, deal, piece, drawing }: Found): readonly SheetItem[] {
  const kept = pieceMark(deal.code, deal.master ? undefined : 0, piece);
  if (kept === mark || kept.length !== mark.length) return drawing.items;
  return drawing.items.map((item) => {
    if (item.type !== "text" || item.runs.length !== 1) return item;
    const [run] = item.runs;
    const at = run && run.text.length > 4 ? kept.indexOf(run.text) : -1;
    return at < 0 || !run ? item : { ...item, runs: [{ ...run, text: mark.slice(at, at + run.text.length) }] };
  });
}
