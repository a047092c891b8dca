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
  /** What each text fits; most fit one other, and then no set is made of it before somebody asks for one. */
  private readonly table = new Map<MatchKey, MatchKey | Set<MatchKey>>();
  private reasons: ReadonlyMap<string, Pair[]> | undefined;

  /** `groups`: the keys of the pairs in their order, a list for each section, for whoever has them already. */
  constructor(
    readonly pairs: readonly Pair[],
    readonly groups: readonly (readonly PairKeys[])[] = [pairs.map(keysOf)],
  ) {
    for (const group of groups) {
      for (const { left, right } of group) {
        for (const a of left) {
          for (const b of right) {
            this.link(a, b);
            this.link(b, a);
          }
        }
      }
    }
  }

  private link(from: MatchKey, to: MatchKey): void {
    const known = this.table.get(from);
    if (known === undefined) this.table.set(from, to);
    else if (typeof known !== "string") known.add(to);
    else if (known !== to) this.table.set(from, new Set([known, to]));
  }

  fits(a: MatchKey, b: MatchKey): boolean {
    const known = this.table.get(a);
    return typeof known === "string" ? known === b : (known?.has(b) ?? false);
  }

  partners(key: MatchKey): ReadonlySet<MatchKey> {
    const known = this.table.get(key);
    if (known === undefined) return none;
    if (typeof known !== "string") return known;
    const only = new Set([known]);
    this.table.set(key, only);
    return only;
  }

  /** The pairs that make two texts fit; empty where they do not. */
  because(a: MatchKey, b: MatchKey): readonly Pair[] {
    this.reasons ??= reasonsFor(this.pairs);
    return this.reasons.get(edgeKey(a, b)) ?? [];
  }
}

const differing = new WeakMap<Relation, { readonly from: Relation; readonly keys: ReadonlySet<MatchKey> }>();

/** The keys of pairs that only one of two relations has. */
export function differingKeys(from: Relation, to: Relation): ReadonlySet<MatchKey> {
  const known = differing.get(to);
  if (known?.from === from) return known.keys;
  const keys = new Set([...keysWithout(from, to), ...keysWithout(to, from)]);
  differing.set(to, { from, keys });
  return keys;
}

/** The keys of those pairs of a relation that another one has not. */
function keysWithout(relation: Relation, other: Relation): MatchKey[] {
  const [own, others] = [relation, other].map(({ groups }) => new Set(groups));
  const differ = relation.groups.filter((group) => !others?.has(group)).flat();
  const named = new Set(other.groups.filter((group) => !own?.has(group)).flatMap((group) => group.map(nameOf)));
  return differ.flatMap((pair) => (named.has(nameOf(pair)) ? [] : [...pair.left, ...pair.right]));
}

function nameOf({ left, right }: PairKeys): string {
  return `${left.join("\u0001")}\u0002${right.join("\u0001")}`;
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
