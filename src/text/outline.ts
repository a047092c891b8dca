import type { Sfnt } from "./sfnt";

/*
 * Glyph outlines out of the `glyf` table, simple and composite, as exact quadratic paths.
 */

interface Point {
  readonly x: number;
  readonly y: number;
  /** On the curve; else a control point. */
  readonly on: boolean;
}

type Contour = readonly Point[];

/** Composites that nest deeper than any real font does are taken to be damaged. */
const deepest = 8;

// Flags of a simple glyph's points.
const ON_CURVE = 0x01;
const X_SHORT = 0x02;
const Y_SHORT = 0x04;
const REPEAT = 0x08;
const X_SAME_OR_POSITIVE = 0x10;
const Y_SAME_OR_POSITIVE = 0x20;

// Flags of a composite glyph's components.
const ARGS_ARE_WORDS = 0x0001;
const ARGS_ARE_OFFSETS = 0x0002;
const HAS_SCALE = 0x0008;
const MORE = 0x0020;
const HAS_TWO_SCALES = 0x0040;
const HAS_MATRIX = 0x0080;
const OFFSET_IS_SCALED = 0x0800;

export class Outlines {
  private readonly loca: DataView;
  private readonly glyf: DataView;
  private readonly long: boolean;

  /** Throws a RangeError where the font has no outlines of this kind. */
  constructor(
    font: Sfnt,
    private readonly glyphCount: number,
  ) {
    this.loca = font.table("loca");
    this.glyf = font.table("glyf");
    this.long = font.table("head").getInt16(50) === 1;
  }

  /** SVG path data in font units, y up; empty for a blank or unknown glyph. */
  path(glyph: number): string {
    return this.contours(glyph, 0).map(contourPath).join("");
  }

  /** Smallest box round the glyph's ink, [left, bottom, right, top] in font units; undefined for a blank. */
  box(glyph: number): readonly [number, number, number, number] | undefined {
    const at = this.locate(glyph);
    if (at === undefined) return undefined;
    const { glyf } = this;
    return [glyf.getInt16(at + 2), glyf.getInt16(at + 4), glyf.getInt16(at + 6), glyf.getInt16(at + 8)];
  }

  /** Offset in `glyf`; undefined for a blank. */
  private locate(glyph: number): number | undefined {
    if (glyph < 0 || glyph >= this.glyphCount) return undefined;
    const read = (index: number) => (this.long ? this.loca.getUint32(index * 4) : this.loca.getUint16(index * 2) * 2);
    const start = read(glyph);
    return read(glyph + 1) > start ? start : undefined;
  }

  private contours(glyph: number, depth: number): readonly Contour[] {
    const at = this.locate(glyph);
    if (at === undefined || depth > deepest) return [];
    const count = this.glyf.getInt16(at);
    return count >= 0 ? this.simple(at + 10, count) : this.composite(at + 10, depth);
  }

  private simple(start: number, contourCount: number): readonly Contour[] {
    const { glyf } = this;
    const ends: number[] = [];
    for (let i = 0; i < contourCount; i++) ends.push(glyf.getUint16(start + 2 * i));
    const pointCount = (ends.at(-1) ?? -1) + 1;
    let at = start + 2 * contourCount;
    at += 2 + glyf.getUint16(at);

    const flags: number[] = [];
    while (flags.length < pointCount) {
      const flag = glyf.getUint8(at++);
      const times = flag & REPEAT ? glyf.getUint8(at++) + 1 : 1;
      for (let i = 0; i < times; i++) flags.push(flag);
    }

    const coordinates = (short: number, sameOrPositive: number): number[] => {
      let value = 0;
      return flags.slice(0, pointCount).map((flag) => {
        if (flag & short) {
          const step = glyf.getUint8(at++);
          value += flag & sameOrPositive ? step : -step;
        } else if (!(flag & sameOrPositive)) {
          value += glyf.getInt16(at);
          at += 2;
        }
        return value;
      });
    };
    const xs = coordinates(X_SHORT, X_SAME_OR_POSITIVE);
    const ys = coordinates(Y_SHORT, Y_SAME_OR_POSITIVE);

    const points = xs.map((x, i): Point => ({ x, y: ys[i] ?? 0, on: ((flags[i] ?? 0) & ON_CURVE) !== 0 }));
    return ends.map((end, i) => points.slice(i === 0 ? 0 : (ends[i - 1] ?? -1) + 1, end + 1));
  }

  private composite(start: number, depth: number): readonly Contour[] {
    const { glyf } = this;
    const all: Contour[] = [];
    let at = start;
    for (;;) {
      const flags = glyf.getUint16(at);
      const component = this.contours(glyf.getUint16(at + 2), depth + 1);
      at += 4;
      const words = (flags & ARGS_ARE_WORDS) !== 0;
      const signed = (flags & ARGS_ARE_OFFSETS) !== 0;
      const argument = (offset: number): number => {
        if (words) return signed ? glyf.getInt16(offset) : glyf.getUint16(offset);
        return signed ? glyf.getInt8(offset) : glyf.getUint8(offset);
      };
      const first = argument(at);
      const second = argument(at + (words ? 2 : 1));
      at += words ? 4 : 2;

      const fraction = (index: number): number => glyf.getInt16(at + 2 * index) / 16384;
      let [a, b, c, d] = [1, 0, 0, 1];
      if (flags & HAS_SCALE) {
        a = d = fraction(0);
        at += 2;
      } else if (flags & HAS_TWO_SCALES) {
        [a, d] = [fraction(0), fraction(1)];
        at += 4;
      } else if (flags & HAS_MATRIX) {
        [a, b, c, d] = [fraction(0), fraction(1), fraction(2), fraction(3)];
        at += 8;
      }

      const turned = component.map((contour) =>
        contour.map(({ x, y, on }): Point => ({ x: a * x + c * y, y: b * x + d * y, on })),
      );
      let [dx, dy] = [first, second];
      if (!signed) {
        // The arguments are points to lay on each other: one of what stands already, one of the component.
        const anchor = all.flat()[first];
        const own = turned.flat()[second];
        [dx, dy] = anchor && own ? [anchor.x - own.x, anchor.y - own.y] : [0, 0];
      } else if (flags & OFFSET_IS_SCALED) {
        [dx, dy] = [dx * Math.hypot(a, b), dy * Math.hypot(c, d)];
      }
      for (const contour of turned) all.push(contour.map(({ x, y, on }) => ({ x: x + dx, y: y + dy, on })));
      if (!(flags & MORE)) return all;
    }
  }
}

function between(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, on: true };
}

function number(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}

/** Between two control points the curve passes through their middle, which the font leaves out. */
function contourPath(contour: Contour): string {
  const [first] = contour;
  const last = contour.at(-1);
  if (!first || !last || contour.length < 2) return "";
  const start = first.on ? first : last.on ? last : between(first, last);
  let path = `M${number(start.x)} ${number(start.y)}`;
  let control: Point | undefined;
  const curve = (to: Point): string =>
    control
      ? `Q${number(control.x)} ${number(control.y)} ${number(to.x)} ${number(to.y)}`
      : `L${number(to.x)} ${number(to.y)}`;
  for (const point of first.on ? contour.slice(1) : contour) {
    if (point.on) {
      path += curve(point);
      control = undefined;
    } else {
      if (control) path += curve(between(control, point));
      control = point;
    }
  }
  if (control) path += curve(start);
  return `${path}Z`;
}
