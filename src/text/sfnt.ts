/*
 * Reads the tables of a TrueType file that a writer needs beside its glyphs. Field offsets are those of the OpenType
 * specification.
 */

/** Vertical measures, style and names of a face. Font units, y up. */
export interface FontFacts {
  readonly postScriptName: string;
  readonly unitsPerEm: number;
  readonly bbox: readonly [number, number, number, number];
  readonly ascent: number;
  /** Negative below the baseline. */
  readonly descent: number;
  readonly xHeight: number;
  readonly capHeight: number;
  /** Degrees counter-clockwise from upright: negative for a slant to the right. */
  readonly italicAngle: number;
  /** 100 … 900 */
  readonly weight: number;
  readonly fixedPitch: boolean;
  readonly glyphCount: number;
}

/** A font file's tables by name. */
export class Sfnt {
  private readonly tables = new Map<string, DataView>();

  /** Throws a RangeError with a sentence for the user where the bytes are no TrueType font. */
  constructor(bytes: Uint8Array) {
    const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const kind = bytes.length >= 12 ? file.getUint32(0) : 0;
    if (kind !== 0x00010000 && kind !== 0x74727565) throw new RangeError(refusal(kind));
    const count = file.getUint16(4);
    for (let i = 0; i < count; i++) {
      const record = 12 + 16 * i;
      const name = ascii(file, record, 4);
      const offset = file.getUint32(record + 8);
      const length = file.getUint32(record + 12);
      if (offset + length > bytes.length) throw new RangeError("The font file is cut short.");
      this.tables.set(name, new DataView(bytes.buffer, bytes.byteOffset + offset, length));
    }
  }

  optional(name: string): DataView | undefined {
    return this.tables.get(name);
  }

  /** Throws a RangeError where the font has no such table. */
  table(name: string): DataView {
    const found = this.tables.get(name);
    if (!found) throw new RangeError(`The font file has no table "${name}".`);
    return found;
  }
}

function refusal(kind: number): string {
  if (kind === 0x4f54544f) return "This font has PostScript outlines; a TrueType font (.ttf) is needed.";
  if (kind === 0x774f4646 || kind === 0x774f4632) return "This is a web font; a TrueType font (.ttf) is needed.";
  if (kind === 0x74746366) return "This is a collection of fonts; a single TrueType font (.ttf) is needed.";
  return "This file is not a TrueType font.";
}

function ascii(view: DataView, offset: number, length: number): string {
  let text = "";
  for (let i = 0; i < length; i++) text += String.fromCharCode(view.getUint8(offset + i));
  return text;
}

/** Reads what is in head, hhea, OS/2, post, maxp and name. Throws a RangeError where one of the first is missing. */
export function fontFacts(font: Sfnt): FontFacts {
  const head = font.table("head");
  const hhea = font.table("hhea");
  const os2 = font.optional("OS/2");
  const post = font.optional("post");
  const unitsPerEm = head.getUint16(18);
  // The two heights came with version 2 of the table; the fallbacks are the usual proportions of a sans.
  const heights = os2 && os2.getUint16(0) >= 2 && os2.byteLength >= 90 ? os2 : undefined;
  return {
    postScriptName: postScriptName(font),
    unitsPerEm,
    bbox: [head.getInt16(36), head.getInt16(38), head.getInt16(40), head.getInt16(42)],
    ascent: hhea.getInt16(4),
    descent: hhea.getInt16(6),
    xHeight: heights?.getInt16(86) || Math.round(unitsPerEm * 0.53),
    capHeight: heights?.getInt16(88) || Math.round(unitsPerEm * 0.71),
    italicAngle: post ? post.getInt32(4) / 65536 : 0,
    weight: os2 ? os2.getUint16(4) : 400,
    fixedPitch: post ? post.getUint32(12) !== 0 : false,
    glyphCount: font.table("maxp").getUint16(4),
  };
}

const POSTSCRIPT_NAME = 6;

/** The font's own name for printers, in the characters that a PDF name may hold plainly. */
function postScriptName(font: Sfnt): string {
  const name = font.optional("name");
  if (!name) return "Unnamed";
  const count = name.getUint16(2);
  const storage = name.getUint16(4);
  for (let i = 0; i < count; i++) {
    const record = 6 + 12 * i;
    if (name.getUint16(record + 6) !== POSTSCRIPT_NAME) continue;
    // Whether in one byte or two, such a name is ASCII; the other bytes are zero and fall to the filter.
    const text = ascii(name, storage + name.getUint16(record + 10), name.getUint16(record + 8));
    const clean = text.replace(/[^A-Za-z0-9_-]/g, "");
    if (clean) return clean;
  }
  return "Unnamed";
}
