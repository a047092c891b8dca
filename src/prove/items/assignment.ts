import type { Proof } from "../proof";
import { anyCycle } from "./components";
import { maximumMatching } from "./matching";

/** For each clue its target. */
export type Assignment = readonly number[];

/** Which targets each clue fits. Several lists may name a target; targets that no clue means may be there too. */
export interface AssignmentPuzzle {
  readonly fits: readonly (readonly number[])[];
  readonly targets: number;
}

/** Clues that do not by themselves say which target is meant: a caller calls them one at a time. */
export function unclearClues({
  fits,
}: AssignmentPuzzle): { readonly clue: number; readonly targets: readonly number[] }[] {
  return fits.flatMap((list, clue) => {
    const targets = [...new Set(list)];
    return targets.length === 1 ? [] : [{ clue, targets }];
  });
}

/**
 * Whether there is one way to give each clue a target of its own, as on a sheet where all are seen. A second one exists iff
 * clues can change targets in a circle, or one of them can take a target that is left over.
 *
 * @param intended the targets that are meant; the second one shown differs from it.
 * @throws RangeError where a clue fits a target that is not there.
 */
export function proveAssignment(puzzle: AssignmentPuzzle, intended?: Assignment): Proof<Assignment> {
  const { targets } = puzzle;
  const fits = puzzle.fits.map((list) => [...new Set(list)]);
  if (fits.flat().some((target) => !Number.isInteger(target) || target < 0 || target >= targets))
    throw new RangeError("a clue fits a target that is not there");
  const holds = intended && isAssignment(puzzle, intended);
  const matching = maximumMatching(fits, targets, holds ? intended : undefined);
  const known = { capped: false, nodes: 0, by: "certificate" } as const;
  if (matching.size < fits.length) return { ...known, status: "none", count: 0 };
  const first = [...matching.ofLeft];
  const second = otherAssignment(fits, first, matching.ofRight);
  if (!second) return { ...known, status: "one", count: 1 };
  return { status: "several", count: 2, capped: true, nodes: 0, by: "witness", second };
}

/** Whether each clue gets a target that it fits, and no two the same. */
export function isAssignment({ fits }: AssignmentPuzzle, assignment: Assignment): boolean {
  const takesOne = assignment.every((target, clue) => fits[clue]?.includes(target));
  return takesOne && assignment.length === fits.length && new Set(assignment).size === assignment.length;
}

function otherAssignment(
  fits: readonly (readonly number[])[],
  first: Assignment,
  holderOf: Int32Array,
): Assignment | undefined {
  for (const [clue, list] of fits.entries()) {
    const free = list.find((target) => holderOf[target] === -1);
    if (free !== undefined) return first.with(clue, free);
  }
  const wishes = fits.map((list, clue) =>
    list.map((target) => holderOf[target] ?? -1).filter((holder) => holder !== clue),
  );
  const circle = anyCycle(wishes);
  if (!circle) return undefined;
  const second = [...first];
  circle.forEach((clue, i) => {
    second[clue] = first[circle[(i + 1) % circle.length] ?? -1] ?? -1;
  });
  return second;
}
