import assert from "node:assert/strict";
import fc from "fast-check";
import { countCircles, type LoopPuzzle, proveLoop } from "../../../src/prove/loops/loops";
import { countArrangements } from "../loops/arrangements";
import { puzzleOf } from "../loops/cards";
import { arrangements, fewestEarly, fullCircles } from "../loops/naive";
import { circles, readingOf } from "./circles";
import { type Covers, openCovers } from "./cover";
import { drawn, forAll, rarely, verdict } from "./runs";

const text = fc.nat(5);

/** Cards with texts, in a circle or not: texts that recur, cards that print alike, answers to several prompts. */
const worded: fc.Arbitrary<LoopPuzzle> = fc
  .record({
    answers: fc.array(text, { minLength: 1, maxLength: 7, size: "max" }),
    /** Prompts where they are not those of a circle. */
    loose: rarely(fc.array(text, { minLength: 7, maxLength: 7 })),
    further: fc.array(fc.tuple(text, text), { maxLength: 5, size: "max" }),
    plain: fc.boolean(),
    toldApart: fc.boolean(),
  })
  .map(({ answers, loose, further, plain, toldApart }) => {
    const prompts = loose ? loose.slice(0, answers.length) : [...answers.slice(1), ...answers.slice(0, 1)];
    const more = (prompt: number) => further.flatMap(([other, answer]) => (other === prompt ? [answer] : []));
    const answered = Array.from({ length: 6 }, (_, prompt) => (plain ? [prompt] : [prompt, ...more(prompt)]));
    const { follows, look } = puzzleOf({ prompts, answers, answered });
    return toldApart ? { follows } : { follows, look };
  });

/** Any card after any other, in a circle or not. */
const wild: fc.Arbitrary<LoopPuzzle> = fc
  .record({
    size: fc.integer({ min: 1, max: 7 }),
    arcs: fc.array(fc.tuple(fc.nat(6), fc.nat(6)), { minLength: 4, maxLength: 20, size: "max" }),
    inCircle: fc.boolean(),
  })
  .map(({ size, arcs, inCircle }) => ({
    follows: Array.from({ length: size }, (_, card) => {
      const meant = inCircle ? [(card + 1) % size] : [];
      return [...meant, ...arcs.flatMap(([from, to]) => (from % size === card ? [to % size] : []))];
    }),
  }));

const puzzles = fc.oneof({ weight: 3, arbitrary: worded }, { weight: 1, arbitrary: wild });

/** In how many ways each card can be given one after it that is after no other. */
function matchings(covers: Covers, { follows }: LoopPuzzle): number {
  const options = follows.flatMap((list, card) =>
    [...new Set(list)].map((next) => ({ data: card, primary: [`after ${card}`, `before ${next}`] })),
  );
  const needed = follows.flatMap((_, card) => [`after ${card}`, `before ${card}`]);
  return covers(options, needed).length;
}

const everything = { cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY };
const kinds = ["one", "several", "none", "one, closes early", "several, closes early", "search", "classes", "shortage"];

/** What must hold when a puzzle has these full circles, by how they read, and so many arrangements that match everywhere. */
function holds(puzzle: LoopPuzzle, known: ReadonlySet<string>, fewest: number | undefined, ways: number): string[] {
  const { full, smaller, shortage } = proveLoop(puzzle, everything);
  assert.deepEqual([full.count, full.status, full.capped], [known.size, verdict(known.size), false]);
  assert.equal(smaller?.length, fewest);
  assert.equal(countArrangements(puzzle), BigInt(ways));
  const byClasses = countCircles(puzzle);
  if (byClasses !== undefined) assert.equal(byClasses, BigInt(known.size));
  const first = proveLoop(puzzle).full;
  assert.deepEqual([first.status, first.second !== undefined], [verdict(known.size), known.size > 1]);
  if (first.second) assert.ok(known.has(readingOf(puzzle.look, first.second)));
  const closes = fewest !== undefined ? [`${full.status}, closes early`] : [];
  return [
    full.status,
    full.by,
    ...closes,
    ...(byClasses === undefined ? [] : ["classes"]),
    ...(shortage ? ["shortage"] : []),
  ];
}

describe(`the prover of circles against others (${drawn})`, function () {
  this.timeout(0);

  it("agrees with an exact cover in verdict and number, on early closes and on arrangements", async () => {
    const covers = await openCovers();
    forAll(puzzles, kinds, (puzzle) => {
      const size = puzzle.follows.length;
      const known = new Set(circles(covers, puzzle, size).map((circle) => readingOf(puzzle.look, circle)));
      const fewest = [...puzzle.follows.keys()].find((i) => i > 0 && circles(covers, puzzle, i, 1).length > 0);
      return holds(puzzle, known, fewest, matchings(covers, puzzle));
    });
  });

  it("agrees with trying everything", () => {
    forAll(puzzles, kinds, (puzzle) => {
      // A list may name a card more than once, which says nothing more.
      const once = { ...puzzle, follows: puzzle.follows.map((list) => [...new Set(list)]) };
      return holds(puzzle, fullCircles(once), fewestEarly(once), arrangements(once));
    });
  });
});
