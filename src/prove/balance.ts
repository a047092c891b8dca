import { at, type Stock } from "./stock";

/**
 * What must face out, by counting. In a linked set of texts (each fits another of the set) whose links run between two
 * halves, every inner side of one half lies against one of the other, so outer sides of the first half less those of the
 * second are as many as all sides of the first less all of the second. In a set with no such halves the outer sides are at
 * least even or odd as all sides are. Sides of texts that fit nothing all face out.
 *
 * A *half* is numbered 2 × set, or 2 × set + 1 for the second half; a set without halves has the first only.
 */
export interface Balance {
  /** Half for each renumbered text; -1 where it fits nothing. */
  readonly half: Int32Array;
  readonly halves: number;
  /** For each set the surplus of the first half over the second; 0 or 1 where there are no halves. */
  readonly surplus: Int32Array;
  /** 1 for each set that has no halves. */
  readonly odd: Int32Array;
  /** Outer sides that are bound to be taken: sides that fit nothing, and surpluses. */
  readonly bound: number;
}

export function balanceOf(stock: Stock): Balance {
  const sides = stock.sides();
  const half = new Int32Array(stock.texts.length).fill(-1);
  const surplus: number[] = [];
  const odd: number[] = [];
  let bound = 0;
  for (let start = 0; start < half.length; start++) {
    if (at(half, start) >= 0) continue;
    if (stock.partners[start]?.length === 0) {
      bound += at(sides, start);
      continue;
    }
    const first = 2 * surplus.length;
    half[start] = first;
    const members = [start];
    let halved = true;
    for (const text of members) {
      for (const other of stock.partners[text] ?? []) {
        if (at(half, other) < 0) {
          half[other] = at(half, text) ^ 1;
          members.push(other);
        } else if (at(half, other) === at(half, text)) halved = false;
      }
    }
    let difference = 0;
    for (const text of members) difference += at(half, text) === first ? at(sides, text) : -at(sides, text);
    if (!halved) {
      for (const text of members) half[text] = first;
      difference &= 1;
    }
    surplus.push(difference);
    odd.push(halved ? 0 : 1);
    bound += Math.abs(difference);
  }
  return { half, halves: 2 * surplus.length, surplus: Int32Array.from(surplus), odd: Int32Array.from(odd), bound };
}
