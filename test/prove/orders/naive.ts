import type { Order, OrderPuzzle } from "../../../src/prove/orders/orders";
import { below, randomFrom } from "../instances";

/** Every order of all of some numbers. */
export function permutations(size: number): number[][] {
  if (size === 0) return [[]];
  return permutations(size - 1).flatMap((row) =>
    Array.from({ length: size }, (_, place) => [...row.slice(0, place), size - 1, ...row.slice(place)]),
  );
}

export function keeps({ before }: OrderPuzzle, order: Order): boolean {
  return before.every(([a, b]) => order.indexOf(a) < order.indexOf(b));
}

export function reading(texts: readonly string[], order: Order): string {
  return order.map((strip) => texts[strip]).join("|");
}

/** Every accepted order of a few strips as it reads. */
export function readings(puzzle: OrderPuzzle): Set<string> {
  const orders = permutations(puzzle.texts.length).filter((order) => keeps(puzzle, order));
  return new Set(orders.map((order) => reading(puzzle.texts, order)));
}

/** A few strips with any pairs, now and then in a circle; texts recur or not. */
export function anyOrder(seed: number): OrderPuzzle {
  const random = randomFrom(seed);
  const size = below(random, 7);
  const kinds = random() < 0.4 ? 50 : 1 + below(random, size + 1);
  const texts = Array.from({ length: size }, (_, strip) => (kinds === 50 ? `${strip}` : `${below(random, kinds)}`));
  const density = random();
  const before: [number, number][] = [];
  const backwards = random() < 0.05;
  for (let a = 0; a < size; a++)
    for (let b = a + 1; b < size; b++) {
      if (random() >= density) continue;
      before.push(backwards && random() < 0.2 ? [b, a] : [a, b]);
    }
  return { texts, before };
}
