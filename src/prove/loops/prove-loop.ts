import { anyCycle } from "../items/components";
import { shortageIn } from "../items/matching";
import type { Proof } from "../proof";
import { circlesOf } from "./best";
import { circleKey, isCircle, stretch } from "./circle";
import { CircleSearch } from "./circle-search";
import { classesOf, eulerianCircle, type LoopClasses, placesOf } from "./classes";
import { type Core, cardsAlong, coreOf } from "./core";
import { otherCircle } from "./exchange";
import type { Circle, LoopProof, LoopProofOptions, LoopPuzzle } from "./loops";
import { readPuzzle } from "./read-puzzle";
import { shortestCircle } from "./shortest";
import { swappedCircle } from "./swap";

/**
 * Whether cards make exactly one full circle, and whether a smaller one can close early, proven.
 *
 * @throws RangeError where a list names a card that is not there, or cards that print alike do not match alike.
 */
export function proveLoop(puzzle: LoopPuzzle, options: LoopProofOptions = {}): LoopProof {
  const search = new LoopSearch(puzzle, options);
  while (!search.advance(Number.POSITIVE_INFINITY));
  return search.proof;
}

/**
 * The same in slices. Where the relation is by classes, and where what is forced settles it, it is done from the start;
 * else circles are searched for. However it is sliced, the proof is the same.
 */
export class LoopSearch {
  private readonly look: readonly number[];
  private readonly follows: readonly (readonly number[])[];
  private readonly intended: Circle | undefined;
  private readonly cap: number;
  private readonly budget: number;
  private readonly smaller: Circle | undefined;
  private readonly keys = new Set<string>();
  private core: Core = { stretches: [], follows: [] };
  private search: CircleSearch | undefined;
  private second: Circle | undefined;
  private count = 0;
  private settled: Proof<Circle> | undefined;

  constructor(puzzle: LoopPuzzle, options: LoopProofOptions = {}) {
    ({ follows: this.follows, look: this.look } = readPuzzle(puzzle));
    this.cap = Math.max(2, options.cap ?? 2);
    this.budget = options.budget ?? 200_000;
    const { intended } = options;
    if (intended && isCircle({ follows: this.follows }, intended)) {
      this.intended = intended;
      this.meet(intended);
    }
    const classes = classesOf(this.follows);
    if (classes) {
      const circle = this.intended ?? eulerianCircle(classes);
      this.smaller = shorter(circle ? earlyByClasses(circle, classes) : anyCycle(this.follows), this.follows, classes);
      this.settleByClasses(classes, circle, this.look);
      return;
    }
    this.smaller = shorter(earlyClose(this.follows, this.intended), this.follows);
    this.begin();
  }

  /** What is known; `full` is unsettled as long as it is not done. */
  get proof(): LoopProof {
    const full = this.settled ?? this.verdict("search", true);
    const shortage = full.status === "none" ? shortageOf(this.follows) : undefined;
    return { full, ...(this.smaller && { smaller: this.smaller }), ...(shortage && { shortage }) };
  }

  /** Searches on for so many nodes. True when done. */
  advance(nodes: number): boolean {
    const until = (this.search?.nodes ?? 0) + nodes;
    while (!this.settled && (this.search?.nodes ?? 0) < until) this.step();
    return this.settled !== undefined;
  }

  private begin(): void {
    // What is found near the circle that is meant needs no search for what is forced.
    if (this.intended && this.exchange(this.intended)) return;
    const core = coreOf(this.follows, this.intended);
    const [sole, ...others] = core?.stretches ?? [];
    if (!core || !sole || others.length === 0) {
      if (sole) this.meet(sole);
      this.settle("certificate", false);
      return;
    }
    this.core = core;
    const look = looksOf(core.stretches, this.look);
    const classes = classesOf(core.follows);
    const meant = this.intended && this.stretchesOf(this.intended);
    if (classes) this.settleByClasses(classes, meant ?? eulerianCircle(classes), look);
    else this.search = new CircleSearch(core.follows, look, meant);
  }

  /** A full circle as an order of stretches. */
  private stretchesOf(circle: Circle): Circle {
    const order = new Map(circle.map((card, place) => [card, place]));
    const place = (cards: Circle | undefined) => order.get(cards?.[0] ?? -1) ?? 0;
    const { stretches } = this.core;
    return stretches.map((_, i) => i).sort((a, b) => place(stretches[a]) - place(stretches[b]));
  }

  /** Looks for a second circle near a first one, of stretches as soon as there are any, where no more are wanted. */
  private exchange(circle: Circle): boolean {
    const follows = this.core.stretches.length === 0 ? this.follows : this.core.follows;
    const other = this.cap === 2 && swappedCircle(follows, circle);
    if (!other || !this.meet(this.cardsOf(other))) return false;
    this.settle("witness", true);
    return true;
  }

  private settleByClasses(classes: LoopClasses, circle: Circle | undefined, look: readonly number[]): void {
    if (circle) this.meet(this.cardsOf(circle));
    const other = circle && otherCircle(circle, classes, look);
    if (!other) {
      this.settle("certificate", false);
      return;
    }
    this.meet(this.cardsOf(other));
    const all = this.cap > 2 ? circlesOf(classes, look) : undefined;
    if (all !== undefined) this.count = Number(all < this.cap ? all : Math.min(this.cap, Number.MAX_SAFE_INTEGER));
    this.settle("witness", all === undefined || all > this.count);
  }

  private step(): void {
    const { search } = this;
    if (!search) return;
    if (search.nodes >= this.budget) {
      this.settle("search", true);
      return;
    }
    const result = search.step();
    if (result === "end") this.settle("search", false);
    else if (result && this.meet(this.cardsOf(result))) {
      if (this.count >= this.cap) this.settle("search", true);
      else this.exchange(result);
    }
  }

  /** The cards of a circle of stretches. */
  private cardsOf(circle: Circle): Circle {
    const { stretches } = this.core;
    return stretches.length === 0 ? circle : cardsAlong(stretches, circle);
  }

  /** Counts a circle unless one that looks like it was counted. */
  private meet(circle: Circle): boolean {
    const key = circleKey(this.look, circle);
    if (this.keys.has(key)) return false;
    this.keys.add(key);
    this.count++;
    if (this.count === 2) this.second = circle;
    return true;
  }

  private settle(by: Proof<Circle>["by"], early: boolean): void {
    this.settled = this.verdict(by, early);
  }

  private verdict(by: Proof<Circle>["by"], early: boolean): Proof<Circle> {
    const { count, second } = this;
    const few = early ? "unsettled" : count === 1 ? "one" : "none";
    const status = count >= 2 ? "several" : few;
    const proof = { status, count, capped: early && count >= 2, nodes: this.search?.nodes ?? 0, by } as const;
    return second ? { ...proof, second } : proof;
  }
}

/**
 * Cards that ask for more cards after them than there are, where no full circle is possible. So no card may come after
 * itself: one that is alone and does is a full circle.
 */
function shortageOf(follows: readonly (readonly number[])[]): LoopProof["shortage"] {
  const others = follows.map((list, card) => list.filter((next) => next !== card));
  const shortage = shortageIn(others, follows.length);
  return shortage && { asking: shortage.lefts, answering: shortage.rights };
}

/** Numbers for how stretches look. */
function looksOf(stretches: readonly Circle[], look: readonly number[]): number[] {
  const numbers = new Map<string, number>();
  return stretches.map((cards) => {
    const key = cards.map((card) => look[card]).join();
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
}

/** A circle that closes early, or one of fewer cards, if there is one: several wrong cards may close a shorter one than one does. */
function shorter(
  smaller: Circle | undefined,
  follows: readonly (readonly number[])[],
  classes?: LoopClasses,
): Circle | undefined {
  if (!smaller || smaller.length < 2) return smaller;
  const lists = classes ? sharedLists(follows, classes) : follows;
  return shortestCircle(lists, smaller.length, classes ? Number.POSITIVE_INFINITY : undefined) ?? smaller;
}

/** The same lists, one for each class. */
function sharedLists(follows: readonly (readonly number[])[], { asks }: LoopClasses): readonly (readonly number[])[] {
  const lists = new Map<number, readonly number[]>();
  for (const [card, list] of follows.entries()) if (!lists.has(asks[card] ?? -1)) lists.set(asks[card] ?? -1, list);
  return follows.map((list, card) => lists.get(asks[card] ?? -1) ?? list);
}

/** Every time that a class comes round again the circle may be closed: the shortest such stretch. */
function earlyByClasses(circle: Circle, classes: LoopClasses): Circle | undefined {
  let shortest: { readonly from: number; readonly to: number; readonly size: number } | undefined;
  for (const places of placesOf(classes, circle)) {
    if (places.length < 2) continue;
    places.forEach((from, i) => {
      const to = places[(i + 1) % places.length] ?? 0;
      const size = (to - from + circle.length) % circle.length;
      if (!shortest || size < shortest.size) shortest = { from, to, size };
    });
  }
  return shortest && stretch(circle, shortest.from, shortest.to);
}

/** An arc besides those of a full circle closes a part of it: the shortest. Without a full circle any circle is smaller. */
function earlyClose(follows: readonly (readonly number[])[], intended: Circle | undefined): Circle | undefined {
  const cycle = intended ?? anyCycle(follows);
  if (!cycle || cycle.length < follows.length) return cycle;
  const place = new Int32Array(cycle.length);
  cycle.forEach((card, i) => {
    place[card] = i;
  });
  let shortest: { readonly from: number; readonly to: number; readonly size: number } | undefined;
  for (const [card, list] of follows.entries()) {
    const to = ((place[card] ?? 0) + 1) % cycle.length;
    for (const next of list) {
      const from = place[next] ?? 0;
      const size = (to - from + cycle.length) % cycle.length;
      if (size > 0 && (!shortest || size < shortest.size)) shortest = { from, to, size };
    }
  }
  return shortest && stretch(cycle, shortest.from, shortest.to);
}
