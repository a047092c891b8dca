import { Trail } from "../trail";
import type { Circle } from "./loops";

interface Choice {
  readonly mark: number;
  readonly options: readonly number[];
  next: number;
}

/**
 * All full circles of a relation, one step at a time: an arc that is the only one out of a card or into one is laid at once,
 * an arc that would close early is left out, and where nothing is forced the card with the fewest ways is tried. Of cards
 * that print alike and have not been touched yet only one is tried, so circles that look the same are met less often, but
 * they may be met again.
 */
export class CircleSearch {
  /** Choices tried. */
  nodes = 0;
  private readonly from: number[] = [];
  private readonly to: number[] = [];
  private readonly out: number[][];
  private readonly into: number[][];
  private readonly choices: Choice[] = [];
  private readonly trail: Trail;
  private readonly forced: number[] = [];
  private readonly queue: Int32Array;
  private readonly seen: Int32Array;
  private rounds = 0;
  private begun = false;
  /** A choice has come to nothing since the last look at whether all hangs together; how many paths there were then. */
  private failed = false;
  private looked = Number.POSITIVE_INFINITY;

  /* Where each number stands on the trail. */
  private readonly outs: number;
  private readonly ins: number;
  private readonly nexts: number;
  private readonly previous: number;
  private readonly lasts: number;
  private readonly firsts: number;
  private readonly laid: number;

  /** `follows` names no card after itself. */
  constructor(
    private readonly follows: readonly (readonly number[])[],
    private readonly look: readonly number[],
  ) {
    const size = follows.length;
    this.queue = new Int32Array(size);
    this.seen = new Int32Array(size);
    this.out = follows.map(() => []);
    this.into = follows.map(() => []);
    follows.forEach((list, card) => {
      for (const next of list) {
        this.out[card]?.push(this.from.length);
        this.into[next]?.push(this.from.length);
        this.from.push(card);
        this.to.push(next);
      }
    });
    // First one number for each arc: 1 when it is left out.
    this.outs = this.from.length;
    this.ins = this.outs + size;
    this.nexts = this.ins + size;
    this.previous = this.nexts + size;
    this.lasts = this.previous + size;
    this.firsts = this.lasts + size;
    this.laid = this.firsts + size;
    this.trail = new Trail(this.laid + 1);
    for (let card = 0; card < size; card++) {
      this.trail.values[this.outs + card] = this.out[card]?.length ?? 0;
      this.trail.values[this.ins + card] = this.into[card]?.length ?? 0;
      this.trail.values[this.nexts + card] = -1;
      this.trail.values[this.previous + card] = -1;
      this.trail.values[this.lasts + card] = card;
      this.trail.values[this.firsts + card] = card;
    }
  }

  /** Tries one more choice. A circle when that completed one, `undefined` when not, `"end"` when all is searched. */
  step(): Circle | "end" | undefined {
    if (!this.begun) {
      this.begun = true;
      const arcs = this.from.map((_, arc) => arc);
      this.forced.push(...arcs.filter((arc) => this.isOnly(arc)));
      const hopeless = [...this.out, ...this.into].some((list) => list.length === 0);
      return !hopeless && this.layForced() ? this.goOn() : undefined;
    }
    const choice = this.choices.at(-1);
    if (!choice) return "end";
    this.trail.undo(choice.mark);
    const arc = choice.options[choice.next++] ?? -1;
    if (choice.next >= choice.options.length) this.choices.pop();
    this.nodes++;
    this.forced.push(arc);
    return this.layForced() ? this.goOn() : undefined;
  }

  private get(index: number): number {
    return this.trail.values[index] ?? -1;
  }

  private isOpen(arc: number): boolean {
    return this.get(arc) === 0;
  }

  private isOnly(arc: number): boolean {
    return this.get(this.outs + (this.from[arc] ?? 0)) === 1 || this.get(this.ins + (this.to[arc] ?? 0)) === 1;
  }

  private goOn(): Circle | undefined {
    if (this.get(this.laid) === this.follows.length - 1) return this.circle();
    if (this.isTimeToLook() && !this.hangsTogether()) {
      this.failed = true;
      return undefined;
    }
    this.choices.push({ mark: this.trail.mark(), options: this.choose(), next: 0 });
    return undefined;
  }

  /** Lays what waits to be laid, and what that forces, until one path is left. False where something has no way left. */
  private layForced(): boolean {
    for (let arc = this.forced.pop(); arc !== undefined; arc = this.forced.pop()) {
      const card = this.from[arc] ?? 0;
      const next = this.to[arc] ?? 0;
      const known = this.get(this.nexts + card);
      if (this.get(this.laid) === this.follows.length - 1 || known === next) continue;
      if (!this.isOpen(arc) || !this.lay(card, next)) {
        this.forced.length = 0;
        this.failed = true;
        return false;
      }
    }
    return true;
  }

  private lay(card: number, next: number): boolean {
    const { trail } = this;
    trail.set(this.nexts + card, next);
    trail.set(this.previous + next, card);
    trail.set(this.laid, this.get(this.laid) + 1);
    const first = this.get(this.firsts + card);
    const last = this.get(this.lasts + next);
    trail.set(this.lasts + first, last);
    trail.set(this.firsts + last, first);
    for (const arc of this.out[card] ?? []) if (this.to[arc] !== next && !this.leaveOut(arc)) return false;
    for (const arc of this.into[next] ?? []) if (this.from[arc] !== card && !this.leaveOut(arc)) return false;
    if (this.get(this.laid) === this.follows.length - 1) return (this.out[last] ?? []).some((arc) => this.isOpen(arc));
    for (const arc of this.out[last] ?? []) if (this.to[arc] === first && !this.leaveOut(arc)) return false;
    return true;
  }

  private leaveOut(arc: number): boolean {
    if (!this.isOpen(arc)) return true;
    const card = this.from[arc] ?? 0;
    const next = this.to[arc] ?? 0;
    this.trail.set(arc, 1);
    this.trail.set(this.outs + card, this.get(this.outs + card) - 1);
    this.trail.set(this.ins + next, this.get(this.ins + next) - 1);
    const ways = this.get(this.outs + card);
    const waysIn = this.get(this.ins + next);
    if (ways === 1) this.forced.push((this.out[card] ?? []).find((other) => this.isOpen(other)) ?? -1);
    if (waysIn === 1) this.forced.push((this.into[next] ?? []).find((other) => this.isOpen(other)) ?? -1);
    return ways > 0 && waysIn > 0;
  }

  /** The ways on from a path's last card, or into a path's first, whichever are fewest. */
  private choose(): readonly number[] {
    let fewest = Number.POSITIVE_INFINITY;
    let chosen: readonly number[] = [];
    // What has one way is laid already, so none has fewer than two.
    for (let card = 0; card < this.follows.length && fewest > 2; card++) {
      const ways = this.get(this.outs + card);
      if (this.get(this.nexts + card) < 0 && ways < fewest) {
        fewest = ways;
        chosen = this.untouched(this.out[card] ?? [], this.to);
      }
      const waysIn = this.get(this.ins + card);
      if (this.get(this.previous + card) < 0 && waysIn < fewest) {
        fewest = waysIn;
        chosen = this.untouched(this.into[card] ?? [], this.from);
      }
    }
    return chosen;
  }

  /** The open ones of some arcs, and of those to untouched cards that print alike the first. */
  private untouched(arcs: readonly number[], end: readonly number[]): number[] {
    const seen = new Set<number>();
    return arcs.filter((arc) => {
      if (!this.isOpen(arc)) return false;
      const card = end[arc] ?? 0;
      if (this.get(this.nexts + card) >= 0 || this.get(this.previous + card) >= 0) return true;
      const look = this.look[card] ?? -1;
      if (seen.has(look)) return false;
      seen.add(look);
      return true;
    });
  }

  /**
   * Looking whether all hangs together takes as long as all paths together, so it is done where a tenth of them was joined since
   * the last look, and after each choice that came to nothing.
   */
  private isTimeToLook(): boolean {
    const paths = this.follows.length - this.get(this.laid);
    if (!this.failed && paths * 10 > this.looked * 9 && paths <= this.looked) return false;
    this.failed = false;
    this.looked = paths;
    return true;
  }

  /** Whether every path can be reached from one of them, and that one from every path. */
  private hangsTogether(): boolean {
    const first = this.somePath();
    return (
      this.reachesAll(first, this.lasts, this.out, this.to) &&
      this.reachesAll(this.get(this.lasts + first), this.firsts, this.into, this.from)
    );
  }

  /** From one end of a path to its other end, along open arcs to the like ends of others, and so on. */
  private reachesAll(start: number, otherEnd: number, arcs: readonly number[][], end: readonly number[]): boolean {
    const { queue, seen } = this;
    const round = ++this.rounds;
    queue[0] = start;
    seen[start] = round;
    let length = 1;
    for (let i = 0; i < length; i++) {
      for (const arc of arcs[this.get(otherEnd + (queue[i] ?? 0))] ?? []) {
        const other = end[arc] ?? 0;
        if (seen[other] === round || !this.isOpen(arc)) continue;
        seen[other] = round;
        queue[length++] = other;
      }
    }
    return length === this.follows.length - this.get(this.laid);
  }

  /** The first card of some path. */
  private somePath(): number {
    let card = 0;
    while (this.get(this.previous + card) >= 0) card++;
    return card;
  }

  private circle(): Circle {
    const cards = [this.somePath()];
    while (cards.length < this.follows.length) cards.push(this.get(this.nexts + (cards.at(-1) ?? 0)));
    return cards;
  }
}
