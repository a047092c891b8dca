import { kindNamed } from "../activities/kinds";
import { codeLength, pieceMark, readMark } from "../base/mark";
import type { PieceDrawing } from "./drawings";
import type { PieceEntry, PiecesFile, RecordedDeal } from "./pieces-file";

/** A deal that some pieces file knows. */
export interface FoundDeal {
  readonly unit: string;
  readonly deal: RecordedDeal;
  /** The deal is that of the last export. */
  readonly current: boolean;
  /** Its activity was printed at several levels. */
  readonly levels: boolean;
  /** Sets of the last export; undefined where there are none to count: of an earlier print, a master, lists. */
  readonly sets?: number;
}

/** What a mark stands for in some pieces file. */
export interface Found extends FoundDeal {
  readonly mark: string;
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
  return files.flatMap((file) => dealsIn(file).flatMap((known) => match(file, known, bare)));
}

/** The deals that a code, or the code at the beginning of a mark, may be; current ones first. */
export function findDeals(files: readonly PiecesFile[], typed: string): FoundDeal[] {
  const bare = normal(typed);
  return files.flatMap((file) => dealsIn(file).filter(({ deal }) => deal.code === bare.slice(0, deal.code.length)));
}

/** Whether a text is a deal code and nothing more. */
export function isCode(typed: string): boolean {
  return normal(typed).length === codeLength;
}

function dealsIn({ unit, deals, past, pieces }: PiecesFile): FoundDeal[] {
  const all = [...deals, ...past];
  return all.map((deal, i) => {
    const current = i < deals.length;
    // Levels of today say nothing about a print of last year, and the other way round.
    const peers = (current ? deals : past).filter(({ activity }) => activity === deal.activity);
    const own = current && !deal.master ? pieces.filter(({ mark }) => mark.startsWith(`${deal.code}-`)) : [];
    const sets = new Set(own.map(({ copy }) => copy)).size;
    return {
      unit,
      deal,
      current,
      levels: new Set(peers.map(({ level }) => level)).size > 1,
      ...(sets > 0 ? { sets } : {}),
    };
  });
}

function normal(mark: string): string {
  return mark.toUpperCase().replace(/[^A-Z0-9]/g, "");
}

function match({ pieces }: PiecesFile, known: FoundDeal, bare: string): Found[] {
  const { deal, current } = known;
  const read = readMark(bare, deal.code, deal.master);
  const drawing = deal.print[read?.piece ?? -1];
  if (!read || !drawing) return [];
  const mark = pieceMark(deal.code, read.copy, read.piece);
  const entry = current ? pieces.find((each) => each.mark === mark) : undefined;
  return [{ ...known, mark, ...read, drawing, ...(entry ? { entry } : {}) }];
}

/** Unit, activity, kind, version or desk and, where there are several, level. */
export function dealSaid({ unit, deal, levels }: FoundDeal): string {
  const { activity, make, level, version, desk } = deal;
  const which = desk === undefined ? `version ${version}` : `desk ${desk}`;
  return `${unit}, “${activity}” (${[make, ...(levels ? [level] : []), which].join(", ")})`;
}

/** What a piece has on it, in short; of a blank one which set it belongs to. */
export function printedOn({ deal, copy, drawing }: Found): string {
  if (drawing.blank) {
    const name = kindNamed(deal.make)?.pieceName ?? "card";
    return copy === undefined ? `a blank ${name}` : `a blank ${name} of set ${copy + 1}`;
  }
  return (drawing.texts ?? largestTexts(drawing)).join(" · ");
}

/** What stands on a piece by its size alone, for prints that do not tell their texts. */
function largestTexts({ items }: PieceDrawing): string[] {
  const own = items.flatMap((item) =>
    item.type === "text" ? [{ size: item.size, text: item.runs.map(({ text }) => text).join("") }] : [],
  );
  const largest = Math.max(0, ...own.map(({ size }) => size));
  return own.filter(({ size }) => size > largest * 0.6).map(({ text }) => text);
}
