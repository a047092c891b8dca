import { type Assembly, proveTiles, type TilePuzzle } from "../../../src/prove/tiles";

/** Frames in which everything can be tried. */
export const sizes = [
  [1, 1],
  [1, 3],
  [2, 2],
  [2, 3],
  [3, 2],
] as const;

/** Whether two texts may lie against each other. */
export const mayMeet = ({ partners }: TilePuzzle, a: number, b: number) =>
  [partners[a]?.includes(b), partners[b]?.includes(a)].includes(true);

/** The text that a tile shows at a side when turned. */
export const shows = (puzzle: TilePuzzle, tile: number, turn: number, side: number) =>
  puzzle.tiles[tile]?.at((side - turn + 4) % 4) ?? -1;

/** The first assemblies that the prover finds. */
export function assemblies(puzzle: TilePuzzle): Assembly[] {
  const all: Assembly[] = [];
  proveTiles(puzzle, { cap: 40, budget: 20_000, found: (assembly) => all.push(assembly) });
  return all;
}
