import type { Difficulty } from "../prove/difficulty";

/**
 * How hard a deal is, in short: `no wrong neighbours`, or `each wrong neighbour tried once: 12 tiles laid in vain`. The one number
 * that levels are compared by, so that no gentle deal says more than its hard one unless a finding says so. See `difficultyOf`.
 */
export function difficultyText({ wrongNeighbours, detour, capped }: Difficulty): string {
  if (wrongNeighbours === 0) return "no wrong neighbours";
  const tiles = `${detour} ${detour === 1 ? "tile" : "tiles"} laid in vain`;
  return `each wrong neighbour tried once: ${capped ? "at least " : ""}${tiles}`;
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
