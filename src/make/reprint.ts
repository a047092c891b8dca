import { pieceMark } from "../base/mark";
import type { PieceDrawing } from "./drawings";
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
