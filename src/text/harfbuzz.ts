import { Library } from "./wasm";

/*
 * HarfBuzz through its bare C functions. Its modules are instantiated from bytes, so that they run wherever the bytes
 * can be had. Names and constants are those of hb-buffer.h, hb-common.h and hb-subset.h.
 */

/** A glyph as the shaper leaves it; lengths in font units, y up. */
export interface RawGlyph {
  readonly id: number;
  /** First UTF-16 unit of its cluster. */
  readonly cluster: number;
  readonly advance: number;
  readonly dx: number;
  readonly dy: number;
  /** Nothing before its cluster took part in how it looks, nor the other way: the text may be cut there. */
  readonly separable: boolean;
}

/** One face, ready to shape with. */
export interface ShaperFont {
  /**
   * Shapes text[start, end), which is of one direction and one script; what stands around it is context for joining
   * letters. Glyphs come in visual order, left to right.
   */
  shape(text: string, start: number, end: number, rightToLeft: boolean): readonly RawGlyph[];
  /** Glyph of a character by the font's own table; 0 where there is none. */
  glyph(codePoint: number): number;
  /** Nominal advance in font units. */
  advance(glyph: number): number;
}

export interface Shaper {
  /** Throws a RangeError where the bytes are no font that the shaper can read. */
  font(bytes: Uint8Array): ShaperFont;
}

export interface Subsetter {
  /** The same font with only these glyphs, each under its own index, without layout, hints and names. */
  subset(font: Uint8Array, glyphs: readonly number[]): Uint8Array;
}

const MEMORY_MODE_WRITABLE = 2;
const DIRECTION_LTR = 4;
const DIRECTION_RTL = 5;
const CLUSTER_LEVEL_MONOTONE_GRAPHEMES = 0;
const UNSAFE_TO_BREAK = 0x1;
/** Size of hb_glyph_info_t and of hb_glyph_position_t, in 32-bit words. */
const RECORD = 5;

const SUBSET_NO_HINTING = 0x1;
const SUBSET_RETAIN_GIDS = 0x2;
const SUBSET_NO_LAYOUT_CLOSURE = 0x200;
const SUBSET_SETS_DROP_TABLE_TAG = 3;

/** Tables that an embedded font does without: shaping is done, and a variable font is drawn as its default instance. */
const dropped =
  "BASE DSIG GDEF GPOS GSUB HVAR JSTF MVAR OS/2 STAT VORG avar cmap cvar fvar gasp gvar kern meta name post vhea vmtx".match(
    /\S+/g,
  );

function tag(name: string): number {
  let value = 0;
  for (let i = 0; i < 4; i++) value = (value << 8) | (i < name.length ? name.charCodeAt(i) : 32);
  return value;
}

export async function openShaper(wasm: Uint8Array): Promise<Shaper> {
  const library = await Library.open(wasm);
  const malloc = library.function("malloc");
  const free = library.function("free");
  const addText = library.function("hb_buffer_add_utf16");
  const clear = library.function("hb_buffer_clear_contents");
  const setDirection = library.function("hb_buffer_set_direction");
  const guessRest = library.function("hb_buffer_guess_segment_properties");
  const infos = library.function("hb_buffer_get_glyph_infos");
  const positions = library.function("hb_buffer_get_glyph_positions");
  const shape = library.function("hb_shape");
  const horizontalAdvance = library.function("hb_font_get_glyph_h_advance");
  const nominalGlyph = library.function("hb_font_get_nominal_glyph");
  const answer = malloc(4);
  const buffer = library.function("hb_buffer_create")();
  library.function("hb_buffer_set_cluster_level")(buffer, CLUSTER_LEVEL_MONOTONE_GRAPHEMES);

  /** Memory for a text, kept from one to the next; UTF-16 units. */
  let scratch = { pointer: 0, length: 0 };

  function fill(text: string, start: number, end: number): void {
    if (text.length > scratch.length) {
      if (scratch.length > 0) free(scratch.pointer);
      const length = Math.max(256, 2 * text.length);
      scratch = { pointer: malloc(length * 2), length };
    }
    const units = library.units(scratch.pointer, text.length);
    for (let i = 0; i < text.length; i++) units[i] = text.charCodeAt(i);
    addText(buffer, scratch.pointer, text.length, start, end - start);
  }

  function glyphs(): RawGlyph[] {
    const infosAt = infos(buffer, answer);
    const positionsAt = positions(buffer, 0);
    const length = (library.words(answer, 1)[0] ?? 0) * RECORD;
    const info = library.words(infosAt, length);
    const position = library.words(positionsAt, length);
    const found: RawGlyph[] = [];
    for (let i = 0; i < length; i += RECORD) {
      found.push({
        id: info[i] ?? 0,
        cluster: info[i + 2] ?? 0,
        advance: position[i] ?? 0,
        dx: position[i + 2] ?? 0,
        dy: position[i + 3] ?? 0,
        separable: ((info[i + 1] ?? 0) & UNSAFE_TO_BREAK) === 0,
      });
    }
    return found;
  }

  return {
    font(bytes) {
      const pointer = malloc(bytes.length);
      library.bytes(pointer, bytes.length).set(bytes);
      const blob = library.function("hb_blob_create")(pointer, bytes.length, MEMORY_MODE_WRITABLE, 0, 0);
      const face = library.function("hb_face_create")(blob, 0);
      const font = library.function("hb_font_create")(face);
      return {
        shape(text, start, end, rightToLeft) {
          clear(buffer);
          fill(text, start, end);
          setDirection(buffer, rightToLeft ? DIRECTION_RTL : DIRECTION_LTR);
          guessRest(buffer);
          shape(font, buffer, 0, 0);
          return glyphs();
        },
        glyph: (codePoint) => (nominalGlyph(font, codePoint, answer) ? (library.words(answer, 1)[0] ?? 0) : 0),
        advance: (glyph) => horizontalAdvance(font, glyph),
      };
    },
  };
}

export async function openSubsetter(wasm: Uint8Array): Promise<Subsetter> {
  const library = await Library.open(wasm);
  const malloc = library.function("malloc");
  const free = library.function("free");
  const addToSet = library.function("hb_set_add");
  const destroyBlob = library.function("hb_blob_destroy");
  const destroyFace = library.function("hb_face_destroy");

  return {
    subset(font, glyphs) {
      const pointer = malloc(font.length);
      library.bytes(pointer, font.length).set(font);
      const blob = library.function("hb_blob_create")(pointer, font.length, MEMORY_MODE_WRITABLE, 0, 0);
      const face = library.function("hb_face_create")(blob, 0);
      const input = library.function("hb_subset_input_create_or_fail")();
      library.function("hb_subset_input_set_flags")(
        input,
        SUBSET_NO_HINTING | SUBSET_RETAIN_GIDS | SUBSET_NO_LAYOUT_CLOSURE,
      );
      const wanted = library.function("hb_subset_input_glyph_set")(input);
      for (const glyph of glyphs) addToSet(wanted, glyph);
      const drop = library.function("hb_subset_input_set")(input, SUBSET_SETS_DROP_TABLE_TAG);
      for (const name of dropped ?? []) addToSet(drop, tag(name));
      const result = library.function("hb_subset_or_fail")(face, input);
      library.function("hb_subset_input_destroy")(input);
      destroyFace(face);
      destroyBlob(blob);
      if (result === 0) {
        free(pointer);
        throw new Error("The font could not be cut down to the glyphs in use.");
      }
      const out = library.function("hb_face_reference_blob")(result);
      const start = library.function("hb_blob_get_data")(out, 0);
      const bytes = library.bytes(start, library.function("hb_blob_get_length")(out)).slice();
      destroyBlob(out);
      destroyFace(result);
      free(pointer);
      return bytes;
    },
  };
}
