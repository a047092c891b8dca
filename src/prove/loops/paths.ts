import { Trail } from "../trail";
import type { Circle } from "./loops";

/**
 * Paths of cards as laid so far, and the arcs that are still open; can be put back to how they were. An arc that would close a
 * path early is left out, and one that is the only one out of a card or into one is laid at once.
 */
export class Paths {
  /** The card that each arc leads from, and the one it leads to. */
  readonly from: number[] = [];
  readonly to: number[] = [];
  /** The arcs out of each card and into each. */
  readonly out: readonly (readonly number[])[];
  readonly into: readonly (readonly number[])[];
  private readonly trail: Trail;
  private readonly forced: number[] = [];
  private readonly queue: Int32Array;
  private readonly seen: Int32Array;
  private rounds = 0;

  /* Where each number stands on the trail. */
  private readonly outs: number;
  private readonly ins: number;
  private readonly nexts: number;
  private readonly previous: number;
  private readonly lasts: number;
  private readonly firsts: number;
  private readonly laid: number;

  /** `follows` names no card after itself. */
  constructor(follows: readonly (readonly number[])[]) {
    const size = follows.length;
    this.queue = new Int32Array(size);
    this.seen = new Int32Array(size);
    const out: number[][] = follows.map(() => []);
    const into: number[][] = follows.map(() => []);
    follows.forEach((list, card) => {
      for (const next of list) {
        out[card]?.push(this.from.length);
        into[next]?.push(this.from.length);
        this.from.push(card);
        this.to.push(next);
      }
    });
    this.out = out;
    this.into = into;
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
      this.trail.values[this.outs + card] = out[card]?.length ?? 0;
      this.trail.values[this.ins + card] = into[card]?.length ?? 0;
      this.trail.values[this.nexts + card] = -1;
      this.trail.values[this.previous + card] = -1;
      this.trail.values[this.lasts + card] = card;
      this.trail.values[this.firsts + card] = card;
    }
  }

  /** How many paths there are; a card alone is one. */
  get count(): number {
    return this.out.length - this.get(this.laid);
  }

  /** A moment to come back to. */
  mark(): number {
    return this.trail.mark();
  }

  undo(mark: number): void {
    this.trail.undo(mark);
  }

  isOpen(arc: number): boolean {
    return this.trail.values[arc] === 0;
  }

  /** How many arcs out of a card are open; 0 where one is laid. */
  waysOn(card: number): number {
    return this.get(this.nexts + card) < 0 ? this.get(this.outs + card) : 0;
  }

  /** How many arcs into a card are open; 0 where one is laid. */
  waysIn(card: number): number {
    return this.get(this.previous + card) < 0 ? this.get(this.ins + card) : 0;
  }

  isTouched(card: number): boolean {
    return this.get(this.nexts + card) >= 0 || this.get(this.previous + card) >= 0;
  }

  /** Lays what has no choice from the start. False where some card has no way left. */
  layOnly(): boolean {
    if ([...this.out, ...this.into].some((list) => list.length === 0)) return false;
    this.forced.push(...this.from.map((_, arc) => arc).filter((arc) => this.isOnly(arc)));
    return this.layForced();
  }

  /** Lays an arc, and what that forces, until one path is left. False where some card has no way left. */
  lay(arc: number): boolean {
    this.forced.push(arc);
    return this.layForced();
  }

  private get(index: number): number {
    return this.trail.values[index] ?? -1;
  }

  private isOnly(arc: number): boolean {
    return this.get(this.outs + (this.from[arc] ?? 0)) === 1 || this.get(this.ins + (this.to[arc] ?? 0)) === 1;
  }

  private layForced(): boolean {
    for (let arc = this.forced.pop(); arc !== undefined; arc = this.forced.pop()) {
      const card = this.from[arc] ?? 0;
      const next = this.to[arc] ?? 0;
      if (this.count === 1 || this.get(this.nexts + card) === next) continue;
      if (!this.isOpen(arc) || !this.join(card, next)) {
        this.forced.length = 0;
        return false;
      }
    }
    return true;
  }

  private join(card: number, next: number): boolean {
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
    if (this.count === 1) return (this.out[last] ?? []).some((arc) => this.isOpen(arc));
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

  /** Whether every path can be reached from one of them, and that one from every path. As much work as there are open arcs. */
  hangTogether(): boolean {
    const first = this.somePath();
    return (
      this.reachesAll(first, this.lasts, this.out, this.to) &&
      this.reachesAll(this.get(this.lasts + first), this.firsts, this.into, this.from)
    );
  }

  /** From one end of a path to its other end, along open arcs to the like ends of others, and so on. */
  private reachesAll(
    start: number,
    otherEnd: number,
    arcs: readonly (readonly number[])[],
    end: readonly number[],
  ): boolean {
    const { queue, seen } = this;
    const { values } = this.trail;
    const round = ++this.rounds;
    queue[0] = start;
    seen[start] = round;
    let length = 1;
    for (let i = 0; i < length; i++) {
      for (const arc of arcs[values[otherEnd + (queue[i] ?? 0)] ?? 0] ?? []) {
        const other = end[arc] ?? 0;
        if (seen[other] === round || values[arc] !== 0) continue;
        seen[other] = round;
        queue[length++] = other;
      }
    }
    return length === this.count;
  }

  /** The first card of some path. */
  private somePath(): number {
    let card = 0;
    while (this.get(this.previous + card) >= 0) card++;
    return card;
  }

  /** The cards in the order in which they lie, where one path is left. */
  circle(): Circle {
    const cards = [this.somePath()];
    while (cards.length < this.out.length) cards.push(this.get(this.nexts + (cards.at(-1) ?? 0)));
    return cards;
  }
}
