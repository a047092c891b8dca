import { Random } from "../base/seed";
import type { Pair } from "../unit/unit";
import { spread, type Uses } from "./supply";

/** Choices drawn for one without pairs that clash. */
const attempts = 20;

/** For each pair those that it clashes with. */
export type Rivals = ReadonlyMap<Pair, ReadonlySet<Pair>>;

/** How pairs are chosen: which of them clash, how often earlier deals used each, and the seed's stream. */
export interface Choice {
  readonly clash: (p: Pair, q: Pair) => boolean;
  /** The same for each pair, where it is known: it saves asking about every two. */
  readonly rivals?: Rivals;
  readonly uses?: Uses<Pair>;
  readonly stream: string;
}

/**
 * Chooses `wanted` pairs by the seed, spread over their sections, passing over pairs that clash with one already taken as long
 * as others are left; pairs that fewer deals used before come first. Returns them in the order of the unit, and all of them
 * where no more are wanted than there are.
 */
export function choosePairs(groups: readonly (readonly Pair[])[], wanted: number, choice: Choice): readonly Pair[] {
  const all = groups.flat();
  if (wanted >= all.length) return all;
  const filled = new Set(withoutClash(groups, wanted, choice));
  for (const pair of inTurn(groups, choice, 0)) if (filled.size < wanted) filled.add(pair);
  return all.filter((pair) => filled.has(pair));
}

/** How many pairs can be chosen before `choosePairs` takes one that clashes. */
export function mostWithoutClash(groups: readonly (readonly Pair[])[], choice: Choice): number {
  return withoutClash(groups, Number.POSITIVE_INFINITY, choice).size;
}

/** As many pairs as are wanted of which none clash, or the most that were drawn. */
function withoutClash(groups: readonly (readonly Pair[])[], wanted: number, choice: Choice): ReadonlySet<Pair> {
  const first = draw(inTurn(groups, choice, 0), wanted, choice);
  if (first.size >= wanted) return first;
  const rivals = choice.rivals ?? rivalsAmong(groups.flat(), choice);
  const possible = Math.min(wanted, heapCount(groups.flat(), rivals));
  let best = first;
  for (let attempt = 1; attempt < attempts && best.size < possible; attempt++) {
    const taken = draw(inTurn(groups, choice, attempt), wanted, { ...choice, rivals });
    if (taken.size > best.size) best = taken;
  }
  return best;
}

/** Takes pairs in their order, passing over those that clash with one already taken. */
function draw(pairs: readonly Pair[], wanted: number, choice: Choice): ReadonlySet<Pair> {
  const taken = new Set<Pair>();
  for (const pair of pairs) {
    if (taken.size >= wanted) break;
    if (!clashesWithin(taken, pair, choice)) taken.add(pair);
  }
  return taken;
}

function clashesWithin(taken: ReadonlySet<Pair>, pair: Pair, { clash, rivals }: Choice): boolean {
  if (!rivals) {
    for (const other of taken) if (clash(pair, other)) return true;
    return false;
  }
  for (const rival of rivals.get(pair) ?? []) if (taken.has(rival)) return true;
  return false;
}

function rivalsAmong(pairs: readonly Pair[], { clash }: Choice): Rivals {
  const rivals = new Map(pairs.map((pair): [Pair, Set<Pair>] => [pair, new Set()]));
  const all = [...rivals];
  for (const [i, [pair, own]] of all.entries())
    for (const [other, others] of all.slice(i + 1)) {
      if (!clash(pair, other)) continue;
      own.add(other);
      others.add(pair);
    }
  return rivals;
}

/** Into how many heaps pairs can be put so that all of a heap clash with each other: no more can be taken without a clash. */
function heapCount(pairs: readonly Pair[], rivals: Rivals): number {
  let alone = 0;
  const heaps: Pair[][] = [];
  for (const pair of new Set(pairs)) {
    const own = rivals.get(pair);
    if (!own || own.size === 0) {
      alone++;
      continue;
    }
    const heap = heaps.find((others) => others.every((other) => own.has(other)));
    if (heap) heap.push(pair);
    else heaps.push([pair]);
  }
  return alone + heaps.length;
}

function inTurn(groups: readonly (readonly Pair[])[], { stream, uses }: Choice, attempt: number): Pair[] {
  return spread(groups, new Random(`${stream}/${attempt}`), uses);
}
