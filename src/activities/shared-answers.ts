import type { Fix } from "../base/finding";
import type { Range } from "../base/range";
import { answerKey, Relation } from "../match/relation";
import type { Answer, Pair, Section } from "../unit/unit";
import type { DealRequest } from "./contract";
import { isFormPair } from "./supply";

/* Why the words of two pairs fit although they are no pair, and changes of pairs that are tried before they are offered. */

export type Side = "left" | "right";

/** The printed answer of one side of a pair. */
export interface PrintedSide {
  readonly pair: Pair;
  readonly side: Side;
}

/** An answer that makes two texts fit, where it stands. */
export interface Standing extends PrintedSide {
  readonly index: number;
  readonly answer: Answer;
}

export interface Cause {
  /** What to point at: an alternative that only makes trouble, else what the later pair shares with the earlier, else the whole. */
  readonly range: Range;
  readonly alternative?: Standing;
  /** Other pairs that say that the two fit. */
  readonly others: readonly Pair[];
}

/** Why the printed answers of two pairs, on different sides, fit. */
export function causeOf(a: PrintedSide, b: PrintedSide, relation: Relation): Cause {
  const [one, other] = [a, b].map(({ pair, side }) => answerKey(pair[side].answers[0]));
  const find = (pair: Pair, side: Side, key = ""): Standing | undefined => {
    const index = pair[side].answers.findIndex((each) => answerKey(each) === key);
    const answer = pair[side].answers[index];
    return answer ? { pair, side, index, answer } : undefined;
  };
  const shared = [find(a.pair, b.side, other), find(b.pair, a.side, one)];
  const alternative = shared.find((standing) => standing && standing.index > 0);
  const others = relation.because(one ?? "", other ?? "").filter((pair) => pair !== a.pair && pair !== b.pair);
  if (alternative) return { range: alternative.answer.range, alternative, others };
  const later = laterOf(a.pair, b.pair);
  const same = shared.find((standing) => standing !== undefined);
  return { range: same ? later[same.side].answers[0].range : later.range, others };
}

export function laterOf(p: Pair, q: Pair): Pair {
  return p.range.start > q.range.start ? p : q;
}

/** What becomes of a pair: itself, another in its place, or nothing. */
export type PairChange = (pair: Pair) => Pair | undefined;

/** The same request about changed pairs; forms tables stay as they are. */
export function changed(request: DealRequest, change: PairChange): DealRequest {
  const all = (pairs: readonly Pair[]): Pair[] => pairs.flatMap((pair) => change(pair) ?? []);
  const sections = request.sections.map((section): Section => ({ ...section, pairs: all(section.pairs) }));
  return { ...request, sections, relation: new Relation(all(request.relation.pairs)) };
}

/** A fix, and what it does to pairs, so that it can be tried. */
export interface TriedFix {
  readonly fix: Fix;
  readonly change: PairChange;
}

/** Takes out an alternative answer. */
export function dropAnswer({ pair, side, index, answer }: Standing): TriedFix | undefined {
  const before = pair[side].answers[index - 1];
  const [first, ...rest] = pair[side].answers.filter((_, i) => i !== index);
  if (!before || !first || isFormPair(pair)) return undefined;
  const without: Pair = { ...pair, [side]: { ...pair[side], answers: [first, ...rest] } };
  const edits = [{ range: { start: before.range.end, end: answer.range.end }, text: "" }];
  return {
    fix: { title: `Take the answer “${answer.text}” out here`, edits, preferred: true },
    change: (each) => (each === pair ? without : each),
  };
}

/** Takes out a pair; cells of forms tables stay. */
export function dropPair(pair: Pair): TriedFix | undefined {
  if (isFormPair(pair)) return undefined;
  const title = `Take out “${pair.left.answers[0].text} = ${pair.right.answers[0].text}”`;
  return {
    fix: { title, edits: [{ range: pair.block, text: "" }] },
    change: (each) => (each === pair ? undefined : each),
  };
}
