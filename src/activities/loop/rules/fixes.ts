import type { Fix } from "../../../base/finding";
import { Relation } from "../../../match/relation";
import type { Pair, Side } from "../../../unit/unit";
import { setOption } from "../../edits";
import { isFormPair } from "../../supply";
import { dealLoop, fewestPairs } from "../deal";
import type { DealtLoop } from "../model";
import { type Clash, causeOf, clashCount, laterOf } from "./clashes";

/** Fixes that leave fewer cards that fit where they should not, each tried by dealing again. */
export function fixesFor(dealt: DealtLoop, clash: Clash): Fix[] {
  const fixes: Fix[] = [];
  const { block, unit, relation } = dealt.request;
  const { alternative } = causeOf(clash, relation);
  if (alternative && !isFormPair(alternative.pair)) {
    const { pair, side, index, answer } = alternative;
    const before = pair[side].answers[index - 1];
    const without = (each: Pair): Pair =>
      each === pair ? { ...each, [side]: withoutAnswer(each[side], index) } : each;
    if (before && helps(dealt, without)) {
      const edits = [{ range: { start: before.range.end, end: answer.range.end }, text: "" }];
      fixes.push({ title: `Take the answer “${answer.text}” out here`, edits, preferred: true });
    }
  }
  const fewer = largestSound(dealt);
  if (fewer !== undefined) {
    const title = `Take ${fewer} of the ${dealt.pairs.length} pairs, none of which clash`;
    fixes.push({ title, edits: [setOption(block, unit.text, "take", String(fewer))] });
  }
  for (const pair of new Set([laterOf(clash), clash.asks, clash.answers])) {
    if (isFormPair(pair) || !helps(dealt, (each) => (each === pair ? undefined : each))) continue;
    const title = `Take out “${pair.left.answers[0].text} = ${pair.right.answers[0].text}”`;
    fixes.push({ title, edits: [{ range: pair.block, text: "" }] });
  }
  return fixes;
}

function withoutAnswer(side: Side, index: number): Side {
  const [first, ...rest] = side.answers.filter((_, i) => i !== index);
  return first ? { ...side, answers: [first, ...rest] } : side;
}

/** Whether a change of the pairs leaves fewer clashes. */
function helps(dealt: DealtLoop, change: (pair: Pair) => Pair | undefined): boolean {
  const { request } = dealt;
  const changed = (pairs: readonly Pair[]): Pair[] => pairs.flatMap((pair) => change(pair) ?? []);
  const sections = request.sections.map((section) => ({ ...section, pairs: changed(section.pairs) }));
  const after = dealLoop({ ...request, sections, relation: new Relation(changed(request.relation.pairs)) });
  return after.deals.length > 0 && clashCount(after) < clashCount(dealt);
}

/** The most pairs that can be chosen so that no card fits where it should not. */
function largestSound(dealt: DealtLoop): number | undefined {
  const { request, options, pairs } = dealt;
  const most = Math.min(options.take ?? pairs.length, pairs.length) - 1;
  for (let take = most; take >= fewestPairs; take--) {
    const value = { ...options, take };
    const after = dealLoop({ ...request, options: { ...request.options, value } });
    if (after.deals.length > 0 && clashCount(after) === 0) return take;
  }
  return undefined;
}
