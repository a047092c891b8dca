import type { Range } from "../base/range";
import type { Run } from "../base/run";

/*
 * The display list: what one printed page side shows. All lengths are millimetres from the sheet's top left corner,
 * x to the right, y down; weights and text sizes are points (1/72 inch). PDF and preview are both drawn from it.
 */

/** Clockwise turns by 90°, about the item's own origin. */
export type QuarterTurn = 0 | 1 | 2 | 3;

/** What a sheet is printed on; one file a stock. */
export type Stock = "card" | "paper" | "labels";

/** Why a line is there: where to cut, a rule or table line to read by, or a printer's mark. */
export type LineRole = "cut" | "rule" | "mark";

export interface LineItem {
  readonly type: "line";
  readonly role: LineRole;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** pt */
  readonly weight: number;
  /** Dash and gap in mm; none means solid. */
  readonly dash?: readonly [number, number];
}

/** A filled shape: closed polygon, black unless `grey` (0 black … 1 white) says otherwise. */
export interface ShapeItem {
  readonly type: "shape";
  readonly points: readonly (readonly [number, number])[];
  readonly grey?: number;
}

/** One line of text. (x, y) is the point of its baseline that `anchor` names; the line turns about it. */
export interface TextItem {
  readonly type: "text";
  readonly runs: readonly Run[];
  readonly x: number;
  readonly y: number;
  /** pt */
  readonly size: number;
  readonly turn: QuarterTurn;
  readonly anchor: "start" | "middle" | "end";
  /** BCP 47 tag where it differs from the sheet's own. */
  readonly lang?: string;
  /** The place in the unit that this text was read from. */
  readonly source?: Range;
}

/** A picture, drawn to fill the box exactly; `key` names its bytes. The box is as seen before the turn about its centre. */
export interface PictureItem {
  readonly type: "picture";
  readonly key: string;
  readonly alt: string;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly turn: QuarterTurn;
  readonly source?: Range;
}

/** No ink: the outline of a piece, or of a cell of a board, so that the preview can point at it and tests can find it. */
export interface AreaItem {
  readonly type: "area";
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** The number of the piece in its deal, or of the cell on its board, from 0. */
  readonly piece: number;
  /** Set where the piece differs from the first solution (second assembly). */
  readonly differs?: boolean;
}

export type SheetItem = LineItem | ShapeItem | TextItem | PictureItem | AreaItem;

export interface Sheet {
  /** mm */
  readonly width: number;
  /** mm */
  readonly height: number;
  readonly stock: Stock;
  /** Names the sheet to a reader of the file and to assistive technology. */
  readonly label: string;
  /** BCP 47 */
  readonly lang: string;
  /** Printed on the other side of the sheet before it. */
  readonly back?: true;
  readonly items: readonly SheetItem[];
}
