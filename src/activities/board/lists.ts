import { Random, upTo } from "../../base/seed";
import { madeUnlike } from "../unlike-orders";
import type { BoardDeal } from "./model";
import type { Grid } from "./options";

/** Orders drawn for one without a pattern, and boards that are looked at. */
const attempts = 200;
const boardsSeen = 6;

/**
 * For each class hour an order in which all targets are called once: no three calls in the order of the unit, forwards or
 * backwards, none in a straight row of neighbouring cells, and no two hours that begin alike; and as few calls as can be in the
 * place that they have in another hour, or beside the same. Where there is no such order, the nearest that was met.
 */
export function callLists(
  targets: number,
  { columns }: Grid,
  deals: readonly BoardDeal[],
  hours: number,
  stream: string,
): readonly (readonly number[])[] {
  const boards = deals.slice(0, boardsSeen).map(({ cells }) => upTo(targets).map((target) => cells.indexOf(target)));
  const lists: (readonly number[])[] = [];
  for (let hour = 0; hour < hours; hour++) {
    const costOf = (order: readonly number[]): number => {
      const alike = lists.filter((list) => list[0] === order[0] || list.join() === order.join()).length;
      return alike + patterns(order, boards, columns);
    };
    let best = new Random(`${stream}/${hour}/0`).shuffle(upTo(targets));
    let least = costOf(best);
    for (let attempt = 1; attempt < attempts && least > 0; attempt++) {
      const order = new Random(`${stream}/${hour}/${attempt}`).shuffle(upTo(targets));
      const cost = costOf(order);
      if (cost < least) [best, least] = [order, cost];
    }
    lists.push(madeUnlike(best, lists, () => true, costOf));
  }
  return lists;
}

/** How many threes of calls follow each other as in the unit, or in a row on a board. */
function patterns(order: readonly number[], boards: readonly (readonly number[])[], columns: number): number {
  let found = 0;
  for (let i = 2; i < order.length; i++) {
    const [a = 0, b = 0, c = 0] = order.slice(i - 2, i + 1);
    if (Math.abs(b - a) === 1 && c - b === b - a) found++;
    for (const cells of boards) {
      const [p, q, r] = [cells[a] ?? 0, cells[b] ?? 0, cells[c] ?? 0];
      const step = (from: number, to: number): readonly [number, number] => [
        Math.floor(to / columns) - Math.floor(from / columns),
        (to % columns) - (from % columns),
      ];
      const [[dy, dx], [ey, ex]] = [step(p, q), step(q, r)];
      if (Math.abs(dy) <= 1 && Math.abs(dx) <= 1 && dy === ey && dx === ex) found++;
    }
  }
  return found;
}
