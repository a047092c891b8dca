import type { LineItem, PictureItem, ShapeItem, Sheet, TextItem } from "../page/sheet";
import type { ShapedLine, Typeface } from "../text/typeface";
import { stretches } from "./cluster";
import { anchorShare, decimal, pointsPerMm, turnVectors } from "./measure";
import { orientationMatrix } from "./orientation";
import { type FontUse, hexGlyph, hexText } from "./pdf-font";

/*
 * A sheet as a page's content stream. What carries meaning is marked for the structure tree, the rest is an artifact.
 */

/** A marked stretch of a page, in reading order; its index is its MCID. */
export type Marked =
  | { readonly type: "text"; readonly lang: string | undefined }
  | { readonly type: "picture"; readonly alt: string };

export interface PageContent {
  readonly operators: string;
  readonly marked: readonly Marked[];
  /** Keys of the pictures on the page, in order of appearance, each once. */
  readonly pictures: readonly string[];
}

/** How a picture is named in the pages' resources and which way up it is stored. */
export interface PlacedPicture {
  readonly resource: string;
  /** As in Exif, from 1. */
  readonly orientation: number;
}

export function pageContent(
  sheet: Sheet,
  typeface: Typeface,
  fonts: FontUse,
  pictures: ReadonlyMap<string, PlacedPicture>,
): PageContent {
  const page = new PageWriter(sheet.height);
  for (const item of sheet.items) {
    if (item.type === "line") page.line(item);
    else if (item.type === "shape") page.shape(item);
    else if (item.type === "text") page.text(item, typeface.shape(item.runs), fonts);
    else if (item.type === "picture") page.picture(item, pictures.get(item.key));
  }
  return page.finish();
}

class PageWriter {
  private readonly operators: string[] = [];
  private readonly marked: Marked[] = [];
  private readonly keys = new Set<string>();
  private inArtifact = false;
  private weight = "1";
  private dash = "[] 0 d";

  constructor(private readonly height: number) {}

  line(item: LineItem): void {
    this.artifact();
    this.stroke(item);
    this.operators.push(`${this.point(item.x1, item.y1)} m ${this.point(item.x2, item.y2)} l S`);
  }

  shape(item: ShapeItem): void {
    const [first, ...rest] = item.points;
    if (!first) return;
    this.artifact();
    const grey = decimal(item.grey ?? 0);
    const outline = [`${this.point(...first)} m`, ...rest.map((point) => `${this.point(...point)} l`), "h f"].join(" ");
    this.operators.push(grey === "0" ? outline : `${grey} g ${outline} 0 g`);
  }

  text(item: TextItem, line: ShapedLine, fonts: FontUse): void {
    if (line.glyphs.length === 0) return;
    this.mark("P", { type: "text", lang: item.lang });
    const [cos, sin] = turnVectors[item.turn];
    const before = line.width * item.size * anchorShare[item.anchor];
    const x = item.x * pointsPerMm - before * cos;
    const y = (this.height - item.y) * pointsPerMm - before * sin;
    const matrix = [cos, sin, -sin, cos, x, y].map((value) => decimal(value)).join(" ");
    this.operators.push(`BT ${matrix} Tm`, ...showLine(line, item.size, fonts), "ET", "EMC");
  }

  picture(item: PictureItem, placed: PlacedPicture | undefined): void {
    if (!placed) throw new RangeError(`There is no picture "${item.key}".`);
    this.mark("Figure", { type: "picture", alt: item.alt });
    this.keys.add(item.key);
    const [a, b, c, d] = orientationMatrix(placed.orientation);
    const [cos, sin] = turnVectors[item.turn];
    const width = item.w * pointsPerMm;
    const height = item.h * pointsPerMm;
    // From the stored unit square: upright, stretched to the box, turned; then moved so that the centres meet.
    const stretched = [a * width, b * height, c * width, d * height] as const;
    const xx = stretched[0] * cos - stretched[1] * sin;
    const xy = stretched[0] * sin + stretched[1] * cos;
    const yx = stretched[2] * cos - stretched[3] * sin;
    const yy = stretched[2] * sin + stretched[3] * cos;
    const x = (item.x + item.w / 2) * pointsPerMm - (xx + yx) / 2;
    const y = (this.height - item.y - item.h / 2) * pointsPerMm - (xy + yy) / 2;
    const matrix = [xx, xy, yx, yy, x, y].map((value) => decimal(value)).join(" ");
    this.operators.push(`q ${matrix} cm /${placed.resource} Do Q`, "EMC");
  }

  finish(): PageContent {
    this.endArtifact();
    return { operators: this.operators.join("\n"), marked: this.marked, pictures: [...this.keys] };
  }

  private point(x: number, y: number): string {
    return `${decimal(x * pointsPerMm)} ${decimal((this.height - y) * pointsPerMm)}`;
  }

  private stroke(item: LineItem): void {
    const weight = decimal(item.weight);
    if (weight !== this.weight) this.operators.push(`${weight} w`);
    this.weight = weight;
    const dash = item.dash ? `[${item.dash.map((mm) => decimal(mm * pointsPerMm)).join(" ")}] 0 d` : "[] 0 d";
    if (dash !== this.dash) this.operators.push(dash);
    this.dash = dash;
  }

  private artifact(): void {
    if (!this.inArtifact) this.operators.push("/Artifact BMC");
    this.inArtifact = true;
  }

  private endArtifact(): void {
    if (this.inArtifact) this.operators.push("EMC");
    this.inArtifact = false;
  }

  private mark(tag: "P" | "Figure", marked: Marked): void {
    this.endArtifact();
    this.operators.push(`/${tag} <</MCID ${this.marked.length}>> BDC`);
    this.marked.push(marked);
  }
}

/**
 * The operators that show a line from where the text matrix stands. A stretch that its glyphs do not spell says what it
 * stands for.
 */
function showLine(line: ShapedLine, size: number, fonts: FontUse): readonly string[] {
  const operators: string[] = [];
  let array = "";
  let glyphs = "";
  let resource = "";
  let rise = "0";
  /** Where the reader's pen stands, in thousandths of an em, with all rounding so far. */
  let pen = 0;

  const endGlyphs = (): void => {
    if (glyphs) array += `<${glyphs}>`;
    glyphs = "";
  };
  const show = (): void => {
    endGlyphs();
    if (array) operators.push(`[${array}] TJ`);
    array = "";
  };

  for (const stretch of stretches(line)) {
    const spelt = stretch.every((cluster) => fonts.spells(cluster));
    if (!spelt) {
      show();
      const text = stretch.map((cluster) => cluster.text).join("");
      operators.push(`/Span <</ActualText <FEFF${hexText(text)}>>> BDC`);
    }
    for (const glyph of stretch.flatMap((cluster) => cluster.glyphs)) {
      const use = fonts.face(glyph.face);
      if (use.resource !== resource) {
        show();
        resource = use.resource;
        operators.push(`/${resource} ${decimal(size)} Tf`);
      }
      const wantedRise = decimal(glyph.y * size);
      if (wantedRise !== rise) {
        show();
        rise = wantedRise;
        operators.push(`${rise} Ts`);
      }
      const back = decimal(pen - glyph.x * 1000, 2);
      if (back !== "0") {
        endGlyphs();
        array += back;
        pen -= Number(back);
      }
      glyphs += hexGlyph(glyph.id);
      pen += use.width(glyph.id);
    }
    if (!spelt) {
      show();
      operators.push("EMC");
    }
  }
  show();
  // The rise outlives the text object.
  if (rise !== "0") operators.push("0 Ts");
  return operators;
}
