import type { Proof } from "../proof";
import type { Order, OrderPuzzle } from "./orders";
import { bit, type PartialOrder, partialOrderOf, sources, withAlikeInOrder } from "./partial-order";
import { acceptsSteps, areStepped, proveSteps } from "./steps";

/** Sets of strips that can be laid after one reading; more happen only where many strips print alike. */
const mostStates = 20_000;

/** Strips laid so far, with one order in which that came about. */
interface State {
  readonly laid: bigint;
  readonly order: Order;
}

/**
 * Whether strips have one order that is accepted. They have iff there are never two different texts that may come next: one
 * strip at a time where no two print alike (Kahn 1962), else for every set of strips that reads the same so far.
 *
 * @param intended the order that the teacher means; the second one shown reads differently.
 * @throws RangeError where a pair names a strip that is not there.
 */
export function proveOrder(puzzle: OrderPuzzle, intended?: Order): Proof<Order> {
  if (areStepped(puzzle)) return proveSteps(puzzle, intended);
  const read = partialOrderOf(puzzle);
  if (!read) return { status: "none", count: 0, capped: false, nodes: 0, by: "certificate" };
  const order = withAlikeInOrder(read);
  let states: readonly State[] = [{ laid: 0n, order: [] }];
  let nodes = 0;
  for (let place = 0; place < order.size; place++) {
    const byLook = stepFrom(order, states);
    nodes += states.length;
    const [first, second] = byLook.values();
    if (first && second) {
      const orders = [...byLook.values()].map(([state]) => completed(order, state ?? { laid: 0n, order: [] }));
      const reading = intended && acceptsOrder(puzzle, intended) ? readingOf(puzzle, intended) : undefined;
      const other = orders.slice(reading === undefined ? 1 : 0).find((o) => readingOf(puzzle, o) !== reading);
      return { status: "several", count: 2, capped: true, nodes, by: "witness", ...(other && { second: other }) };
    }
    states = first ?? [];
    if (states.length > mostStates) return { status: "unsettled", count: 0, capped: false, nodes, by: "search" };
  }
  return { status: "one", count: 1, capped: false, nodes, by: "certificate" };
}

/** Whether strips as they are laid read like an accepted order. */
export function acceptsOrder(puzzle: OrderPuzzle, laid: Order): boolean {
  if (areStepped(puzzle)) return acceptsSteps(puzzle, laid);
  const read = partialOrderOf(puzzle);
  if (!read || laid.length !== read.size || new Set(laid).size !== laid.length) return false;
  const order = withAlikeInOrder(read);
  let states: readonly State[] = [{ laid: 0n, order: [] }];
  for (const strip of laid) states = stepFrom(order, states).get(order.look[strip] ?? -1) ?? [];
  return states.length > 0;
}

/** For each look that may come next the sets of strips that are then laid. */
function stepFrom(order: PartialOrder, states: readonly State[]): Map<number, State[]> {
  const byLook = new Map<number, Map<bigint, State>>();
  for (const state of states)
    for (const strip of sources(order, state.laid)) {
      const look = order.look[strip] ?? -1;
      const reached = byLook.get(look) ?? new Map<bigint, State>();
      const laid = state.laid | bit(strip);
      if (!reached.has(laid)) reached.set(laid, { laid, order: [...state.order, strip] });
      byLook.set(look, reached);
    }
  return new Map([...byLook].map(([look, reached]) => [look, [...reached.values()]]));
}

function completed(order: PartialOrder, state: State): Order {
  const strips = [...state.order];
  let { laid } = state;
  for (let [next] = sources(order, laid); next !== undefined; [next] = sources(order, laid)) {
    strips.push(next);
    laid |= bit(next);
  }
  return strips;
}

/** Equal for orders that read the same. */
export function readingOf(puzzle: OrderPuzzle, order: Order): string {
  return JSON.stringify(order.map((strip) => puzzle.texts[strip]));
}
