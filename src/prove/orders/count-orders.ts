import { factorial } from "../loops/best";
import type { OrderPuzzle } from "./orders";
import { bit, members, type PartialOrder, partialOrderOf, sources, withAlikeInOrder } from "./partial-order";
import { areStepped, countSteps } from "./steps";

/**
 * How many orders are accepted that read differently, exactly; `undefined` where the budget ran out.
 *
 * @param budget sets of strips to look at (default 200,000).
 */
export function countOrders(puzzle: OrderPuzzle, budget = 200_000): bigint | undefined {
  if (areStepped(puzzle)) return countSteps(puzzle);
  const count = new OrderCount(puzzle, budget);
  while (!count.advance(Number.POSITIVE_INFINITY));
  return count.count;
}

/**
 * The same in slices. Strips fall apart into blocks: those that nothing ties together stand side by side (a multinomial
 * coefficient), those of which one always comes before the other follow each other (a product), and so on within: that is
 * all there is to series and parallel. Blocks that do not fall apart are counted over sets of strips that can have been laid
 * so far; general counting is #P-complete (Brightwell & Winkler 1991). Where strips print alike but stand in no order among
 * themselves, the sets that read the same so far are counted together.
 */
export class OrderCount {
  /** Sets of strips looked at. */
  nodes = 0;
  private factor = 1n;
  private readonly order: PartialOrder | undefined;
  private readonly blocks: bigint[] = [];
  private layer = new Map<string, Front>();
  private next = new Map<string, Front>();
  private waiting: Front[] = [];
  private failed = false;

  constructor(
    puzzle: OrderPuzzle,
    private readonly budget = 200_000,
  ) {
    const read = partialOrderOf(puzzle);
    if (!read) {
      this.factor = 0n;
      return;
    }
    this.order = withAlikeInOrder(read);
    const all = bit(read.size) - 1n;
    if (alikeInChains(this.order)) this.fallApart(this.order, all);
    else this.blocks.push(all);
    this.begin();
  }

  /** The number; `undefined` as long as it is not done, and where the budget ran out. */
  get count(): bigint | undefined {
    return this.failed || this.blocks.length > 0 ? undefined : this.factor;
  }

  /** Counts on for so many sets. True when done. */
  advance(nodes: number): boolean {
    const until = this.nodes + nodes;
    while (this.blocks.length > 0 && !this.failed && this.nodes < until) this.step();
    return this.failed || this.blocks.length === 0;
  }

  /** Multiplies by what is known at once and keeps the blocks that must be searched. */
  private fallApart(order: PartialOrder, block: bigint): void {
    const strips = members(block);
    if (strips.length < 2) return;
    const ties = (strip: number) => ((order.earlier[strip] ?? 0n) | (order.later[strip] ?? 0n)) & block;
    const beside = componentsOf(strips, ties);
    if (beside.length > 1) {
      this.factor *= factorial(strips.length);
      for (const part of beside) {
        this.factor /= factorial(members(part).length);
        this.fallApart(order, part);
      }
      return;
    }
    const oneAfterTheOther = componentsOf(strips, (strip) => block & ~ties(strip));
    if (oneAfterTheOther.length > 1) for (const part of oneAfterTheOther) this.fallApart(order, part);
    else this.blocks.push(block);
  }

  private begin(): void {
    const block = this.blocks.at(-1);
    if (block === undefined || !this.order) return;
    const outside = (bit(this.order.size) - 1n) & ~block;
    this.layer = new Map([["", { sets: [outside], ways: 1n }]]);
    this.waiting = [...this.layer.values()];
    this.next = new Map();
  }

  private step(): void {
    const { order } = this;
    const front = this.waiting.pop();
    if (front && order) {
      if (this.nodes >= this.budget) this.failed = true;
      else this.expand(order, front);
      return;
    }
    if (this.next.size > 0) {
      this.layer = this.next;
      this.waiting = [...this.layer.values()];
      this.next = new Map();
      return;
    }
    // All strips of the block are laid, in one set.
    for (const { ways } of this.layer.values()) this.factor *= ways;
    this.blocks.pop();
    this.begin();
  }

  private expand(order: PartialOrder, front: Front): void {
    const byLook = new Map<number, Set<bigint>>();
    for (const laid of front.sets) {
      this.nodes++;
      for (const strip of sources(order, laid)) {
        const look = order.look[strip] ?? -1;
        const sets = byLook.get(look);
        if (sets) sets.add(laid | bit(strip));
        else byLook.set(look, new Set([laid | bit(strip)]));
      }
    }
    for (const reached of byLook.values()) {
      const sets = [...reached].sort((a, b) => (a < b ? -1 : 1));
      const key = sets.join();
      const known = this.next.get(key);
      if (known) known.ways += front.ways;
      else this.next.set(key, { sets, ways: front.ways });
    }
  }
}

/** Sets of strips that can have been laid when it reads one way, and in how many ways it can read to get there. */
interface Front {
  readonly sets: readonly bigint[];
  ways: bigint;
}

/** Whether strips that print alike always stand in one order, so that how it reads says which strip is which. */
function alikeInChains({ look, earlier }: PartialOrder): boolean {
  const last = new Map<number, number[]>();
  return look.every((number, strip) => {
    const others = last.get(number) ?? [];
    last.set(number, [...others, strip]);
    return others.every(
      (other) => (((earlier[strip] ?? 0n) >> BigInt(other)) | ((earlier[other] ?? 0n) >> BigInt(strip))) & 1n,
    );
  });
}

/** Parts that no tie joins. */
function componentsOf(strips: readonly number[], ties: (strip: number) => bigint): bigint[] {
  const parts: bigint[] = [];
  let left = strips.reduce((set, strip) => set | bit(strip), 0n);
  while (left > 0n) {
    const [start = 0] = members(left);
    let part = bit(start);
    const open = [start];
    for (const strip of open)
      for (const other of members(ties(strip) & left & ~part)) {
        part |= bit(other);
        open.push(other);
      }
    parts.push(part);
    left &= ~part;
  }
  return parts;
}
