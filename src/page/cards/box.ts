import type { Box, Paper } from "../paper";

/** Clear of an edge on each side, mm: one number for all, or each its own. */
export type Padding =
  | number
  | { readonly top?: number; readonly right?: number; readonly bottom?: number; readonly left?: number };

/** A box less its padding; never negative. */
export function inset({ x, y, w, h }: Box, padding: Padding): Box {
  const {
    top = 0,
    right = 0,
    bottom = 0,
    left = 0,
  } = typeof padding === "number" ? { top: padding, right: padding, bottom: padding, left: padding } : padding;
  return { x: x + left, y: y + top, w: Math.max(0, w - left - right), h: Math.max(0, h - top - bottom) };
}

/** The same paper lying on its long side, or upright again. */
export function turned<P extends Pick<Paper, "width" | "height">>(paper: P): P {
  return { ...paper, width: paper.height, height: paper.width };
}
