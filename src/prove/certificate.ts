import { framesOf, isAssembly, turned, turnOf } from "./assembly";
import { relationOf } from "./relation";
import type { Assembly, TilePuzzle, Turn } from "./tiles";

/** A side of a tile, numbered 4 × tile + edge. */
type SideNumber = number;

/**
 * Settles in linear time the puzzles in which every side has at most one *mate*: a side of another tile that it fits.
 * Returns the only assembly (as told, up to turning the whole grid), "none" where there is provably none, or undefined
 * where this argument does not settle it.
 *
 * It claims something exactly when every side has at most one mate, and walking from mate to mate gives every tile that
 * it reaches one place and turn.
 *
 * Why that is enough. In any assembly, in whatever frame (1 × n too), an inner side lies against one of its mates, so
 * against the only one; and inner sides connect all tiles. So if the first tile is laid, all others follow, each against
 * the mate of a side already laid. The walk lays every tile against every mate it has. Hence
 * - where it does not reach a tile, there is no assembly;
 * - where it reaches all and never wants a tile in two places, every assembly is the one figure that it lays, up to turning
 *   the whole grid (where tiles keep their turn, outright): there is one if the figure fills a frame that counts, else none;
 * - where it wants a tile in two places, mates would have to lie apart, facing out. How, this argument does not say.
 *
 * In particular with 2 × (rows + columns) sides without a mate, all others unique pairs: the teacher's usual puzzle. A told
 * frame is not needed. Tiles that print alike do no harm: what is unique tile by tile is unique to the eye. Texts that
 * alone may face out only narrow the choice: the figure is checked against them.
 */
export function certificate(puzzle: TilePuzzle): Assembly | "none" | undefined {
  const mates = soleMates(puzzle);
  const figure = mates && walk(puzzle.tiles.length, mates);
  if (figure === undefined || figure === "none") return figure;
  const lies = framesOf(puzzle).some(([rows, columns]) => rows === figure.rows && columns === figure.columns);
  const assembly = lies || puzzle.turn === "fixed" ? figure : turned(figure, 1);
  return isAssembly(puzzle, assembly) ? assembly : "none";
}

/** For every side its one mate; undefined where some side has two or more. */
function soleMates(puzzle: TilePuzzle): (SideNumber | undefined)[] | undefined {
  const standing = new Map<number, SideNumber[]>();
  puzzle.tiles.forEach((edges, tile) => {
    edges.forEach((text, edge) => {
      const sides = standing.get(text) ?? [];
      sides.push(4 * tile + edge);
      standing.set(text, sides);
    });
  });
  // A tile has four sides, so that of six fitting sides two are elsewhere: there is no need to look at more.
  const enough = 6;
  const mates: (SideNumber | undefined)[] = [];
  for (const [text, partners] of relationOf(puzzle)) {
    const fitting: SideNumber[] = [];
    for (const partner of partners) {
      if (fitting.length < enough) fitting.push(...(standing.get(partner) ?? []).slice(0, enough));
    }
    for (const side of standing.get(text) ?? []) {
      const elsewhere = fitting.filter((other) => other >> 2 !== side >> 2);
      if (elsewhere.length > 1) return undefined;
      mates[side] = elsewhere[0];
    }
  }
  return mates;
}

interface Place {
  readonly tile: number;
  readonly turn: Turn;
  readonly row: number;
  readonly column: number;
}

/** Lays the first tile in turn 0 and all others against their mates; undefined where a tile would be in two places. */
function walk(count: number, mates: readonly (SideNumber | undefined)[]): Assembly | "none" | undefined {
  const placed = new Map<number, Place>([[0, { tile: 0, turn: 0, row: 0, column: 0 }]]);
  for (const { tile, turn, row, column } of placed.values()) {
    for (let edge = 0; edge < 4; edge++) {
      const mate = mates[4 * tile + edge];
      if (mate === undefined) continue;
      const side = turnOf(edge + turn);
      const next: Place = {
        tile: mate >> 2,
        turn: turnOf(side + 2 - mate),
        row: row + (side === 2 ? 1 : side === 0 ? -1 : 0),
        column: column + (side === 1 ? 1 : side === 3 ? -1 : 0),
      };
      const there = placed.get(next.tile);
      if (!there) placed.set(next.tile, next);
      else if (there.turn !== next.turn || there.row !== next.row || there.column !== next.column) return undefined;
    }
  }
  return placed.size < count ? "none" : boxed([...placed.values()]);
}

/** The places as an assembly, if they fill a rectangle. */
function boxed(places: readonly Place[]): Assembly | "none" {
  const top = Math.min(...places.map((place) => place.row));
  const left = Math.min(...places.map((place) => place.column));
  const rows = Math.max(...places.map((place) => place.row)) - top + 1;
  const columns = Math.max(...places.map((place) => place.column)) - left + 1;
  if (rows * columns !== places.length) return "none";
  const cells: { tile: number; turn: Turn }[] = [];
  for (const { tile, turn, row, column } of places) cells[(row - top) * columns + column - left] = { tile, turn };
  return Object.keys(cells).length === places.length ? { rows, columns, cells } : "none";
}
