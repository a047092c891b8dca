import assert from "node:assert/strict";
import fc from "fast-check";
import {
  type Assignment,
  type AssignmentPuzzle,
  isAssignment,
  proveAssignment,
  shortageIn,
} from "../../../src/prove/items/items";
import { openCovers } from "./cover";
import { drawn, forAll, verdict } from "./runs";

/** Clues and targets, as many or not, with any number of targets that a clue fits; a full assignment in most. */
const puzzles: fc.Arbitrary<AssignmentPuzzle> = fc
  .record({
    targets: fc.integer({ min: 1, max: 7 }),
    clues: fc.array(fc.array(fc.nat(6), { maxLength: 3 }), { maxLength: 7, size: "max" }),
    meant: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ targets, clues, meant }) => ({
    targets,
    fits: clues.map((list, clue) => [
      ...list.map((target) => target % targets),
      ...(meant > 0 && clue < targets ? [targets - 1 - clue] : []),
    ]),
  }));

const kinds = ["one", "several", "none", "none, as many targets as clues", "one, targets left over"];

function holds(puzzle: AssignmentPuzzle, known: readonly Assignment[]): string[] {
  const { fits, targets } = puzzle;
  for (const intended of [undefined, known[0], known.at(-1)]) {
    const { status, count, capped, second } = proveAssignment(puzzle, intended);
    assert.deepEqual([status, count, capped], [verdict(known.length), Math.min(2, known.length), known.length > 1]);
    assert.equal(second !== undefined, known.length > 1);
    if (second) assert.ok(known.some((each) => each.join() === second.join()));
    if (second && intended) assert.notDeepEqual(second, intended);
  }
  for (const each of known.slice(0, 3)) assert.ok(isAssignment(puzzle, each));
  const shortage = shortageIn(fits, targets);
  assert.equal(shortage !== undefined, known.length === 0);
  if (shortage) {
    const named = new Set(shortage.lefts.flatMap((clue) => fits[clue] ?? []));
    assert.deepEqual([...named].sort(), [...shortage.rights].sort());
    assert.ok(shortage.lefts.length > named.size);
  }
  const status = verdict(known.length);
  const more = fits.length < targets && fits.length > 0 ? [`${status}, targets left over`] : [];
  return [status, ...more, ...(fits.length <= targets ? [`${status}, as many targets as clues`] : [])];
}

describe(`the prover of clues and targets against others (${drawn})`, function () {
  this.timeout(0);

  it("agrees with an exact cover in verdict and number", async () => {
    const covers = await openCovers();
    forAll(puzzles, kinds, (puzzle) => {
      const options = puzzle.fits.flatMap((list, clue) =>
        [...new Set(list)].map((target) => ({
          data: [clue, target] as const,
          primary: [clue],
          secondary: [`target ${target}`],
        })),
      );
      const found = covers(
        options,
        puzzle.fits.map((_, clue) => clue),
      );
      return holds(
        puzzle,
        found.map((cover) => [...cover].sort(([a], [b]) => a - b).map(([, target]) => target)),
      );
    });
  });

  it("agrees with trying everything", () => {
    forAll(puzzles, kinds, (puzzle) => {
      const found: number[][] = [];
      const give = (row: readonly number[]): void => {
        if (row.length === puzzle.fits.length) found.push([...row]);
        else
          for (let target = 0; target < puzzle.targets; target++)
            if (puzzle.fits[row.length]?.includes(target) && !row.includes(target)) give([...row, target]);
      };
      give([]);
      return holds(puzzle, found);
    });
  });
});
