import { Recent } from "../base/recent";
import { plain, type Run, runsKey } from "../base/run";
import { openShaper, openSubsetter, type RawGlyph, type Shaper, type ShaperFont, type Subsetter } from "./harfbuzz";
import { itemise } from "./itemise";
import { Outlines } from "./outline";
import { fontFacts, Sfnt } from "./sfnt";
import { stretchWidths } from "./stretches";
import type { Face, FaceName, Ink, ShapedGlyph, ShapedLine, StretchWidths, Typeface, TypefaceAssets } from "./typeface";

interface OpenFace extends Face {
  readonly font: ShaperFont;
}

/**
 * Opens a typeface from the bytes of the two modules and of four TrueType files.
 * Rejects with a RangeError, whose message is a sentence for the user, where a font cannot be used.
 */
export async function openTypeface(assets: TypefaceAssets): Promise<Typeface> {
  const [shaper, subsetter] = await Promise.all([openShaper(assets.harfbuzz), openSubsetter(assets.harfbuzzSubset)]);
  const open = (name: FaceName): OpenFace => openFace(name, assets.fonts[name], shaper, subsetter);
  return new OpenTypeface({
    regular: open("regular"),
    bold: open("bold"),
    italic: open("italic"),
    boldItalic: open("boldItalic"),
  });
}

function openFace(name: FaceName, bytes: Uint8Array, shaper: Shaper, subsetter: Subsetter): OpenFace {
  const tables = new Sfnt(bytes);
  const facts = fontFacts(tables);
  const outlines = new Outlines(tables, facts.glyphCount);
  const font = shaper.font(bytes);
  // The first time takes long, and is no part of reading a unit.
  font.shape("AV á fi", 0, 7, false);
  const paths = new Map<number, string>();
  return {
    ...facts,
    name,
    font,
    glyph: (codePoint) => font.glyph(codePoint),
    advance: (glyph) => font.advance(glyph),
    box: (glyph) => outlines.box(glyph),
    outline(glyph) {
      const path = paths.get(glyph) ?? outlines.path(glyph);
      paths.set(glyph, path);
      return path;
    },
    subset: (glyphs) => subsetter.subset(bytes, glyphs),
  };
}

/** Lines and graphemes kept per typeface: some thousand units' worth. */
const keptLines = 20_000;

/** Latin, Greek and Cyrillic end here; of scripts beyond, letters may join to graphemes. */
const plainEnd = 0x0530;

/** Where each glyph's cluster ends: where the next one begins. Clusters of a stretch run all upwards or all downwards. */
function clusterEnds(glyphs: readonly RawGlyph[], end: number): readonly number[] {
  const ends: number[] = new Array(glyphs.length);
  const upwards = (glyphs[0]?.cluster ?? 0) <= (glyphs.at(-1)?.cluster ?? 0);
  let [next, current] = [end, -1];
  for (let step = 0; step < glyphs.length; step++) {
    const i = upwards ? glyphs.length - 1 - step : step;
    const cluster = glyphs[i]?.cluster ?? 0;
    if (current >= 0 && cluster !== current) next = current;
    current = cluster;
    ends[i] = next;
  }
  return ends;
}

const none: readonly string[] = [];
const graphemes = new Intl.Segmenter("und", { granularity: "grapheme" });
/** What is left of a character where a text was read as another encoding; signs of control that are no white space. */
const lost = /[\ufffd\p{Cc}]/u;
const inkless = /^[\p{Cc}\p{Cf}\p{Z}\p{Variation_Selector}]+$/u;
const drawn = /[\p{L}\p{N}\p{P}\p{S} ]/u;
const breaking = /[\p{Cc}\u2028\u2029]/gu;

class OpenTypeface implements Typeface {
  readonly xHeight: number;
  readonly capHeight: number;
  readonly ascent: number;
  readonly descent: number;
  private readonly lines = new Recent<ShapedLine>(keptLines);
  private readonly inks = new Recent<Ink>(keptLines);
  private readonly drawable = new Recent<boolean>(keptLines);
  private readonly lacking = new Recent<readonly string[]>(keptLines);
  /** By code unit: 0 not looked at, 1 plain, 2 not. */
  private readonly plain: Readonly<Record<FaceName, Uint8Array>> = {
    regular: new Uint8Array(plainEnd),
    bold: new Uint8Array(plainEnd),
    italic: new Uint8Array(plainEnd),
    boldItalic: new Uint8Array(plainEnd),
  };

  constructor(readonly faces: Readonly<Record<FaceName, OpenFace>>) {
    const { regular } = faces;
    this.xHeight = regular.xHeight / regular.unitsPerEm;
    this.capHeight = regular.capHeight / regular.unitsPerEm;
    this.ascent = regular.ascent / regular.unitsPerEm;
    this.descent = -regular.descent / regular.unitsPerEm;
  }

  shape(runs: readonly Run[]): ShapedLine {
    return this.lines.get(runsKey(runs), () => this.shapeAnew(runs));
  }

  measure(runs: readonly Run[]): number {
    return this.shape(runs).width;
  }

  stretches(runs: readonly Run[]): StretchWidths {
    return stretchWidths(this.shape(runs), runs);
  }

  ink(runs: readonly Run[]): Ink {
    return this.inks.get(runsKey(runs), () => this.inkOf(this.shape(runs)));
  }

  missing(text: string, face: FaceName = "regular"): readonly string[] {
    return this.isPlain(text, face) ? none : this.lacking.get(`${face} ${text}`, () => this.missingAnew(text, face));
  }

  private missingAnew(text: string, face: FaceName): readonly string[] {
    const found = new Set<string>();
    for (const { segment } of graphemes.segment(text)) {
      const isLost = lost.test(segment) && !/[\s\u0085]/u.test(segment);
      if (isLost || (!inkless.test(segment) && !this.canDraw(segment, face))) found.add(segment);
    }
    return [...found];
  }

  /** Whether every character is a grapheme of its own that can be drawn, which is what most texts are made of. */
  private isPlain(text: string, face: FaceName): boolean {
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code >= plainEnd) return false;
      this.plain[face][code] ||= this.isPlainCharacter(String.fromCharCode(code), face) ? 1 : 2;
      if (this.plain[face][code] === 2) return false;
    }
    return true;
  }

  private isPlainCharacter(character: string, face: FaceName): boolean {
    return drawn.test(character) && this.canDraw(character, face);
  }

  private canDraw(grapheme: string, face: FaceName): boolean {
    return this.drawable.get(`${face} ${grapheme}`, () => {
      const glyphs = this.faces[face].font.shape(grapheme, 0, grapheme.length, false);
      return glyphs.every((glyph) => glyph.id !== 0);
    });
  }

  private shapeAnew(runs: readonly Run[]): ShapedLine {
    // A tab or a line break inside a line is a space; one unit each, so that clusters keep their places.
    const text = plain(runs).replace(breaking, " ");
    const glyphs: ShapedGlyph[] = [];
    let pen = 0;
    for (const { start, end, face, rightToLeft } of itemise(text, runs)) {
      const { font, unitsPerEm } = this.faces[face];
      const raw = font.shape(text, start, end, rightToLeft);
      const endOf = clusterEnds(raw, end);
      let i = 0;
      for (const { id, cluster, advance, dx, dy, separable } of raw) {
        glyphs.push({
          face,
          id,
          x: pen + dx / unitsPerEm,
          y: dy / unitsPerEm,
          advance: advance / unitsPerEm,
          cluster,
          clusterText: text.slice(cluster, endOf[i++]),
          separable,
        });
        pen += advance / unitsPerEm;
      }
    }
    return { text, glyphs, width: pen };
  }

  private inkOf(line: ShapedLine): Ink {
    let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const glyph of line.glyphs) {
      const { unitsPerEm, box } = this.faces[glyph.face];
      const edges = box(glyph.id);
      if (!edges) continue;
      left = Math.min(left, glyph.x + edges[0] / unitsPerEm);
      bottom = Math.min(bottom, glyph.y + edges[1] / unitsPerEm);
      right = Math.max(right, glyph.x + edges[2] / unitsPerEm);
      top = Math.max(top, glyph.y + edges[3] / unitsPerEm);
    }
    return left > right ? { left: 0, right: 0, bottom: 0, top: 0 } : { left, right, bottom, top };
  }
}
