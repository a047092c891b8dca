import { pieceMark } from "../../base/mark";
import { cardCuts, setCard } from "../../page/cards";
import { sheetOf } from "../../page/document";
import { type Box, mm } from "../../page/paper";
import type { LineItem, Sheet, SheetItem } from "../../page/sheet";
import type { Press } from "../contract";
import { cardFace } from "../printed";
import { activityPage, setLabel } from "../sheet-page";
import { areasOf, type BoardLayout, layoutBoard, maxLines } from "./layout";
import { type BoardDeal, boardState, type DealtBoard } from "./model";
import type { BoardOptions } from "./options";

/** pt */
const lineWeight = 0.5;
const markSize = 5;
/** Of a line to write on: pt, below a cell's middle, mm, and clear at either end, as a share of the cell's width. */
const writingWeight = 0.35;
const belowMiddle = 4;
const lineInset = 0.08;
/** Of the line between a word and its turned twin, pt. */
const halvesWeight = 0.25;

/** The board of one copy: a whole sheet, with its mark under the last cell. */
export function pieceSheets(dealt: DealtBoard, deal: BoardDeal, copy: number | undefined, press: Press): Sheet[] {
  const { request } = dealt;
  const layout = layoutBoard(dealt, press);
  const state = stateIn(dealt, deal, copy);
  const page = { ...activityPage(request, press, "Board", state), paper: layout.paper, stock: "card" as const };
  const label = [request.title, ...state].join(", ");
  const items = layout.cells.flatMap((cell, i) => cellItems(dealt, deal, cell, i, layout, press));
  return [
    sheetOf({ ...page, label, folio: () => "" }, 0, 1, [
      ...linesOf(layout.cells),
      ...items,
      markItem(pieceMark(deal.code, copy, 0), layout.board),
    ]),
  ];
}

function stateIn(dealt: DealtBoard, deal: BoardDeal, copy: number | undefined): string[] {
  const state = boardState(dealt, deal);
  // A board of its own is told by its number; with several copies of it, each is for another class.
  if (dealt.options.boards === "different" && dealt.deals.length > 1 && deal.copies === 1) return state;
  return [...state.slice(0, -1), setLabel(copy), deal.code];
}

function cellItems(
  { words, options }: DealtBoard,
  { cells, writing }: BoardDeal,
  cell: Box,
  index: number,
  { size }: BoardLayout,
  press: Press,
): SheetItem[] {
  const { x, y, w, h } = cell;
  const area: SheetItem = { type: "area", x, y, w, h, piece: index };
  const halves = options.facing === "opposite" ? [lineBetween(cell)] : [];
  if (writing.includes(index)) return [area, ...halves, ...writingLines(cell, options.facing)];
  const shown = words[cells[index] ?? -1]?.shown;
  if (!shown || size === undefined) return [area];
  const face = cardFace(shown, press);
  const set = areasOf(cell, options.facing).flatMap(
    ({ box, turn }) => setCard(face, box, size, press.typeface, { turn, maxLines }) ?? [],
  );
  return [area, ...halves, ...set];
}

/** Parts what is read from one side of the table from what is read from the other. */
function lineBetween({ x, y, w, h }: Box): SheetItem {
  const inset = w * lineInset;
  const [x1, x2, middle] = [x + inset, x + w - inset, y + h / 2];
  return { type: "line", role: "rule", x1, y1: middle, x2, y2: middle, weight: halvesWeight };
}

/** A dotted line for each reader: it tells the cells that are written in from those that stay blank. */
function writingLines(cell: Box, facing: BoardOptions["facing"]): SheetItem[] {
  return areasOf(cell, facing).map(({ box, turn }) => {
    const y = box.y + box.h / 2 + (turn === 0 ? 1 : -1) * Math.min(box.h / 4, belowMiddle);
    const inset = box.w * lineInset;
    const [x1, x2] = [box.x + inset, box.x + box.w - inset];
    return { type: "line", role: "rule", x1, y1: y, x2, y2: y, weight: writingWeight, dash: [0.6, 1.2] };
  });
}

function markItem(mark: string, { x, y, w, h }: Box): SheetItem {
  return {
    type: "text",
    runs: [{ text: mark }],
    x: x + w,
    // A fifth of the size is left for what hangs below the line.
    y: y + h - mm(markSize) * 0.2,
    size: markSize,
    turn: 0,
    anchor: "end",
    lang: "zxx",
  };
}

/** The lines between the cells, a piece of line for each cell's side: a cell that is printed again has its own. */
function linesOf(cells: readonly Box[]): LineItem[] {
  const sides = new Map<string, LineItem>();
  for (const cell of cells) {
    for (const line of cardCuts([cell])) {
      const key = [line.x1, line.y1, line.x2, line.y2].map((value) => Math.round(value * 100)).join(" ");
      sides.set(key, { ...line, role: "rule", weight: lineWeight });
    }
  }
  return [...sides.values()];
}
