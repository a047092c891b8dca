import type { Assembly, TileEdges, TilePuzzle, Turn } from "../../src/prove/tiles";

/** Numbers from 0 up to but not including 1, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export function below(random: () => number, n: number): number {
  return Math.floor(random() * n);
}

export function shuffled<T>(random: () => number, values: readonly T[]): T[] {
  const left = [...values];
  const result: T[] = [];
  while (left.length > 0) result.push(...left.splice(below(random, left.length), 1));
  return result;
}

export interface Recipe {
  readonly rows: number;
  readonly columns: number;
  readonly seed: number;
  /** How many inner edges show each pair, but for the last. */
  readonly repeat: number;
  /** Outer edges that show a text that is also inside; the others show texts that fit nothing. */
  readonly hits?: number;
  /** Outer edges that fit nothing all show the same text: a blank. */
  readonly blank?: boolean;
  readonly turn?: "free" | "fixed";
  readonly frameUntold?: boolean;
}

/** A puzzle as the classroom has it, made from a solution: pairs dealt over the inner edges, decoys round them. */
export function dealt(recipe: Recipe): { readonly puzzle: TilePuzzle; readonly intended: Assembly } {
  const { rows, columns, seed, repeat, hits = 0, blank = false, turn = "free" } = recipe;
  const random = randomFrom(seed);
  const inner = rows * (columns - 1) + columns * (rows - 1);
  const pairs = Math.ceil(inner / repeat);
  const edges = Array.from({ length: rows * columns }, (): [number, number, number, number] => [-1, -1, -1, -1]);
  const order = shuffled(
    random,
    Array.from({ length: inner }, (_, i) => i % pairs),
  );
  const put = (cell: number, side: number, text: number) => {
    const tile = edges[cell];
    if (tile) tile[side as Turn] = text;
  };
  const join = (a: number, sideA: number, b: number, sideB: number) => {
    const pair = order.pop() ?? 0;
    const flip = below(random, 2);
    put(a, sideA, 2 * pair + flip);
    put(b, sideB, 2 * pair + 1 - flip);
  };
  for (let cell = 0; cell < rows * columns; cell++) {
    if ((cell + 1) % columns !== 0) join(cell, 1, cell + 1, 3);
    if (cell + columns < rows * columns) join(cell, 2, cell + columns, 0);
  }
  const outer: [cell: number, side: number][] = [];
  edges.forEach((tile, cell) => {
    tile.forEach((text, side) => {
      if (text < 0) outer.push([cell, side]);
    });
  });
  shuffled(random, outer).forEach(([cell, side], i) => {
    put(cell, side, i < hits ? below(random, 2 * pairs) : 2 * pairs + (blank ? 0 : i));
  });
  const partners = Array.from({ length: 2 * pairs }, (_, text) => [text ^ 1]);

  const places = shuffled(
    random,
    edges.map((_, cell) => cell),
  );
  const tiles: TileEdges[] = [];
  const cells: { tile: number; turn: Turn }[] = [];
  places.forEach((cell, tile) => {
    const turned = turn === "free" ? below(random, 4) : 0;
    const shown = edges[cell] ?? [0, 0, 0, 0];
    tiles.push([0, 1, 2, 3].map((edge) => shown[((edge + turned) & 3) as Turn]) as unknown as TileEdges);
    cells[cell] = { tile, turn: turned as Turn };
  });
  const puzzle = { rows, columns, tiles, partners, turn, frameUntold: recipe.frameUntold ?? false };
  return { puzzle, intended: { rows, columns, cells } };
}
