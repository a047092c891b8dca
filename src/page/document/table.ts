import { mm } from "../paper";
import type { LineItem, SheetItem } from "../sheet";
import type { Cell, Column, Table } from "./blocks";
import type { Setting } from "./paragraphs";
import { type Part, slack } from "./part";
import {
  bold,
  drawWords,
  firstBaseline,
  heightOf,
  leading,
  naturalWidth,
  type SetWords,
  setWords,
  sourced,
} from "./words";

/*
 * Tables with thin lines and room to write. Rows stay whole; on each further page the heads stand again.
 */

/** Between a cell's text and its edges, mm at 10 pt. */
const sidePadding = 1.6;
const endPadding = 0.9;
/** Weights of lines, pt. */
const thin = 0.35;
const heavy = 0.8;
/** Edge of a box to tick and the gap to the next, mm. */
const boxSide = 3.6;
const boxGap = 1.8;
/** A column that is given a share of what is left gets this at least, mm. */
const leastColumn = 12;

type SetCell = { readonly words: SetWords } | { readonly boxes: number };

interface Row {
  readonly cells: readonly SetCell[];
  readonly height: number;
  /** Height of the text that all cells of the row share, mm. */
  readonly content: number;
  /** Goes on with the row above. */
  readonly goesOn?: boolean;
}

interface Layout {
  readonly lefts: readonly number[];
  readonly widths: readonly number[];
  readonly width: number;
  readonly columns: readonly Column[];
  readonly head: Row | undefined;
  readonly rules: "rows" | "grid" | "none";
  readonly padding: { readonly side: number; readonly end: number };
  /** Of running text, mm. */
  readonly lineHeight: number;
  /** mm */
  readonly pageHeight: number;
}

/** A table at the width of the page; `pageHeight` (mm) is what one page can hold. */
export function tablePart(table: Table, setting: Setting, pageHeight: number): Part | undefined {
  const size = table.size ?? setting.size;
  const { typeface } = setting;
  const rules = table.rules ?? "rows";
  const scale = size / 10;
  const lineHeight = mm(size) * leading;
  const padding = { side: sidePadding * scale, end: rules === "none" ? 0.5 * scale : endPadding * scale };
  const widths = columnWidths(table, { ...setting, size }, padding.side);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, width) => sum + width, 0));
  const width = widths.reduce((sum, each) => sum + each, 0);
  const setCell = (cell: Cell, i: number, asHead: boolean): SetCell => {
    if (typeof cell === "object" && "boxes" in cell) return cell;
    const room = Math.max(1, (widths[i] ?? 0) - insets(rules, i, widths.length, padding.side));
    return { words: setWords(typeface, asHead ? bold(sourced(cell)) : cell, asHead ? size * 0.92 : size, room) };
  };
  const setRow = (cells: readonly Cell[], least: number, asHead: boolean): Row => {
    const set = table.columns.map((_, i) => setCell(cells[i] ?? "", i, asHead));
    const content = Math.max(lineHeight, contentHeight(set));
    return { cells: set, content, height: Math.max(least, content + 2 * padding.end) };
  };
  const heads = table.columns.map(({ head }) => head ?? "");
  const head = table.columns.some((column) => column.head !== undefined) ? setRow(heads, 0, true) : undefined;
  const layout: Layout = { lefts, widths, width, columns: table.columns, head, rules, padding, lineHeight, pageHeight };
  const rows = table.rows.map((cells, i): Row => {
    const goesOn = i > 0 && (table.goesOn?.includes(i) ?? false);
    return { ...setRow(cells, table.rowHeight ?? 0, false), goesOn };
  });
  if (rows.length === 0 && !head) return undefined;
  return rowsPart(
    rows.flatMap((row) => lower(row, layout)),
    layout,
    (rules === "none" ? 0.16 : 0.3) * size,
  );
}

/** Height of cells whose texts share their first baseline, mm. */
function contentHeight(cells: readonly SetCell[]): number {
  const baseline = sharedBaseline(cells);
  const below = cells.map((cell) =>
    "words" in cell ? baseline - firstBaseline(cell.words) + heightOf(cell.words) : cell.boxes > 0 ? boxSide : 0,
  );
  return Math.max(0, ...below);
}

function sharedBaseline(cells: readonly SetCell[]): number {
  return Math.max(
    0,
    ...cells.map((cell) => ("words" in cell && cell.words.lines.length > 0 ? firstBaseline(cell.words) : 0)),
  );
}

/** What a cell loses to its padding; without vertical lines the outer edges of a table need none. */
function insets(rules: Layout["rules"], column: number, count: number, side: number): number {
  if (rules === "grid") return 2 * side;
  return (column > 0 ? side : 0) + (column < count - 1 ? side : 0);
}

/** Widths in mm: as asked for, less where that is more than the page's. */
function columnWidths(
  { columns, rows, rules = "rows" }: Table,
  { size, width, typeface }: Setting,
  side: number,
): number[] {
  const wanted = columns.map((column, i): number | undefined => {
    if (column.width !== "fit") return column.width;
    const bodies = rows.map((row) => row[i] ?? "");
    const head = bold(sourced(column.head ?? ""));
    const widest = Math.max(
      naturalWidth(typeface, head, size * 0.92),
      ...bodies.map((cell) =>
        typeof cell === "object" && "boxes" in cell
          ? cell.boxes * (boxSide + boxGap) - boxGap
          : naturalWidth(typeface, cell, size),
      ),
    );
    return Math.min(width / 2, widest + insets(rules, i, columns.length, side) + slack);
  });
  const shares = columns.map((column, i) => (wanted[i] === undefined ? (column.share ?? 1) : 0));
  const shared = shares.reduce((sum, share) => sum + share, 0);
  const given = wanted.reduce<number>((sum, each) => sum + (each ?? 0), 0);
  const reserve = Math.min(width / 2, leastColumn * shares.filter((share) => share > 0).length);
  const scale = Math.min(1, (width - reserve) / Math.max(given, slack));
  const left = width - given * scale;
  return wanted.map((each, i) =>
    each === undefined ? (left * (shares[i] ?? 0)) / Math.max(shared, slack) : each * scale,
  );
}

/** The row; or, where it is higher than a page, as many rows as its lines need. */
function lower(row: Row, layout: Layout): Row[] {
  const { pageHeight, head, padding } = layout;
  const room = pageHeight - (head?.height ?? 0);
  if (row.height <= room || room <= 0) return [row];
  const available = room - 2 * padding.end;
  const baseline = sharedBaseline(row.cells);
  const cut = (cell: SetCell, take: "first" | "rest"): SetCell => {
    if (!("words" in cell)) return take === "first" ? cell : { boxes: 0 };
    const shift = baseline - firstBaseline(cell.words);
    const count = Math.max(1, Math.floor((available - shift) / cell.words.lineHeight));
    const lines = take === "first" ? cell.words.lines.slice(0, count) : cell.words.lines.slice(count);
    return { words: { ...cell.words, lines } };
  };
  const part = (take: "first" | "rest"): Row => {
    const cells = row.cells.map((cell) => cut(cell, take));
    const content = contentHeight(cells);
    return { cells, content, height: content + 2 * padding.end };
  };
  const rest = part("rest");
  // Room asked for to write in that is more than a page is cut down to it.
  if (rest.cells.every((cell) => !("words" in cell) || cell.words.lines.length === 0))
    return [{ ...row, height: room }];
  return [part("first"), ...lower(rest, layout)];
}

/** The first row, with those that go on with it. */
function firstGroup(rows: readonly Row[]): readonly Row[] {
  const end = rows.findIndex((row, i) => i > 0 && !row.goesOn);
  return end < 0 ? rows : rows.slice(0, end);
}

function rowsPart(rows: readonly Row[], layout: Layout, above: number): Part {
  const top = layout.head?.height ?? 0;
  const height = rows.reduce((sum, row) => sum + row.height, top);
  return {
    above,
    height,
    least: top + firstGroup(rows).reduce((sum, row) => sum + row.height, 0),
    draw: (x, y) => drawRows(rows, layout, x, y),
    split(available) {
      let used = top;
      let count = 0;
      for (const row of rows) {
        if (used + row.height > available + slack) break;
        used += row.height;
        count++;
      }
      if (count === 0 || count === rows.length) return undefined;
      // What goes on with a row goes with it to the next page, unless it began the table there.
      let whole = count;
      while (whole > 0 && rows[whole]?.goesOn) whole--;
      if (whole > 0) count = whole;
      return [rowsPart(rows.slice(0, count), layout, above), rowsPart(rows.slice(count), layout, 0)];
    },
  };
}

function drawRows(rows: readonly Row[], layout: Layout, x: number, y: number): SheetItem[] {
  const { head, rules, lefts, width } = layout;
  const items: SheetItem[] = [];
  const line = (x1: number, y1: number, x2: number, y2: number, weight: number): void => {
    if (rules !== "none") items.push({ type: "line", role: "rule", x1, y1, x2, y2, weight });
  };
  let at = y;
  if (rules === "grid" || !head) line(x, at, x + width, at, thin);
  const all = head ? [head, ...rows] : rows;
  for (const [i, row] of all.entries()) {
    items.push(...drawRow(row, layout, x, at));
    at += row.height;
    if (rules !== "grid" && row !== head && all[i + 1]?.goesOn) continue;
    line(x, at, x + width, at, row === head ? heavy : thin);
  }
  if (rules === "grid") for (const left of [...lefts, width]) line(x + left, y, x + left, at, thin);
  return items;
}

function drawRow(row: Row, layout: Layout, x: number, y: number): SheetItem[] {
  const { rules, padding, columns, lefts, widths } = layout;
  // Texts of a row share their first baseline; the whole stands in the middle of a row that is higher than it needs.
  const top = y + (row.height - row.content) / 2;
  const baseline = top + sharedBaseline(row.cells);
  return row.cells.flatMap((cell, i): SheetItem[] => {
    const pad = i > 0 || rules === "grid" ? padding.side : 0;
    const left = x + (lefts[i] ?? 0) + pad;
    const width = (widths[i] ?? 0) - insets(rules, i, columns.length, padding.side);
    const align = columns[i]?.align ?? "start";
    if ("words" in cell) return drawWords(cell.words, left, baseline, width, align);
    const whole = cell.boxes * (boxSide + boxGap) - boxGap;
    const scale = Math.min(1, width / Math.max(whole, slack));
    const first = left + (width - whole * scale) * { start: 0, middle: 0.5, end: 1 }[align];
    // Beside several lines a box stands with the first.
    const boxTop = top + (Math.min(row.content, layout.lineHeight) - boxSide * scale) / 2;
    return Array.from({ length: cell.boxes }, (_, n) =>
      tickBox(first + n * (boxSide + boxGap) * scale, boxTop, boxSide * scale),
    ).flat();
  });
}

/** An empty square to tick. */
export function tickBox(x: number, y: number, side: number): LineItem[] {
  const corners = [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ] as const;
  return corners.map(([x1, y1], i) => {
    const [x2, y2] = corners[(i + 1) % 4] ?? [x, y];
    return { type: "line", role: "rule", x1, y1, x2, y2, weight: 0.6 };
  });
}
