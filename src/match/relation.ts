import type { Answer, Pair } from "../unit/unit";
import { fold } from "./fold";

/** What stands on a piece, as far as matching goes: equal keys are the same to a learner. */
export type MatchKey = string;

/** A picture is itself, whatever its alternative text says; everything else is its folded text. */
export function answerKey(answer: Pick<Answer, "text" | "runs" | "picture">): MatchKey {
  if (!answer.picture) return fold(answer.text);
  const caption = answer.runs.map((run) => run.text).join("");
  return `\u0000${answer.picture.path}\u0000${fold(caption)}`;
}

/** The keys of a pair's answers, in their order. */
export interface PairKeys {
  readonly left: readonly MatchKey[];
  readonly right: readonly MatchKey[];
}

export function keysOf({ left, right }: Pair): PairKeys {
  return { left: left.answers.map(answerKey), right: right.answers.map(answerKey) };
}

/**
 * Which texts answer which. A text on the left of a pair fits each text on its right, and the other way round; alternatives
 * count like the printed answer. Symmetric, not transitive: two terms with one gloss fit that gloss, not each other.
 */
export class Relation {
  private readonly table = new Map<MatchKey, Set<MatchKey>>();
  private reasons: ReadonlyMap<string, Pair[]> | undefined;

  /** `keys`: those of the pairs, for whoever has them already. */
  constructor(
    readonly pairs: readonly Pair[],
    readonly keys: readonly PairKeys[] = pairs.map(keysOf),
  ) {
    for (const { left, right } of keys) {
      for (const a of left) {
        for (const b of right) {
          this.link(a, b);
          this.link(b, a);
        }
      }
    }
  }

  private link(from: MatchKey, to: MatchKey): void {
    const known = this.table.get(from);
    if (known) known.add(to);
    else this.table.set(from, new Set([to]));
  }

  fits(a: MatchKey, b: MatchKey): boolean {
    return this.table.get(a)?.has(b) ?? false;
  }

  partners(key: MatchKey): ReadonlySet<MatchKey> {
    return this.table.get(key) ?? none;
  }

  /** The pairs that make two texts fit; empty where they do not. */
  because(a: MatchKey, b: MatchKey): readonly Pair[] {
    this.reasons ??= reasonsFor(this.pairs);
    return this.reasons.get(edgeKey(a, b)) ?? [];
  }
}

/** The pairs that make two texts fit, by both. */
function reasonsFor(all: readonly Pair[]): ReadonlyMap<string, Pair[]> {
  const reasons = new Map<string, Pair[]>();
  for (const pair of all) {
    for (const left of pair.left.answers) {
      for (const right of pair.right.answers) {
        const key = edgeKey(answerKey(left), answerKey(right));
        const pairs = reasons.get(key);
        if (!pairs) reasons.set(key, [pair]);
        else if (!pairs.includes(pair)) pairs.push(pair);
      }
    }
  }
  return reasons;
}

const none: ReadonlySet<MatchKey> = new Set();

function edgeKey(a: MatchKey, b: MatchKey): string {
  return a < b ? `${a}\u0001${b}` : `${b}\u0001${a}`;
}
