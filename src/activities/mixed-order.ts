import { Recent } from "../base/recent";
import { Random } from "../base/seed";
import { balancedOrder, type RunsLimits, runs, runsLimits } from "../prove/items/items";

/** A stretch of answers that change each time and is longer than this looks like a pattern too. */
const longestChange = 6;

/** Numbers of stretches by how many answers there are of each kind. */
const limits = new Recent<RunsLimits>(100);

/** Orders drawn before the best so far is taken. */
const attempts = 60;

/** Longer orders are made of parts: what all rows of answers are that keep to the rules would take too long to count. */
export const longestOrder = 400;

/**
 * An order of items, as indices, in which their answers give nothing away: no row of more than three equal ones, no long stretch
 * that changes each time, no fewer or more changes than the runs test lets
 * pass for chance, and no neighbours of which `together` says that one gives the other away. Where there is none, the
 * nearest to it that was met. Hangs on the stream and the answers only.
 */
export function mixedOrder(
  answers: readonly boolean[],
  stream: string,
  together: (a: number, b: number) => boolean = () => false,
): number[] {
  const random = new Random(stream);
  if (answers.length > longestOrder) {
    const items = random.shuffle(answers.map((_, i) => i));
    const count = Math.ceil(items.length / longestOrder);
    return Array.from({ length: count }, (_, part) => {
      // Each has its share of both kinds.
      const own = [true, false].flatMap((kind) =>
        items.filter((item) => answers[item] === kind).filter((_, i) => i % count === part),
      );
      const places = own.map((item) => answers[item] ?? false);
      const apart = (a: number, b: number): boolean => together(own[a] ?? 0, own[b] ?? 0);
      return mixedOrder(places, `${stream}/${part}`, apart).map((place) => own[place] ?? 0);
    }).flat();
  }
  let best: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (let attempt = 0; attempt < attempts && least > 0; attempt++) {
    const order = balancedOrder(random, answers);
    const cost = tellingPlaces(order, answers, together);
    if (cost < least) [best, least] = [order, cost];
  }
  return best;
}

function tellingPlaces(
  order: readonly number[],
  answers: readonly boolean[],
  together: (a: number, b: number) => boolean,
): number {
  let [change, places] = [1, isByChance(order.map((item) => answers[item] ?? false)) ? 0 : 1];
  for (let i = 1; i < order.length; i++) {
    const [before, here] = [order[i - 1] ?? 0, order[i] ?? 0];
    change = answers[here] === answers[before] ? 1 : change + 1;
    if (change > longestChange) places++;
    if (together(before, here)) places++;
  }
  return places;
}

/** Whether a row of answers has neither too few nor too many stretches to have come about by chance (5 %, two-sided). */
function isByChance(row: readonly boolean[]): boolean {
  const trues = row.filter((answer) => answer).length;
  const falses = row.length - trues;
  const { few, many } = limits.get(`${trues}/${falses}`, () => runsLimits(trues, falses));
  const count = runs(row).length;
  return (few === undefined || count > few) && (many === undefined || count < many);
}
