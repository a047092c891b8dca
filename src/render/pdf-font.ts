import { type PDFContext, type PDFRef, PDFString } from "pdf-lib";
import type { Face, FaceName, ShapedGlyph, ShapedLine } from "../text/typeface";
import { type Cluster, clusters } from "./cluster";
import { Digest } from "./digest";
import { decimal } from "./measure";

/*
 * Faces as composite fonts: glyphs by their own index, cut down to those in use, each with the text it stands for.
 */

/** The text of a mere part of a letter: without any, readers take the glyph's index for a character. */
const nothing = "\u200b";

/** What a document uses of one face. */
export class FaceUse {
  /** Text by glyph: what it stands for alone or by the font's table, before what it was part of. */
  private readonly texts = new Map<number, string>();
  private readonly guesses = new Map<number, string>();
  private readonly widths = new Map<number, number>();

  constructor(
    readonly face: Face,
    /** The name of the font in the pages' resources. */
    readonly resource: string,
  ) {}

  add(glyph: number, text: string): void {
    if (!this.texts.has(glyph)) this.texts.set(glyph, text);
  }

  /** For a glyph of which only the company is known. */
  guess(glyph: number, text: string): void {
    if (!this.guesses.get(glyph)) this.guesses.set(glyph, text);
  }

  /** What a reader takes this glyph for. */
  text(glyph: number): string {
    return this.texts.get(glyph) ?? (this.guesses.get(glyph) || nothing);
  }

  /** Advance in thousandths of an em, exactly as the font object says it. */
  width(glyph: number): number {
    let width = this.widths.get(glyph);
    if (width === undefined) {
      width = Number(decimal((this.face.advance(glyph) * 1000) / this.face.unitsPerEm));
      this.widths.set(glyph, width);
    }
    return width;
  }

  /** Glyph 0 belongs to every font; the rest in order of their indices. */
  glyphs(): readonly number[] {
    return [...new Set([0, ...this.texts.keys(), ...this.guesses.keys()])].sort((a, b) => a - b);
  }
}

const order: readonly FaceName[] = ["regular", "bold", "italic", "boldItalic"];

/** The faces that a document uses; embedded are only these. */
export class FontUse {
  private readonly uses = new Map<FaceName, FaceUse>();

  constructor(private readonly faces: Readonly<Record<FaceName, Face>>) {}

  face(name: FaceName): FaceUse {
    let use = this.uses.get(name);
    if (!use) {
      use = new FaceUse(this.faces[name], `F${order.indexOf(name) + 1}`);
      this.uses.set(name, use);
    }
    return use;
  }

  /** Notes a line's glyphs. All lines must be noted before the first is written. */
  note(line: ShapedLine): void {
    for (const cluster of clusters(line)) {
      const [first, ...more] = cluster.glyphs;
      if (more.length === 0) this.face(first.face).add(first.id, cluster.text);
      else this.noteTogether(cluster);
    }
  }

  /**
   * A letter with marks of its own, or a form that only the shaper knows. Where the font has a glyph for a character,
   * it stands for that; the widest other one for the characters that are left.
   */
  private noteTogether({ text, glyphs }: Cluster): void {
    const left = new Set(text);
    const others: ShapedGlyph[] = [];
    for (const glyph of glyphs) {
      const use = this.face(glyph.face);
      const character = [...left].find((one) => use.face.glyph(one.codePointAt(0) ?? 0) === glyph.id);
      if (character === undefined) others.push(glyph);
      else use.add(glyph.id, character);
      if (character !== undefined) left.delete(character);
    }
    const widest = Math.max(...others.map((glyph) => glyph.advance));
    const base = others.find((glyph) => glyph.advance === widest);
    for (const glyph of others) this.face(glyph.face).guess(glyph.id, glyph === base ? [...left].join("") : "");
  }

  /** Whether a reader takes the cluster for what it stands for; canonically equivalent texts count as the same. */
  spells({ text, glyphs: [first, ...more] }: Cluster): boolean {
    return more.length === 0 && this.face(first.face).text(first.id).normalize("NFC") === text.normalize("NFC");
  }

  /** In a fixed order, whichever text came first. */
  all(): readonly FaceUse[] {
    return order.flatMap((name) => this.uses.get(name) ?? []);
  }
}

function hex(value: number): string {
  return value.toString(16).toUpperCase().padStart(4, "0");
}

/** Glyph indices or UTF-16 units, four hexadecimal digits each. */
export function hexGlyph(glyph: number): string {
  return hex(glyph);
}

export function hexText(text: string): string {
  let digits = "";
  for (let i = 0; i < text.length; i++) digits += hex(text.charCodeAt(i));
  return digits;
}

/** A CMap's section holds at most a hundred entries. */
const section = 100;

function toUnicode(use: FaceUse, glyphs: readonly number[]): string {
  const entries = glyphs.map((glyph) => `<${hexGlyph(glyph)}> <${hexText(use.text(glyph))}>`);
  const parts = [
    "/CIDInit /ProcSet findresource begin",
    "12 dict begin",
    "begincmap",
    "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def",
    "/CMapName /Adobe-Identity-UCS def",
    "/CMapType 2 def",
    "1 begincodespacerange",
    "<0000> <FFFF>",
    "endcodespacerange",
  ];
  for (let i = 0; i < entries.length; i += section) {
    const some = entries.slice(i, i + section);
    parts.push(`${some.length} beginbfchar`, ...some, "endbfchar");
  }
  parts.push("endcmap", "CMapName currentdict /CMap defineresource pop", "end", "end");
  return parts.join("\n");
}

const FIXED_PITCH = 1;
const SYMBOLIC = 4;
const ITALIC = 64;

/** Thickness of upright stems in thousandths of an em, which no table of a font tells: the usual estimate by weight. */
function stemThickness(weight: number): number {
  return Math.round(50 + (weight / 65) ** 2);
}

/** Writes the objects of one font; returns the reference for the pages' resources and adds its bytes to the digest. */
export function embedFont(context: PDFContext, use: FaceUse, digest: Digest): PDFRef {
  const { face } = use;
  const glyphs = use.glyphs();
  const program = face.subset(glyphs);
  digest.add(program);
  const tag = new Digest().add(face.postScriptName).add(glyphs.join()).letters();
  const name = `${tag}+${face.postScriptName}`;
  const scaled = (units: number): number => Number(decimal((units * 1000) / face.unitsPerEm));
  const file = context.register(context.flateStream(program, { Length1: program.length }));
  const descriptor = context.register(
    context.obj({
      Type: "FontDescriptor",
      FontName: name,
      Flags: SYMBOLIC + (face.fixedPitch ? FIXED_PITCH : 0) + (face.italicAngle === 0 ? 0 : ITALIC),
      FontBBox: face.bbox.map(scaled),
      ItalicAngle: Number(decimal(face.italicAngle)),
      Ascent: scaled(face.ascent),
      Descent: scaled(face.descent),
      CapHeight: scaled(face.capHeight),
      XHeight: scaled(face.xHeight),
      StemV: stemThickness(face.weight),
      FontFile2: file,
    }),
  );
  const descendant = context.register(
    context.obj({
      Type: "Font",
      Subtype: "CIDFontType2",
      BaseFont: name,
      CIDSystemInfo: { Registry: PDFString.of("Adobe"), Ordering: PDFString.of("Identity"), Supplement: 0 },
      FontDescriptor: descriptor,
      W: glyphs.flatMap((glyph) => [glyph, [use.width(glyph)]]),
      CIDToGIDMap: "Identity",
    }),
  );
  const map = toUnicode(use, glyphs);
  digest.add(map);
  return context.register(
    context.obj({
      Type: "Font",
      Subtype: "Type0",
      BaseFont: name,
      Encoding: "Identity-H",
      DescendantFonts: [descendant],
      ToUnicode: context.register(context.flateStream(map)),
    }),
  );
}
