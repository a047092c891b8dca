import { plain } from "../../base/run";
import type { Box } from "../../page/paper";
import type { SheetItem } from "../../page/sheet";
import { capHeight } from "./layout";

/** What a sign takes of the ring's line, mm. */
const clearance = 1.6;
const ringWeight = 0.5;

/** Diameter in mm of a ring on which so many signs stand clear of each other. */
export function ringHeight(count: number): number {
  return Math.min(150, Math.max(62, count * 4.2)) + 12;
}

/** Signs round a circle, clockwise from the top, with a small arrow from each to the next; `centre` stands in the middle. */
export function drawRing(signs: readonly string[], centre: string, box: Box): SheetItem[] {
  const { length } = signs;
  const size = length > 40 ? 8 : length > 24 ? 10 : 13;
  const [cx, cy] = [box.x + box.w / 2, box.y + box.h / 2];
  const radius = Math.min(box.w, box.h) / 2 - 6;
  const at = (turn: number): readonly [number, number] => {
    const angle = 2 * Math.PI * turn - Math.PI / 2;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  };
  const text = (runs: string, x: number, y: number, points: number): SheetItem => ({
    type: "text",
    runs: [{ text: runs, bold: true }],
    x,
    y: y + capHeight(points) / 2,
    size: points,
    turn: 0,
    anchor: "middle",
    lang: "zxx",
  });
  const widest = Math.max(...signs.map((sign) => plain([{ text: sign }]).length));
  const half = (capHeight(size) * (0.55 + 0.4 * (widest - 1)) + clearance) / (2 * Math.PI * radius);
  return signs
    .flatMap((sign, i) => {
      const [x, y] = at(i / length);
      const [from, to] = [i / length + half, (i + 1) / length - half];
      return [text(sign, x, y, size), ...(to > from ? arrow(at, from, to, radius) : [])];
    })
    .concat(text(centre, cx, cy, 10));
}

/** A stretch of the ring as short lines, and a triangle at its end. Turns from 0 to 1, clockwise from the top. */
function arrow(at: (turn: number) => readonly [number, number], from: number, to: number, radius: number): SheetItem[] {
  const length = 2 * Math.PI * radius * (to - from);
  const steps = Math.max(1, Math.ceil(length / 2));
  const head = Math.min(2, length * 0.6) / (2 * Math.PI * radius);
  const lines = Array.from({ length: steps }, (_, i): SheetItem => {
    const [x1, y1] = at(from + ((to - head - from) * i) / steps);
    const [x2, y2] = at(from + ((to - head - from) * (i + 1)) / steps);
    return { type: "line", role: "rule", x1, y1, x2, y2, weight: ringWeight };
  });
  const [tip, foot] = [at(to), at(to - head)];
  const [dx, dy] = [tip[0] - foot[0], tip[1] - foot[1]];
  return [
    ...lines,
    {
      type: "shape",
      points: [tip, [foot[0] - dy * 0.4, foot[1] + dx * 0.4], [foot[0] + dy * 0.4, foot[1] - dx * 0.4]],
    },
  ];
}
