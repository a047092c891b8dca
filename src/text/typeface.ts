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
}

export interface ShapedLine {
  readonly text: string;
  /** Visual order, left to right. */
  readonly glyphs: readonly ShapedGlyph[];
  readonly width: number;
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
  readonly italicAngle: number;
  readonly bbox: readonly [number, number, number, number];
  /** Nominal advance of a glyph in font units. */
  advance(glyph: number): number;
  /** SVG path data of a glyph in font units, y up; empty for blanks. */
  outline(glyph: number): string;
  /** A TrueType file with these glyphs under their own indices, for embedding. Same glyphs, same bytes. */
  subset(glyphs: readonly number[]): Uint8Array;
}

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
  /** The characters (graphemes) of a text that the faces have no glyph for, each once, in order. */
  missing(text: string): readonly string[];
}

/** The files that a typeface is made of, as bytes. */
export interface TypefaceAssets {
  readonly harfbuzz: Uint8Array;
  readonly harfbuzzSubset: Uint8Array;
  readonly fonts: Readonly<Record<FaceName, Uint8Array>>;
}
