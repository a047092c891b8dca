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

/** How hard several deals are, level by level: `tiles laid in vain: gentle 7, hard 12–15`; undefined where none is measured. */
export function difficultiesText(
  deals: readonly { readonly level: string; readonly difficulty?: Difficulty }[],
): string | undefined {
  const measured = deals.flatMap(({ level, difficulty }) => (difficulty ? [{ level, difficulty }] : []));
  const [first, ...others] = measured;
  if (!first) return undefined;
  if (others.length === 0 || measured.every(({ difficulty }) => difficulty.wrongNeighbours === 0))
    return difficultyText(first.difficulty);
  const levels = [...new Set(measured.map(({ level }) => level))];
  const spans = levels.map((level) => {
    const own = measured.filter((each) => each.level === level).map(({ difficulty }) => difficulty);
    const [least, most] = [Math.min(...own.map(({ detour }) => detour)), Math.max(...own.map(({ detour }) => detour))];
    const more = own.some(({ capped }) => capped) ? " and more" : "";
    return `${levels.length > 1 ? `${level} ` : ""}${least === most ? least : `${least}–${most}`}${more}`;
  });
  return `tiles laid in vain: ${spans.join(", ")}`;
}
