import type { Piece, PiecePlace } from "../activities/contract";
import type { Sheet, SheetItem } from "../page/sheet";

/** A piece as it was printed, from its own top left corner: enough to print it again, the same in text and size. mm, pt. */
export interface PieceDrawing {
  readonly w: number;
  readonly h: number;
  readonly items: readonly SheetItem[];
  /** What stands on its back, if anything. */
  readonly back?: BackDrawing;
  /** The texts of its faces but the back; prints of earlier versions of Cutwork do not tell them. */
  readonly texts?: readonly string[];
  /** For learners to write on. */
  readonly blank?: true;
}

/** A back as that side is seen, from the back's own top left corner. */
export interface BackDrawing {
  /** 0: the piece turns over like a page of a book; 2: like one of a calendar on the wall, so that its back is upside down. */
  readonly turn: number;
  readonly items: readonly SheetItem[];
}

/** Takes each piece's drawing out of the sheets of one copy. Cut lines and areas belong to the sheet. */
export function drawingsOf(sheets: readonly Sheet[], pieces: readonly Piece[]): PieceDrawing[] {
  return pieces.map(({ at, faces, blank }) => {
    const front = at.find(({ side }) => side === "front") ?? at[0];
    const texts = faces.flatMap(({ side, text }) => (side === "back" || text === "" ? [] : [text]));
    const told = { texts, ...(blank ? { blank } : {}) };
    if (!front) return { w: 0, h: 0, items: [], ...told };
    const back = at.find((place) => place.side === "back" && place !== front);
    return {
      w: tidy(front.w),
      h: tidy(front.h),
      items: itemsAt(sheets, front),
      ...told,
      ...(back ? { back: { turn: back.turn, items: itemsAt(sheets, back) } } : {}),
    };
  });
}

/** What is drawn at a place, moved to the corner of the sheet. */
function itemsAt(sheets: readonly Sheet[], { page, x, y, w, h }: PiecePlace): SheetItem[] {
  return (sheets[page]?.items ?? [])
    .filter((item) => item.type !== "area" && !(item.type === "line" && item.role === "cut"))
    .filter((item) => {
      const [px, py] = anchorOf(item);
      return px > x - slack && px < x + w + slack && py > y - slack && py < y + h + slack;
    })
    .map((item) => bare(shift(item, -x, -y)));
}

const slack = 1e-6;

function anchorOf(item: SheetItem): readonly [number, number] {
  if (item.type === "line") return [(item.x1 + item.x2) / 2, (item.y1 + item.y2) / 2];
  if (item.type === "shape") {
    const xs = item.points.map(([x]) => x);
    const ys = item.points.map(([, y]) => y);
    return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  }
  if (item.type === "text") return [item.x, item.y];
  return [item.x + item.w / 2, item.y + item.h / 2];
}

/** An item moved by some millimetres. */
export function shift(item: SheetItem, dx: number, dy: number): SheetItem {
  if (item.type === "line")
    return { ...item, x1: tidy(item.x1 + dx), y1: tidy(item.y1 + dy), x2: tidy(item.x2 + dx), y2: tidy(item.y2 + dy) };
  if (item.type === "shape")
    return { ...item, points: item.points.map(([x, y]) => [tidy(x + dx), tidy(y + dy)] as const) };
  return { ...item, x: tidy(item.x + dx), y: tidy(item.y + dy) };
}

/** Without the place in the unit, which a later edit moves. */
function bare(item: SheetItem): SheetItem {
  if (item.type !== "text" && item.type !== "picture") return item;
  const { source: _, ...rest } = item;
  return rest;
}

function tidy(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
