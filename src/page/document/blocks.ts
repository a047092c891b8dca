import type { Range } from "../../base/range";
import type { Run } from "../../base/run";
import type { Box } from "../paper";
import type { SheetItem } from "../sheet";

/*
 * What papers are written in: keys, callers' lists, guides, slips, plans. Lengths are mm, sizes pt.
 */

/** Text of one paragraph or cell. `lang` (BCP 47) where it is not the paper's own, `source` where it stands in the unit. */
export type Words = string | readonly Run[] | SourcedWords;

export interface SourcedWords {
  readonly runs: readonly Run[];
  readonly source?: Range | undefined;
  readonly lang?: string | undefined;
}

/** Space before a block is the block's own, and none at the top of a page or box. */
export type Block =
  | Heading
  | Paragraph
  | Steps
  | Bullets
  | Facts
  | Table
  | Columns
  | WritingLines
  | Figure
  | Together
  | Sized
  | Spacer
  | PageBreak;

/** Stays on the page of what follows it. */
export interface Heading {
  readonly type: "heading";
  /** 1 names the paper, 2 a part, 3 a passage. */
  readonly level: 1 | 2 | 3;
  readonly text: Words;
}

export interface Paragraph {
  readonly type: "paragraph";
  readonly text: Words;
  /** pt, where it is not the paper's own. */
  readonly size?: number;
  readonly align?: Align;
  /** Stays on the page of what follows it, as a line that introduces a list does. */
  readonly keepsNext?: boolean;
}

/** A numbered list. */
export interface Steps {
  readonly type: "steps";
  readonly items: readonly Words[];
  /** Number of the first; 1 if left out. */
  readonly start?: number;
  /** What stands before each instead of its number: `A`, `3.`; as many as items. */
  readonly labels?: readonly string[];
}

export interface Bullets {
  readonly type: "bullets";
  readonly items: readonly Words[];
}

/** Labels with their values: sets, time, materials. */
export interface Facts {
  readonly type: "facts";
  readonly rows: readonly { readonly label: Words; readonly value: Words }[];
}

export type Align = "start" | "middle" | "end";

export interface Column {
  readonly head?: Words;
  /** mm; `fit`: as wide as what stands in it, up to half of the table; left out: a share of what the others leave. */
  readonly width?: number | "fit";
  /** Parts of what is left; 1 if left out. */
  readonly share?: number;
  readonly align?: Align;
}

/** Words, `""` for room to write, or boxes to tick, side by side. */
export type Cell = Words | { readonly boxes: number };

/** Rows are never split between pages unless one is higher than a page; the heads stand again on each page. */
export interface Table {
  readonly type: "table";
  readonly columns: readonly Column[];
  /** A row that is shorter than the columns ends in empty cells. */
  readonly rows: readonly (readonly Cell[])[];
  /** Rows, from 0, that go on with the one above: no line parts the two, and as far as it can be no page. */
  readonly goesOn?: readonly number[];
  /** Least height of a row in mm: 8 and more to write in. */
  readonly rowHeight?: number;
  /** Thin lines between rows only, or round every cell; `rows` if left out. */
  readonly rules?: "rows" | "grid" | "none";
  /** pt */
  readonly size?: number;
}

/** Short entries in columns of equal height, read downwards. */
export interface Columns {
  readonly type: "columns";
  readonly entries: readonly Words[];
  readonly count: number;
  /** mm between them; 6 if left out. */
  readonly gap?: number;
  /** pt */
  readonly size?: number;
}

/** Lines to write on. */
export interface WritingLines {
  readonly type: "lines";
  readonly count: number;
  /** mm from line to line; 9 if left out. */
  readonly pitch?: number;
}

/** Room for a drawing, all of the width. A height above the page's is cut down to it: draw in the box that is given. */
export interface Figure {
  readonly type: "figure";
  /** mm */
  readonly height: number;
  /** Space before and after, mm; 3 if left out. */
  readonly margin?: number;
  /** Items in mm from the sheet's corner. May be called more than once. */
  readonly draw: (box: Box) => readonly SheetItem[];
}

/** Blocks on one page, unless they are higher than a page. */
export interface Together {
  readonly type: "together";
  readonly blocks: readonly Block[];
}

/** Blocks whose running text has a size of its own, pt. */
export interface Sized {
  readonly type: "sized";
  readonly size: number;
  readonly blocks: readonly Block[];
}

/** Empty space, none at the top of a page. */
export interface Spacer {
  readonly type: "space";
  /** mm */
  readonly height: number;
}

export interface PageBreak {
  readonly type: "page break";
}
