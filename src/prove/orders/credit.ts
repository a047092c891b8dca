import type { Order } from "./orders";

/**
 * How many pieces need not be moved: the longest run of items that stand in their order, not counting those between. Equal
 * places may stand in any order among themselves.
 *
 * @param places for each item as laid the place that it belongs to.
 */
export function longestAscending(places: readonly number[]): number {
  // ends[i] is the smallest last place of a run of i + 1 (Schensted 1961, for runs that may stay level).
  const ends: number[] = [];
  for (const place of places) {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((ends[middle] ?? 0) <= place) low = middle + 1;
      else high = middle;
    }
    ends[low] = place;
  }
  return ends.length;
}

/** The same out of all: 1 where everything stands in order, 0 for nothing. */
export function ascendingCredit(places: readonly number[]): number {
  return places.length === 0 ? 1 : longestAscending(places) / places.length;
}

/**
 * How many pieces of a row need not be moved to get the accepted order that is nearest: the longest sequence of texts that
 * both have.
 */
export function credit(texts: readonly string[], laid: Order, accepted: readonly Order[]): number {
  return Math.max(0, ...accepted.map((order) => commonLength(texts, laid, order)));
}

function commonLength(texts: readonly string[], a: Order, b: Order): number {
  let above = new Array<number>(b.length + 1).fill(0);
  for (const strip of a) {
    const row = [0];
    b.forEach((other, j) => {
      const longest = Math.max(above[j + 1] ?? 0, row[j] ?? 0);
      row.push(texts[strip] === texts[other] ? Math.max(longest, (above[j] ?? 0) + 1) : longest);
    });
    above = row;
  }
  return above[b.length] ?? 0;
}
