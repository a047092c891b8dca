import type { Proof } from "../proof";
import type { Order, OrderPuzzle } from "./orders";

/*
 * Strips in steps that follow each other, those of a step in any order. How a row reads says how each step reads, so that steps
 * are told apart however their strips print: nothing has to be searched, and thousands of strips take no longer each than a few.
 */

export type Stepped = Required<Pick<OrderPuzzle, "texts" | "steps">>;

/** Whether the strips of a puzzle are known to follow each other in steps. */
export function areStepped(puzzle: OrderPuzzle): puzzle is OrderPuzzle & Stepped {
  return puzzle.steps !== undefined;
}

/** Whether strips have one order that is accepted; the second one changes two unlike strips that lie in one step. */
export function proveSteps({ texts, steps }: Stepped, intended: Order = steps.flat()): Proof<Order> {
  let at = 0;
  for (const step of steps) {
    const look = texts[step[0] ?? -1];
    if (step.some((strip) => texts[strip] !== look)) {
      const second = [...(acceptsSteps({ texts, steps }, intended) ? intended : steps.flat())];
      const last = second.findIndex((strip, place) => place > at && texts[strip] !== texts[second[at] ?? -1]);
      [second[at], second[last]] = [second[last] ?? -1, second[at] ?? -1];
      return { status: "several", count: 2, capped: true, nodes: at + 1, by: "witness", second };
    }
    at += step.length;
  }
  return { status: "one", count: 1, capped: false, nodes: at, by: "certificate" };
}

/** Whether strips as they are laid read like an accepted order: each step's part of the row has the texts of that step. */
export function acceptsSteps({ texts, steps }: Stepped, laid: Order): boolean {
  if (laid.length !== texts.length || new Set(laid).size !== laid.length) return false;
  if (laid.some((strip) => texts[strip] === undefined)) return false;
  let at = 0;
  return steps.every((step) => {
    const own = laid.slice(at, at + step.length);
    at += step.length;
    return sorted(own, texts) === sorted(step, texts);
  });
}

function sorted(strips: readonly number[], texts: readonly string[]): string {
  return JSON.stringify(strips.map((strip) => texts[strip] ?? "").sort());
}

/** How many orders are accepted that read differently, exactly. */
export function countSteps({ texts, steps }: Stepped): bigint {
  let count = 1n;
  for (const step of steps) {
    const met = new Map<string | undefined, bigint>();
    let placed = 0n;
    for (const strip of step) {
      const text = texts[strip];
      const like = (met.get(text) ?? 0n) + 1n;
      met.set(text, like);
      // Ways to put one more strip among those of its step, of which some read like it: each quotient is whole.
      count = (count * ++placed) / like;
    }
  }
  return count;
}
