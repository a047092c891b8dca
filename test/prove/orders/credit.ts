import type { Order } from "../../../src/prove/orders/orders";

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
