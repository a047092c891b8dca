import type { Box } from "../paper";
import type { LineItem } from "../sheet";

/*
 * Equal cards in a grid that share their cut lines, over as many pages as needed. Lengths in mm.
 */

/** A card at its place; `card` is its number in its set and `page` the page's, both from 0. */
export interface PlacedCard extends Box {
  readonly card: number;
  readonly page: number;
}

export interface CardGrid {
  readonly columns: number;
  readonly rows: number;
  readonly pages: number;
  readonly w: number;
  readonly h: number;
}

const slack = 1e-6;

/** How many cards of a size fit a box, and the pages for `count` of them; undefined where not one fits. */
export function packGrid(box: Box, size: Pick<Box, "w" | "h">, count: number): CardGrid | undefined {
  const columns = Math.floor(box.w / size.w + slack);
  const rows = Math.floor(box.h / size.h + slack);
  if (columns < 1 || rows < 1) return undefined;
  return { columns, rows, pages: Math.ceil(count / (columns * rows)), w: size.w, h: size.h };
}

/** Strips as wide as the box. */
export function packStrips(box: Box, height: number, count: number): CardGrid | undefined {
  return packGrid(box, { w: box.w, h: height }, count);
}

export interface CardLimits {
  readonly minW: number;
  readonly minH: number;
  readonly maxW: number;
  readonly maxH: number;
  /** Width divided by height: a number, or least and most. */
  readonly ratio?: number | readonly [number, number];
}

/** Sizes of cards are whole multiples of this, mm. */
const step = 0.5;

/**
 * Grids worth choosing from: the largest cards (by area) for each number of pages, fewest pages first. Of equally large ones the
 * grid that takes the fewest cuts.
 */
export function largestCards(box: Box, count: number, limits: CardLimits): CardGrid[] {
  const best = new Map<number, CardGrid>();
  for (let columns = 1; columns * limits.minW <= box.w + slack; columns++) {
    for (let rows = 1; rows * limits.minH <= box.h + slack; rows++) {
      const size = largestIn(box.w / columns, box.h / rows, limits);
      if (!size) continue;
      const grid = { columns, rows, pages: Math.ceil(count / (columns * rows)), ...size };
      const known = best.get(grid.pages);
      const more = known ? area(grid) - area(known) : Number.POSITIVE_INFINITY;
      if (!known || more > slack || (more > -slack && cutsOn(grid, count) < cutsOn(known, count)))
        best.set(grid.pages, grid);
    }
  }
  const byPages = [...best.values()].sort((a, b) => a.pages - b.pages);
  // More pages are worth it only for larger cards.
  return byPages.filter((grid, i) => byPages.slice(0, i).every((fewer) => area(fewer) < area(grid) - slack));
}

/** Straight cuts that the first page of so many cards takes. */
function cutsOn({ columns, rows }: CardGrid, count: number): number {
  const across = Math.min(columns, count);
  return across + 1 + Math.min(rows, Math.ceil(count / across)) + 1;
}

function area({ w, h }: Pick<Box, "w" | "h">): number {
  return w * h;
}

function largestIn(width: number, height: number, limits: CardLimits): { w: number; h: number } | undefined {
  const [least, most] =
    typeof limits.ratio === "number" ? [limits.ratio, limits.ratio] : (limits.ratio ?? [0, Number.POSITIVE_INFINITY]);
  let w = Math.min(width, limits.maxW, Math.min(height, limits.maxH) * most);
  let h = Math.min(height, limits.maxH, w / least);
  // One ratio is kept exactly: only the width is rounded.
  w = Math.floor(w / step + slack) * step;
  h = least === most ? w / least : Math.floor(Math.min(h, w / least) / step + slack) * step;
  if (least !== most) w = Math.min(w, Math.floor((h * most) / step + slack) * step);
  return w >= limits.minW - slack && h >= limits.minH - slack && h > 0 ? { w, h } : undefined;
}

/** Row by row from the box's top, centred across; a row that is not full keeps the places of the others. */
export function placeGrid(box: Box, grid: CardGrid, count: number): PlacedCard[] {
  const { columns, rows, w, h } = grid;
  const perPage = columns * rows;
  const left = box.x + (box.w - Math.min(columns, count) * w) / 2;
  return Array.from({ length: count }, (_, card) => {
    const onPage = card % perPage;
    const [row, column] = [Math.floor(onPage / columns), onPage % columns];
    return { card, page: Math.floor(card / perPage), x: left + column * w, y: box.y + row * h, w, h };
  });
}

/** The first places of a set by page; sets with fewer cards leave the last places free. */
export function placesByPage(places: readonly PlacedCard[], count: number): PlacedCard[][] {
  const own = places.filter(({ card }) => card < count);
  const pages = Math.max(0, ...own.map(({ page }) => page + 1));
  return Array.from({ length: pages }, (_, page) => own.filter((place) => place.page === page));
}

/** Cut lines round the cards of one page: an edge that two share once, each line as long as it can run. 0.25 pt. */
export function cardCuts(cards: readonly Box[]): LineItem[] {
  const across = new Edges();
  const down = new Edges();
  for (const { x, y, w, h } of cards) {
    across.add(y, x, x + w);
    across.add(y + h, x, x + w);
    down.add(x, y, y + h);
    down.add(x + w, y, y + h);
  }
  const cut = { type: "line", role: "cut", weight: 0.25 } as const;
  return [
    ...across.joined().map(([y, x1, x2]) => ({ ...cut, x1, y1: y, x2, y2: y })),
    ...down.joined().map(([x, y1, y2]) => ({ ...cut, x1: x, y1, x2: x, y2 })),
  ];
}

/** Stretches of parallel lines, by where the line runs. Places that differ by less than a micrometre are one. */
class Edges {
  private readonly lines = new Map<
    number,
    { readonly at: number; readonly stretches: (readonly [number, number])[] }
  >();

  add(at: number, from: number, to: number): void {
    const key = Math.round(at * 1000);
    const line = this.lines.get(key) ?? { at, stretches: [] };
    line.stretches.push([from, to]);
    this.lines.set(key, line);
  }

  /** [where, from, to], from the top or left; stretches that touch or overlap are one. */
  joined(): (readonly [number, number, number])[] {
    return [...this.lines.values()]
      .sort((a, b) => a.at - b.at)
      .flatMap(({ at, stretches }) => joinStretches(stretches, 1e-3).map(([from, to]) => [at, from, to] as const));
  }
}

/** Stretches of one line in order, those with at most `gap` between them made one. */
export function joinStretches(stretches: readonly (readonly [number, number])[], gap: number): [number, number][] {
  const joined: [number, number][] = [];
  for (const [from, to] of [...stretches].sort(([a], [b]) => a - b)) {
    const last = joined.at(-1);
    if (last && from <= last[1] + gap) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}
