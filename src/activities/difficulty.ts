import type { Difficulty } from "../prove/difficulty";

/**
 * How hard a deal is, in short: `no wrong neighbours`, or `wrong neighbours: 6; a wrong start survives up to 3 more tiles`.
 * See `difficultyOf` for what the numbers count.
 */
export function difficultyText({ wrongNeighbours, survives, capped }: Difficulty): string {
  if (wrongNeighbours === 0) return "no wrong neighbours";
  return `wrong neighbours: ${wrongNeighbours}; a wrong start ${survival(survives, capped)}`;
}

function survival(tiles: number, capped: boolean): string {
  const more = `${tiles} more ${tiles === 1 ? "tile" : "tiles"}`;
  if (capped) return tiles === 0 ? "may survive some tiles" : `may survive ${more} and further ones`;
  return tiles === 0 ? "fails at once" : `survives up to ${more}`;
}

/** The same as a sentence. */
export function difficultySentence(difficulty: Difficulty): string {
  const text = difficultyText(difficulty);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
