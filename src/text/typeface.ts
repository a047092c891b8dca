import type { Run } from "../base/run";

/*
 * The contract of the text layer: what the layers below ask of a typeface. Lengths are in em (multiples of the text size).
 */

export type FaceName = "regular" | "bold" | "italic" | "boldItalic";

export interface ShapedGlyph {
  readonly face: FaceName;
  /** Glyph index in the face. */
  readonly id: number;
  /** Pen position of the glyph's origin from the line's start, offsets included; y is up. */
  readonly x: number;
  readonly y: number;
  readonly advance: number;
  /** Index of the first UTF-16 unit of its cluster in `ShapedLine.text`, and the cluster's characters. */
  readonly cluster: number;
  readonly clusterText: string;
  /** Whether the stretch may be cut before this glyph's cluster: shaped apart, both parts would come out as they are now. */
  readonly separable: boolean;
}

export interface ShapedLine {
  readonly text: string;
  /** Visual order, left to right. */
  readonly glyphs: readonly ShapedGlyph[];
  readonly width: number;
}

/** Where the ink of a line reaches: from its start, and from its baseline with y up. All zero for a blank line. */
export interface Ink {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** A face that a writer can embed or draw. */
export interface Face {
  readonly name: FaceName;
  readonly postScriptName: string;
  readonly unitsPerEm: number;
  /** Font units. */
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  /** Degrees, negative for a slant to the right. */
  readonly italicAngle: number;
  /** 400 regular, 700 bold. */
  readonly weight: number;
  readonly fixedPitch: boolean;
  readonly bbox: readonly [number, number, number, number];
  /** Glyph that stands for a character alone, by the font's own table; 0 where there is none. */
  glyph(codePoint: number): number;
  /** Nominal advance of a glyph in font units. */
  advance(glyph: number): number;
  /** Box round a glyph's ink, [left, bottom, right, top] in font units; undefined for blanks. */
  box(glyph: number): readonly [number, number, number, number] | undefined;
  /** SVG path data of a glyph in font units, y up; empty for blanks. */
  outline(glyph: number): string;
  /** A TrueType file with these glyphs under their own indices, for embedding. Same glyphs, same bytes. */
  subset(glyphs: readonly number[]): Uint8Array;
}

/** Width of text[start, end) on a line of its own (em); undefined where only shaping it tells. */
export type StretchWidths = (start: number, end: number) => number | undefined;

export interface Typeface {
  readonly faces: Readonly<Record<FaceName, Face>>;
  readonly xHeight: number;
  readonly capHeight: number;
  readonly ascent: number;
  /** Positive. */
  readonly descent: number;
  /** Shapes one line, kept per text and style: asking again costs a look-up. Base direction is found from the text. */
  shape(runs: readonly Run[]): ShapedLine;
  /** Width of one line. */
  measure(runs: readonly Run[]): number;
  /** Widths of stretches of a line, as each would be alone. */
  stretches(runs: readonly Run[]): StretchWidths;
  /** Reach of a line's ink, which is what must clear a cut. */
  ink(runs: readonly Run[]): Ink;
  /**
   * The characters (graphemes) of a text that a face has no glyph for, each once, in order. White space and format characters are never
   * missing, other control characters and what stands for a lost character always. Without a face: the regular one.
   */
  missing(text: string, face?: FaceName): readonly string[];
}

/** The files that a typeface is made of, as bytes. */
export interface TypefaceAssets {
  readonly harfbuzz: Uint8Array;
  readonly harfbuzzSubset: Uint8Array;
  readonly fonts: Readonly<Record<FaceName, Uint8Array>>;
}
