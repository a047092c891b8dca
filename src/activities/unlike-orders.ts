import { upTo } from "../base/seed";

/*
 * Orders of one activity for several class hours: whoever heard or overheard the one should know nothing of the other.
 */

/** Times that an order is gone through; each time some items change places. */
const passes = 4;
/** The same item at the same place tells more than two items that stand beside each other in both. */
const samePlace = 2;
const sameCouple = 1;

/** What earlier orders have, as looked up for each place of a further one. Items are numbers from 0. */
export class EarlierOrders {
  private readonly items: number;
  /** By place and item, and by one item and the other, how many of them have it. */
  private readonly places: number[] = [];
  private readonly couples: number[] = [];

  constructor(orders: readonly (readonly number[])[], further: readonly number[] = []) {
    this.items = 1 + Math.max(-1, ...orders.flat(), ...further);
    const count = (counts: number[], key: number): void => {
      counts[key] = (counts[key] ?? 0) + 1;
    };
    for (const order of orders) {
      order.forEach((item, place) => {
        count(this.places, place * this.items + item);
        const next = order[place + 1];
        if (next !== undefined) count(this.couples, this.couple(item, next));
      });
    }
  }

  /** What an order has in common with them: places with the same item, and couples of neighbours, whichever comes first. */
  likeness(order: readonly number[]): number {
    let sum = 0;
    for (let place = 0; place < order.length; place++) sum += this.likenessAt(order, place);
    return sum;
  }

  /** Of a place, and of the couple that begins there. */
  likenessAt(order: readonly number[], place: number): number {
    const [item = -1, next] = [order[place], order[place + 1]];
    const beside = next === undefined ? 0 : (this.couples[this.couple(item, next)] ?? 0);
    return samePlace * (this.places[place * this.items + item] ?? 0) + sameCouple * beside;
  }

  private couple(a: number, b: number): number {
    return Math.min(a, b) * this.items + Math.max(a, b);
  }
}

/**
 * An order made as unlike earlier ones as exchanges of two items can make it. `may` says which two can change places; `cost` is
 * what must not grow by it. The same order where there is nothing to mend.
 */
export function madeUnlike(
  order: readonly number[],
  earlier: readonly (readonly number[])[],
  may: (a: number, b: number) => boolean,
  cost: (order: readonly number[]) => number = () => 0,
): readonly number[] {
  if (earlier.length === 0) return order;
  const before = new EarlierOrders(earlier, order);
  let [best, least, most] = [order, before.likeness(order), cost(order)];
  for (let pass = 0; pass < passes && least > 0; pass++) {
    const start = least;
    for (const place of upTo(order.length)) {
      if (before.likenessAt(best, place) === 0) continue;
      // A couple is parted by moving either of the two.
      for (const i of [place, place + 1].filter((each) => each < order.length)) {
        for (const j of upTo(order.length)) {
          const [a = -1, b = -1] = [best[i], best[j]];
          if (i === j || !may(a, b)) continue;
          const next = best.with(i, b).with(j, a);
          const likeness = before.likeness(next);
          if (likeness >= least) continue;
          const costs = cost(next);
          if (costs <= most) [best, least, most] = [next, likeness, costs];
        }
      }
    }
    if (least === start) break;
  }
  return best;
}
