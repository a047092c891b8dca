import type { Deal, Piece } from "../activities/contract";
import { pieceMark } from "../base/mark";
import type { Range } from "../base/range";
import { type PaperName, papers } from "../page/paper";
import type { PieceDrawing } from "./drawings";

/*
 * NAME.pieces.json: every piece that was printed, where it stands and where it belongs, and what it takes to print earlier
 * deals again. JSON; lengths in mm from the sheet's top left corner.
 */

export interface PiecesFile {
  readonly unit: string;
  /** Current deals. */
  readonly deals: readonly RecordedDeal[];
  readonly pieces: readonly PieceEntry[];
  /** Each earlier deal once, without copies. */
  readonly past: readonly RecordedDeal[];
  /** Codes of the deals that the unit's guide and labels speak of; other activities may have been printed since. */
  readonly guide?: readonly string[];
}

export interface RecordedDeal {
  readonly code: string;
  readonly activity: string;
  readonly make: string;
  /** `gentle` or `hard`, `plain` where no levels were asked for. */
  readonly level: string;
  readonly version: number;
  readonly attempt: number;
  readonly seed: number;
  readonly paper: PaperName;
  /** mm */
  readonly margin: number;
  /** Printed as a master, without a copy in its marks. */
  readonly master: boolean;
  /** Kind's own: texts, settings, layout. */
  readonly record: unknown;
  /** Each piece of the first copy as it was printed. */
  readonly print: readonly PieceDrawing[];
}

export interface PieceEntry {
  readonly mark: string;
  readonly activity: string;
  readonly make: string;
  readonly level: string;
  readonly version: number;
  /** From 1; null for a master. */
  readonly copy: number | null;
  readonly faces: readonly { readonly side: string; readonly text: string; readonly range: Range | null }[];
  readonly at: readonly {
    readonly file: string;
    readonly page: number;
    readonly x: number;
    readonly y: number;
    readonly w: number;
    readonly h: number;
    readonly turn: number;
    readonly side: string;
  }[];
  readonly solution: unknown;
}

/** Copies of a deal as the marks count them: 0, 1, …, or one master without a number. */
export function copyNumbers(copies: Deal["copies"]): readonly (number | undefined)[] {
  return copies === "by copier" ? [undefined] : Array.from({ length: copies }, (_, i) => i);
}

/** The entries of one copy; `firstPage` is the file's page, from 1, on which the copy begins. */
export function pieceEntries(
  pieces: readonly Piece[],
  of: {
    readonly activity: string;
    readonly make: string;
    readonly deal: Deal;
    readonly level: string;
    readonly copy: number | undefined;
  },
  file: string,
  firstPage: number,
): PieceEntry[] {
  const { activity, make, deal, level, copy } = of;
  return pieces.map(({ faces, at, solution, next }, i) => ({
    mark: pieceMark(deal.code, copy, i),
    activity,
    make,
    level,
    version: deal.version,
    copy: copy === undefined ? null : copy + 1,
    faces: faces.map(({ side, text, source }) => ({ side, text, range: source ?? null })),
    at: at.map(({ page, x, y, w, h, turn, side }) => ({
      file,
      page: firstPage + page,
      x: tidy(x),
      y: tidy(y),
      w: tidy(w),
      h: tidy(h),
      turn,
      side,
    })),
    solution: next === undefined ? solution : pieceMark(deal.code, copy, next),
  }));
}

function tidy(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** Reads a pieces file; undefined where the text is none. Of a damaged one what is whole is kept. */
export function readPiecesFile(text: string | undefined): PiecesFile | undefined {
  if (text === undefined) return undefined;
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(data)) return undefined;
  const deals = (key: string): RecordedDeal[] => list(data[key]).filter(isRecordedDeal);
  return {
    unit: String(data["unit"] ?? ""),
    deals: deals("deals"),
    pieces: list(data["pieces"]).filter(isPieceEntry),
    past: deals("past"),
    ...(Array.isArray(data["guide"]) ? { guide: data["guide"].map(String) } : {}),
  };
}

function list(value: unknown): unknown[] {
  return Array.isArray(value) ? value : [];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isRecordedDeal(value: unknown): value is RecordedDeal {
  return (
    isRecord(value) &&
    typeof value["code"] === "string" &&
    typeof value["activity"] === "string" &&
    typeof value["attempt"] === "number" &&
    Object.hasOwn(papers, String(value["paper"])) &&
    typeof value["margin"] === "number" &&
    Array.isArray(value["print"]) &&
    value["print"].every(isDrawing)
  );
}

function isDrawing(value: unknown): value is PieceDrawing {
  if (!isRecord(value) || typeof value["w"] !== "number" || !Array.isArray(value["items"])) return false;
  const { back, texts } = value;
  if (texts !== undefined && !(Array.isArray(texts) && texts.every((text) => typeof text === "string"))) return false;
  return back === undefined || (isRecord(back) && typeof back["turn"] === "number" && Array.isArray(back["items"]));
}

function isPieceEntry(value: unknown): value is PieceEntry {
  return (
    isRecord(value) &&
    typeof value["mark"] === "string" &&
    typeof value["activity"] === "string" &&
    Array.isArray(value["faces"])
  );
}

/** Earlier deals after an export: those that were there, and what was current and is no longer. */
export function pastAfter(before: PiecesFile | undefined, current: readonly RecordedDeal[]): RecordedDeal[] {
  const now = new Set(current.map(({ code }) => code));
  const past = new Map<string, RecordedDeal>();
  for (const deal of [...(before?.past ?? []), ...(before?.deals ?? [])])
    if (!now.has(deal.code)) past.set(deal.code, deal);
  return [...past.values()];
}

export function writePiecesFile(file: PiecesFile): Uint8Array {
  const lines = (items: readonly unknown[]): string => items.map((item) => `    ${JSON.stringify(item)}`).join(",\n");
  const block = (name: string, items: readonly unknown[]): string =>
    items.length > 0 ? `  "${name}": [\n${lines(items)}\n  ]` : `  "${name}": []`;
  const parts = [
    `  "unit": ${JSON.stringify(file.unit)}`,
    block("deals", file.deals),
    block("pieces", file.pieces),
    block("past", file.past),
    ...(file.guide ? [`  "guide": ${JSON.stringify(file.guide)}`] : []),
  ];
  return new TextEncoder().encode(`{\n${parts.join(",\n")}\n}\n`);
}
