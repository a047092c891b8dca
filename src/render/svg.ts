import { pictureSize } from "../base/picture";
import type { AreaItem, LineItem, PictureItem, ShapeItem, Sheet, SheetItem, TextItem } from "../page/sheet";
import { mmPerPoint } from "../text/points";
import type { Face, Typeface } from "../text/typeface";
import { base64 } from "./base64";
import { anchorShare, decimal } from "./measure";

export interface SvgOptions {
  /** Begins every id in the drawing, so that several can stand in one page; letters, digits and hyphens. */
  readonly prefix?: string;
}

/**
 * A sheet as a standalone SVG element in true size; one user unit is a millimetre. Text is drawn as the outlines of its
 * glyphs, so that it looks as it will print wherever it is shown. Nothing in it runs or reaches out.
 *
 * Texts: `<g class="text" data-start data-end aria-label>`, offsets being those of the item's source. Pieces:
 * `<rect class="piece" data-piece>`, with class `differs` too where the piece does. A picture without bytes is drawn
 * as a grey box with its description.
 */
export function renderSvg(
  sheet: Sheet,
  typeface: Typeface,
  pictures: ReadonlyMap<string, Uint8Array>,
  options: SvgOptions = {},
): string {
  const drawing = new Drawing(typeface, pictures, options.prefix ?? "s");
  const items = sheet.items.map((item) => drawing.item(item));
  const width = decimal(sheet.width);
  const height = decimal(sheet.height);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"` +
      ` class="sheet" role="group" aria-label="${escaped(sheet.label)}" lang="${escaped(sheet.lang)}">`,
    `<defs>${drawing.definitions()}</defs>`,
    `<rect class="paper" width="${width}" height="${height}" fill="#fff"/>`,
    ...items,
    "</svg>",
  ].join("\n");
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** What XML 1.0 cannot hold at all, escaped or not; lone surrogates too. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const unspeakable = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu;

function escaped(text: string): string {
  return text.replace(unspeakable, "\ufffd").replace(/[&<>"']/g, (character) => entities[character] ?? "");
}

function line(item: LineItem): string {
  const dash = item.dash ? ` stroke-dasharray="${item.dash.map((mm) => decimal(mm)).join(" ")}"` : "";
  const ends = [item.x1, item.y1, item.x2, item.y2].map((mm) => decimal(mm));
  return (
    `<line class="${item.role}" x1="${ends[0]}" y1="${ends[1]}" x2="${ends[2]}" y2="${ends[3]}"` +
    ` stroke="#000" stroke-width="${decimal(item.weight * mmPerPoint, 4)}"${dash}/>`
  );
}

function shape(item: ShapeItem): string {
  const points = item.points.map(([x, y]) => `${decimal(x)},${decimal(y)}`).join(" ");
  const level = Math.round((item.grey ?? 0) * 255);
  return `<polygon points="${points}" fill="rgb(${level},${level},${level})"/>`;
}

function area(item: AreaItem): string {
  return (
    `<rect class="${item.differs ? "piece differs" : "piece"}" data-piece="${item.piece}" x="${decimal(item.x)}"` +
    ` y="${decimal(item.y)}" width="${decimal(item.w)}" height="${decimal(item.h)}" fill="none" pointer-events="all"/>`
  );
}

/** The items that share something: glyph outlines and pictures. */
class Drawing {
  private readonly glyphs = new Map<string, string>();

  constructor(
    private readonly typeface: Typeface,
    private readonly pictures: ReadonlyMap<string, Uint8Array>,
    private readonly prefix: string,
  ) {}

  definitions(): string {
    return [...this.glyphs.values()].join("");
  }

  item(item: SheetItem): string {
    switch (item.type) {
      case "line":
        return line(item);
      case "shape":
        return shape(item);
      case "text":
        return this.text(item);
      case "picture":
        return this.picture(item);
      case "area":
        return area(item);
    }
  }

  private text(item: TextItem): string {
    const shaped = this.typeface.shape(item.runs);
    const { unitsPerEm } = this.typeface.faces.regular;
    // Inside the group the unit is that of the font, which keeps the numbers short and exact.
    const scale = decimal((item.size * mmPerPoint) / unitsPerEm, 8);
    const before = shaped.width * unitsPerEm * anchorShare[item.anchor];
    const uses = shaped.glyphs.flatMap((glyph) => {
      const id = this.define(this.typeface.faces[glyph.face], glyph.id);
      const x = decimal(glyph.x * unitsPerEm - before, 2);
      const y = decimal(-glyph.y * unitsPerEm, 2);
      return id ? [`<use href="#${id}" x="${x}"${y === "0" ? "" : ` y="${y}"`}/>`] : [];
    });
    const { ascent, descent } = this.typeface;
    const hit =
      `<rect class="hit" x="${decimal(-before, 2)}" y="${decimal(-ascent * unitsPerEm)}"` +
      ` width="${decimal(shaped.width * unitsPerEm, 2)}" height="${decimal((ascent + descent) * unitsPerEm)}"` +
      ' fill="none" pointer-events="all"/>';
    const turn = item.turn === 0 ? "" : ` rotate(${item.turn * 90})`;
    return (
      `<g class="text"${sourceAttributes(item.source)} role="img" aria-label="${escaped(shaped.text)}"` +
      `${item.lang ? ` lang="${escaped(item.lang)}"` : ""}` +
      ` transform="translate(${decimal(item.x)} ${decimal(item.y)})${turn} scale(${scale})">` +
      `${item.source ? hit : ""}${uses.join("")}</g>`
    );
  }

  private picture(item: PictureItem): string {
    const bytes = this.pictures.get(item.key);
    const box =
      `x="${decimal(item.x)}" y="${decimal(item.y)}" width="${decimal(item.w)}" height="${decimal(item.h)}"` +
      `${sourceAttributes(item.source)} role="img" aria-label="${escaped(item.alt)}"${turned(item)}`;
    const type = bytes && pictureSize(bytes)?.type;
    if (!bytes || !type) return `<rect class="no picture" ${box} fill="#ddd"/>`;
    return `<image class="picture" ${box} preserveAspectRatio="none" href="data:image/${type};base64,${base64(bytes)}"/>`;
  }

  /** Puts a glyph's outline among the definitions; returns its id, or nothing for a blank. */
  private define(face: Face, glyph: number): string | undefined {
    const path = face.outline(glyph);
    if (!path) return undefined;
    const id = `${this.prefix}-${face.name}-${glyph}`;
    if (!this.glyphs.has(id)) {
      const scale = this.typeface.faces.regular.unitsPerEm / face.unitsPerEm;
      this.glyphs.set(
        id,
        `<path id="${id}" d="${path}" transform="scale(${decimal(scale, 6)} ${decimal(-scale, 6)})"/>`,
      );
    }
    return id;
  }
}

function sourceAttributes(source: { readonly start: number; readonly end: number } | undefined): string {
  return source ? ` data-start="${source.start}" data-end="${source.end}"` : "";
}

function turned(item: PictureItem): string {
  if (item.turn === 0) return "";
  const centre = `${decimal(item.x + item.w / 2)} ${decimal(item.y + item.h / 2)}`;
  return ` transform="rotate(${item.turn * 90} ${centre})"`;
}
