import type { OrderPuzzle } from "./orders";

/**
 * A story as steps that follow each other: one strip, or several that may stand in any order among themselves.
 *
 * @param texts one for each strip; the steps name strips by their index, each once.
 */
export function storyOf(steps: readonly (number | readonly number[])[], texts: readonly string[]): OrderPuzzle {
  const groups = steps.map((step) => (typeof step === "number" ? [step] : step)).filter((group) => group.length > 0);
  return {
    texts,
    steps: groups,
    // Of large steps these are many, and nobody asks for them.
    get before() {
      return groups.flatMap((group, i) =>
        (groups[i + 1] ?? []).flatMap((later) => group.map((earlier): [number, number] => [earlier, later])),
      );
    },
  };
}
