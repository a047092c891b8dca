import type { SheetItem } from "../sheet";

/** A part of a paper that has been set to the width of the page and waits for its place. Lengths in mm. */
export interface Part {
  /** Space above, none at the top of a page. */
  readonly above: number;
  readonly height: number;
  /** The least height that may stand at the foot of a page: all of it, unless it can be split. */
  readonly least: number;
  /** Stays on the page of what follows. */
  readonly keepsNext?: boolean;
  /** Begins a page. */
  readonly breaks?: boolean;
  /** What it is made of; taken apart where the whole is higher than a page. */
  readonly parts?: readonly Part[];
  draw(x: number, y: number): readonly SheetItem[];
  /** Two parts, of which the first is at most `available` high; undefined where nothing may go ahead. */
  split?(available: number): readonly [Part, Part] | undefined;
}

/** Forgives the last digits of a floating-point sum, mm. */
export const slack = 1e-6;

/** Height of parts that stand one below the other from the top of a page or box. */
export function stackHeight(parts: readonly Part[]): number {
  return parts.reduce((height, part) => (height === 0 ? part.height : height + part.above + part.height), 0);
}

/** Draws parts one below the other. */
export function drawStack(parts: readonly Part[], x: number, y: number): SheetItem[] {
  const items: SheetItem[] = [];
  let at = 0;
  for (const part of parts) {
    if (at > 0) at += part.above;
    items.push(...part.draw(x, y + at));
    at += part.height;
  }
  return items;
}
