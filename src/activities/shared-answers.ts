import type { Fix } from "../base/finding";
import type { Range } from "../base/range";
import { answerKey, Relation } from "../match/relation";
import type { Answer, Pair } from "../unit/unit";
import type { DealRequest } from "./contract";
import { quotedList } from "./report";
import { isFormPair, withForms } from "./supply";

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
  // A changed pair is one object wherever it stands.
  const made = new Map(request.relation.pairs.map((pair) => [pair, change(pair)]));
  const all = (pairs: readonly Pair[]): Pair[] =>
    pairs.flatMap((pair) => (made.has(pair) ? made.get(pair) : change(pair)) ?? []);
  const sections = request.sections.map((section) => withForms({ ...section, pairs: all(section.pairs) }, section));
  return { ...request, sections, relation: new Relation(all(request.relation.pairs)) };
}

/** A fix, and what it makes of the pairs. */
export interface TriedFix {
  readonly fix: Fix;
  readonly change: PairChange;
}

/** Takes out an alternative answer, where a finding stands or in another pair; undefined for what is printed and cells of tables. */
export function dropAnswer(standing: Standing, at: "here" | "there" = "here"): TriedFix | undefined {
  const tried = dropAnswers([standing]);
  if (!tried || at === "here") return tried;
  const { pair, answer } = standing;
  const title = `Take the answer “${answer.text}” out of “${pair.left.answers[0].text} = ${pair.right.answers[0].text}”`;
  return { ...tried, fix: { ...tried.fix, title } };
}

/** Takes out alternative answers, of which at least one is given; undefined where one of them is printed or a cell of a forms table. */
export function dropAnswers(standings: readonly Standing[]): TriedFix | undefined {
  const edits = standings.flatMap(({ pair, side, index, answer }) => {
    const before = pair[side].answers[index - 1];
    return before && !isFormPair(pair) ? [{ range: { start: before.range.end, end: answer.range.end }, text: "" }] : [];
  });
  const [only] = standings;
  if (edits.length < standings.length || !only) return undefined;
  const out = new Set(standings.map(({ answer }) => answer));
  const without = (side: Pair["left"]): Pair["left"] => {
    const [first, ...rest] = side.answers;
    return { ...side, answers: [first, ...rest.filter((answer) => !out.has(answer))] };
  };
  const touched = new Set(standings.map(({ pair }) => pair));
  const names = [...new Set(standings.map(({ answer }) => answer.text))];
  const title =
    standings.length === 1
      ? `Take the answer “${only.answer.text}” out here`
      : `Take ${quotedList(names)} out as answers`;
  return {
    fix: { title, edits },
    change: (each) => (touched.has(each) ? { ...each, left: without(each.left), right: without(each.right) } : each),
  };
}

/** Takes out a pair; cells of forms tables stay. */
export function dropPair(pair: Pair): TriedFix | undefined {
  return dropPairs([pair], `Take out “${pair.left.answers[0].text} = ${pair.right.answers[0].text}”`);
}

/** Takes out pairs; undefined where there are none, or one of them is a cell of a forms table. */
export function dropPairs(pairs: readonly Pair[], title: string): TriedFix | undefined {
  if (pairs.length === 0 || pairs.some(isFormPair)) return undefined;
  const out = new Set(pairs);
  return {
    fix: { title, edits: pairs.map(({ block }) => ({ range: block, text: "" })) },
    change: (each) => (out.has(each) ? undefined : each),
  };
}

/** Without further fixes of the same title: of two pairs that read alike either may go. */
export function distinctFixes(fixes: readonly Fix[]): Fix[] {
  const titles = new Set<string>();
  return fixes.filter(({ title }) => !titles.has(title) && titles.add(title));
}
