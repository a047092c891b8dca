import type { TileEdges, TilePuzzle } from "../../src/prove/tiles";
import { below, randomFrom, shuffled } from "./instances";

/**
 * A small puzzle of any sort: few texts so that tiles repeat, have symmetries and print alike when turned; relations that
 * are no classes; texts that fit themselves or nothing; half of them made from a solution, so that all verdicts occur.
 */
export function anySmall(seed: number, sizes: readonly (readonly [rows: number, columns: number])[]): TilePuzzle {
  const random = randomFrom(seed);
  const [rows, columns] = sizes[below(random, sizes.length)] ?? [2, 2];
  const texts = 2 + below(random, 7);
  const partners = Array.from({ length: texts }, (): number[] => []);
  const links = 1 + below(random, texts + 1);
  for (let i = 0; i < links; i++) {
    const a = below(random, texts);
    const b = below(random, texts);
    if (a === b && random() < 0.6) continue;
    partners[a]?.push(b);
    if (random() < 0.8) partners[b]?.push(a);
  }
  const blank = texts;
  partners.push([]);
  const decoy = () => (random() < 0.5 ? blank : below(random, texts + 1));
  const any = (): number => below(random, texts + 1);
  let tiles: TileEdges[] = Array.from({ length: rows * columns }, () => [any(), any(), any(), any()]);
  if (random() < 0.7) tiles = solved(random, rows, columns, partners, decoy);
  if (random() < 0.4)
    tiles = tiles.map((tile) => (random() < 0.4 ? (tiles[below(random, tiles.length)] ?? tile) : tile));
  const turn = random() < 0.3 ? "fixed" : "free";
  const cut = turn === "fixed" ? 0 : 4;
  tiles = shuffled(random, tiles).map((tile) => turnedBy(tile, below(random, cut)));
  const outer = random() < 0.15 ? [blank, below(random, texts), below(random, texts)] : undefined;
  return { rows, columns, tiles, partners, turn, frameUntold: random() < 0.35, ...(outer && { outer }) };
}

function turnedBy([n, e, s, w]: TileEdges, turn: number): TileEdges {
  return turn <= 0 ? [n, e, s, w] : turnedBy([w, n, e, s], turn - 1);
}

function solved(
  random: () => number,
  rows: number,
  columns: number,
  partners: readonly (readonly number[])[],
  decoy: () => number,
): TileEdges[] {
  const linked = partners.flatMap((others, text) => others.map((other) => [text, other] as const));
  const link = () => shuffled(random, linked[below(random, linked.length)] ?? [0, 0]);
  const tiles: TileEdges[] = [];
  for (let cell = 0; cell < rows * columns; cell++) tiles.push([decoy(), decoy(), decoy(), decoy()]);
  const change = (cell: number, side: number, text: number) => {
    const tile = [...(tiles[cell] ?? [0, 0, 0, 0])];
    tile[side] = text;
    const [n = 0, e = 0, s = 0, w = 0] = tile;
    tiles[cell] = [n, e, s, w];
  };
  for (let cell = 0; cell < tiles.length; cell++) {
    for (const [other, side] of [
      [cell + columns, 2],
      [cell + 1, 1],
    ] as const) {
      if (other >= tiles.length || (side === 1 && other % columns === 0)) continue;
      const [a = 0, b = 0] = link();
      change(cell, side, a);
      change(other, side ^ 2, b);
    }
  }
  return tiles;
}
