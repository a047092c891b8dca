import { pieceMark, readMark } from "../base/mark";
import type { PieceDrawing } from "./drawings";
import type { PieceEntry, PiecesFile, RecordedDeal } from "./pieces-file";

/** What a mark stands for in some pieces file. */
export interface Found {
  readonly unit: string;
  readonly mark: string;
  readonly deal: RecordedDeal;
  /** The deal is that of the last export. */
  readonly current: boolean;
  /** From 0; undefined for a master. */
  readonly copy: number | undefined;
  /** From 0. */
  readonly piece: number;
  /** Of a current deal. */
  readonly entry?: PieceEntry;
  readonly drawing: PieceDrawing;
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
  const read = readMark(bare, deal.code, deal.master);
  const drawing = deal.print[read?.piece ?? -1];
  if (!read || !drawing) return [];
  const mark = pieceMark(deal.code, read.copy, read.piece);
  const entry = current ? file.pieces.find((each) => each.mark === mark) : undefined;
  return [{ unit: file.unit, mark, deal, current, ...read, drawing, ...(entry ? { entry } : {}) }];
}

/** What a piece has on it, in short; of a blank one which set it belongs to. */
export function printedOn({ deal, copy, drawing }: Found): string {
  if (drawing.blank) {
    const name = pieceNames.get(deal.make) ?? "card";
    return copy === undefined ? `a blank ${name}` : `a blank ${name} of set ${copy + 1}`;
  }
  return (drawing.texts ?? largestTexts(drawing)).join(" · ");
}

/** What a kind's pieces are called, where that is not “card”. */
const pieceNames: ReadonlyMap<string, string> = new Map([
  ["tiles", "tile"],
  ["strips", "strip"],
  ["board", "board"],
]);

/** What stands on a piece by its size alone, for prints that do not tell their texts. */
function largestTexts({ items }: PieceDrawing): string[] {
  const own = items.flatMap((item) =>
    item.type === "text" ? [{ size: item.size, text: item.runs.map(({ text }) => text).join("") }] : [],
  );
  const largest = Math.max(0, ...own.map(({ size }) => size));
  return own.filter(({ size }) => size > largest * 0.6).map(({ text }) => text);
}
