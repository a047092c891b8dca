import type { TilePuzzle } from "./tiles";

/** For every text that stands on a tile, the texts on tiles that it fits, each once. Symmetric, as puzzles are read. */
export function relationOf(puzzle: TilePuzzle): ReadonlyMap<number, ReadonlySet<number>> {
  const relation = new Map<number, Set<number>>();
  for (const edges of puzzle.tiles) for (const text of edges) relation.set(text, new Set());
  for (const [text, partners] of relation) {
    for (const other of puzzle.partners[text] ?? []) {
      const others = relation.get(other);
      if (!others) continue;
      partners.add(other);
      others.add(text);
    }
  }
  return relation;
}
