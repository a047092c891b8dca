/** Sizes of paper in mm, portrait. */
export interface Paper {
  readonly name: PaperName;
  readonly width: number;
  readonly height: number;
}

export type PaperName = "A4" | "Letter";

/** A4 by ISO 216:2007, Letter by ANSI/ASME Y14.1 (8.5 × 11 in). */
export const papers: Readonly<Record<PaperName, Paper>> = {
  A4: { name: "A4", width: 210, height: 297 },
  Letter: { name: "Letter", width: 215.9, height: 279.4 },
};

/** Points to an inch and millimetres to an inch, so that nothing else writes them. */
export const ptPerMm = 72 / 25.4;

export function mm(pt: number): number {
  return pt / ptPerMm;
}

export function pt(millimetres: number): number {
  return millimetres * ptPerMm;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}
