import { pieceMark } from "../base/mark";
import { bodyBox, furniture } from "../page/furniture";
import { papers } from "../page/paper";
import type { LineItem, Sheet, SheetItem } from "../page/sheet";
import { type PieceDrawing, shift } from "./drawings";
import type { PieceEntry, PiecesFile, RecordedDeal } from "./pieces-file";

/** What a mark stands for in some pieces file. */
export interface Found {
  readonly unit: string;
  readonly mark: string;
  readonly deal: RecordedDeal;
  /** The deal is that of the last export. */
  readonly current: boolean;
  readonly piece: number;
  /** Of a current deal. */
  readonly entry?: PieceEntry;
  readonly drawing?: PieceDrawing;
}

/** The pieces that a mark may be, current prints first; empty where no file knows it. Case, hyphens and spaces do not count. */
export function findMark(files: readonly PiecesFile[], typed: string): Found[] {
  const bare = normal(typed);
  return files.flatMap((file) => [
    ...file.deals.flatMap((deal) => match(file, deal, true, bare)),
    ...file.past.flatMap((deal) => match(file, deal, false, bare)),
  ]);
}

function normal(mark: string): string {
  return mark.toUpperCase().replace(/[^A-Z0-9]/g, "");
}

function match(file: PiecesFile, deal: RecordedDeal, current: boolean, bare: string): Found[] {
  if (!bare.startsWith(deal.code)) return [];
  const count = deal.print.length;
  const rest = bare.slice(deal.code.length);
  if (rest.length !== 2 && rest.length !== 4) return [];
  for (let piece = 0; piece < count; piece++) {
    if (normal(pieceMark(deal.code, undefined, piece)).slice(-2) !== rest.slice(-2)) continue;
    const mark = `${deal.code}-${rest.length === 4 ? `${rest.slice(0, 2)}-` : ""}${rest.slice(-2)}`;
    const entry = current ? file.pieces.find((each) => each.mark === mark) : undefined;
    const drawing = deal.print[piece];
    return [
      { unit: file.unit, mark, deal, current, piece, ...(entry ? { entry } : {}), ...(drawing ? { drawing } : {}) },
    ];
  }
  return [];
}

/** What a piece has on it, in short. */
export function printedOn({ drawing }: Found): string {
  const own = (drawing?.items ?? []).flatMap((item) =>
    item.type === "text" ? [{ size: item.size, text: item.runs.map(({ text }) => text).join("") }] : [],
  );
  const largest = Math.max(0, ...own.map(({ size }) => size));
  return own
    .filter(({ size }) => size > largest * 0.6)
    .map(({ text }) => text)
    .join(" · ");
}

const gutter = 6;

/** Sheets with just these pieces: same text, size and mark, each with cut lines of its own. */
export function reprintSheets(found: readonly Found[], barLabel: string): Sheet[] {
  const [first] = found;
  if (!first) return [];
  const paper = papers[first.deal.paper];
  const { margin } = first.deal;
  const box = bodyBox(paper, margin);
  const pages: SheetItem[][] = [[]];
  let [x, y, rowHeight] = [box.x, box.y, 0];
  for (const each of found) {
    if (!each.drawing) continue;
    const { w, h } = each.drawing;
    if (x > box.x && x + w > box.x + box.w + 1e-6) {
      x = box.x;
      y += rowHeight + gutter;
      rowHeight = 0;
    }
    if (y > box.y && y + h > box.y + box.h + 1e-6) {
      pages.push([]);
      [x, y, rowHeight] = [box.x, box.y, 0];
    }
    pages.at(-1)?.push(...outline(x, y, w, h), ...marked(each).map((item) => shift(item, x, y)));
    x += w + gutter;
    rowHeight = Math.max(rowHeight, h);
  }
  const title = [
    {
      text: `Again: ${found
        .map(({ mark }) => mark)
        .slice(0, 6)
        .join(", ")}${found.length > 6 ? ", …" : ""}`,
    },
  ];
  return pages.map((items, page) => ({
    width: paper.width,
    height: paper.height,
    stock: "card",
    label: `Pieces printed again, ${page + 1} of ${pages.length}`,
    lang: "und",
    items: [
      ...furniture(
        paper,
        margin,
        { title, state: [{ text: first.unit }], folio: `sheet ${page + 1} of ${pages.length}` },
        barLabel,
      ),
      ...items,
    ],
  }));
}

function outline(x: number, y: number, w: number, h: number): LineItem[] {
  const cut = (x1: number, y1: number, x2: number, y2: number): LineItem => ({
    type: "line",
    role: "cut",
    x1,
    y1,
    x2,
    y2,
    weight: 0.25,
  });
  return [cut(x, y, x + w, y), cut(x, y + h, x + w, y + h), cut(x, y, x, y + h), cut(x + w, y, x + w, y + h)];
}

/** The drawing with this very copy's mark: what was kept is that of the first copy. */
function marked({ mark, deal, piece, drawing }: Found): readonly SheetItem[] {
  const kept = pieceMark(deal.code, deal.master ? undefined : 0, piece);
  if (kept === mark || kept.length !== mark.length) return drawing?.items ?? [];
  return (drawing?.items ?? []).map((item) => {
    if (item.type !== "text" || item.runs.length !== 1) return item;
    const [run] = item.runs;
    const at = run && run.text.length > 4 ? kept.indexOf(run.text) : -1;
    return at < 0 || !run ? item : { ...item, runs: [{ ...run, text: mark.slice(at, at + run.text.length) }] };
  });
}
