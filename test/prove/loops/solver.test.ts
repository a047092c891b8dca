import assert from "node:assert/strict";
import Logic from "logic-solver";
import { type LoopPuzzle, proveLoop } from "../../../src/prove/loops/loops";
import { anyCards, puzzleOf } from "./cards";

/**
 * Up to two full circles that look different, by a SAT solver (MiniSat): each card has one after it and one before it, each
 * smaller circle that comes out is forbidden, and so is every circle that looks like the first.
 */
function circlesBySat({ follows, look }: Required<LoopPuzzle>): number {
  const solver = new Logic.Solver();
  const size = follows.length;
  const arc = (card: number, next: number) => `${card}>${next}`;
  for (let card = 0; card < size; card++) {
    const before = follows.flatMap((list, other) => (list.includes(card) ? [arc(other, card)] : []));
    solver.require(Logic.exactlyOne(...(follows[card] ?? []).map((next) => arc(card, next))));
    solver.require(Logic.exactlyOne(...before));
  }
  const looks = new Set<string>();
  for (;;) {
    const arcs = solver.solve()?.getTrueVars();
    if (!arcs) return looks.size;
    const next = new Map(arcs.map((name) => name.split(">").map(Number) as [number, number]));
    const circles: number[][] = [];
    const seen = new Set<number>();
    for (let card = 0; card < size; card++) {
      if (seen.has(card)) continue;
      const circle: number[] = [];
      for (let at = card; !seen.has(at); at = next.get(at) ?? 0) {
        seen.add(at);
        circle.push(at);
      }
      circles.push(circle);
    }
    if (circles.length === 1) {
      const word = (circles[0] ?? []).map((card) => look[card]);
      looks.add(word.map((_, i) => [...word.slice(i), ...word.slice(0, i)].join()).sort()[0] ?? "");
      if (looks.size === 2) return 2;
    }
    for (const circle of circles) {
      const steps = circle.map((card, i) => arc(card, circle[(i + 1) % circle.length] ?? 0));
      solver.forbid(Logic.and(...steps));
    }
  }
}

describe("full circles against a SAT solver", () => {
  for (const [what, overlap, size] of [
    ["classes", 0, 9],
    ["answers shared", 1, 10],
    ["many answers shared", 3, 8],
  ] as const)
    it(`gives the same verdict (${what})`, () => {
      const verdicts = new Set<string>();
      for (let seed = 0; seed < 110; seed++) {
        const puzzle = puzzleOf(anyCards(9000 + seed, size, overlap));
        if (new Set(puzzle.look).size < puzzle.look.length - 1) continue;
        const { status } = proveLoop(puzzle).full;
        assert.equal(status, ["none", "one", "several"][circlesBySat(puzzle)], JSON.stringify(puzzle));
        verdicts.add(status);
      }
      assert.equal(verdicts.size, 3);
    });
});
