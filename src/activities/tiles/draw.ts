import type { SheetItem } from "../../page/sheet";
import type { Press } from "../contract";
import { below, setEdge } from "./layout";
import { quarter, type TileFace } from "./model";

/** A tile's place: top left corner and side in mm, quarter turns clockwise. */
export interface TilePlace {
  readonly x: number;
  readonly y: number;
  readonly side: number;
  readonly turn: number;
}

/** The words and pictures of one tile. */
export function drawFace(face: TileFace, { x, y, side, turn }: TilePlace, size: number, press: Press): SheetItem[] {
  return face.flatMap((edge, i): SheetItem[] => {
    if (!edge) return [];
    const facing = quarter(i + turn);
    const set = setEdge(edge, side, size, press);
    const items: SheetItem[] = set.lines.map(({ runs, depth }) => {
      const [tx, ty] = below(x, y, side, facing, depth);
      return {
        type: "text",
        runs,
        x: tx,
        y: ty,
        size,
        turn: facing,
        anchor: "middle",
        lang: edge.lang,
        source: edge.source,
      };
    });
    if (set.picture && edge.picture) {
      const { w, h, depth } = set.picture;
      const [cx, cy] = below(x, y, side, facing, depth);
      const { path, alt } = edge.picture;
      items.push({
        type: "picture",
        key: path,
        alt,
        x: cx - w / 2,
        y: cy - h / 2,
        w,
        h,
        turn: facing,
        source: edge.source,
      });
    }
    return items;
  });
}

/** Short lines of small print centred in the middle of a tile. */
export function drawCentre(
  lines: readonly string[],
  { x, y, side }: TilePlace,
  size: number,
  bold = false,
): SheetItem[] {
  const leading = size * 0.42;
  const first = y + side / 2 + size * 0.126 - ((lines.length - 1) * leading) / 2;
  return lines.map((text, i) => ({
    type: "text",
    runs: [bold ? { text, bold } : { text }],
    x: x + side / 2,
    y: first + i * leading,
    size,
    turn: 0,
    anchor: "middle",
    lang: "zxx",
  }));
}

/** A small filled triangle above the mark that shows which way is up. */
export function drawUp({ x, y, side }: TilePlace): SheetItem {
  const [cx, top] = [x + side / 2, y + side / 2 - 3.3];
  return {
    type: "shape",
    points: [
      [cx, top],
      [cx + 0.9, top + 1.3],
      [cx - 0.9, top + 1.3],
    ],
  };
}
