import type { Fix } from "../../../base/finding";
import { answerKey, type MatchKey } from "../../../match/relation";
import type { DealRequest } from "../../contract";
import { setOption } from "../../edits";
import { changed, dropAnswer, dropPair, laterOf } from "../../shared-answers";
import { clashesAhead, dealLoop, fewestPairs } from "../deal";
import type { DealtLoop } from "../model";
import { type Clash, clashCause, clashCount } from "./clashes";

/** What a fix must take away: all second circles, or all that comes of the answer that clashes. */
export type Aim = "second circle" | "early close";

/** Fixes that mend, each tried by dealing again or by what is known of its cards ahead: those that leave no clash at all first. */
export function fixesFor(dealt: DealtLoop, clash: Clash, aim: Aim): Fix[] {
  const { block, unit, relation } = dealt.request;
  const { asks, answers } = clash;
  const { alternative } = clashCause(clash, relation);
  const before = clashCount(dealt);
  const changes = [
    alternative && dropAnswer(alternative),
    ...[...new Set([laterOf(asks, answers), asks, answers])].map(dropPair),
  ];
  const tried = changes.flatMap((each) => {
    if (!each) return [];
    const request = changed(dealt.request, each.change);
    const left = clashesAfter(request, dealt);
    if (left === undefined || left >= before) return [];
    return left === 0 || mends(request, dealt, clash, aim) ? [{ fix: each.fix, left }] : [];
  });
  const sound = tried.filter(({ left }) => left === 0).map(({ fix }) => fix);
  const others = tried.filter(({ left }) => left > 0).map(({ fix }) => fix);
  const fewer = largestSound(dealt);
  if (fewer === undefined) return [...sound, ...others];
  const title = `Take ${fewer} of the ${dealt.pairs.length} pairs, none of which clash`;
  return [...sound, { title, edits: [setOption(block, unit.text, "take", String(fewer))] }, ...others];
}

/** Whether nothing of what a finding is about is left where clashes are. */
function mends(request: DealRequest, dealt: DealtLoop, { asks, answers }: Clash, aim: Aim): boolean {
  if (aim === "second circle") return dealLoop(request).deals.every(({ proof }) => proof.status === "one");
  const [prompt, answer] = [answerKey(asks.left.answers[0]), answerKey(answers.right.answers[0])];
  const left = new Set(request.relation.pairs.map(({ range }) => range.start));
  // Where both stay, and do not fit any more, whatever else clashes with them is told at its own place.
  if (left.has(asks.range.start) && left.has(answers.range.start)) return !request.relation.fits(prompt, answer);
  return clashesAfter(request, dealt, answer) === 0;
}

/** How many clashes another request would have in all deals, or only of one answer; undefined where it has none to deal. */
function clashesAfter(request: DealRequest, { deals, options }: DealtLoop, only?: MatchKey): number | undefined {
  const ahead = clashesAhead(request, only);
  // Each version has a deal for each level, with the same circle.
  if (ahead !== undefined) return (ahead * deals.length) / options.versions;
  const after = dealLoop(request);
  return after.deals.length > 0 ? clashCount(after, only) : undefined;
}

const sound = new WeakMap<DealtLoop, { readonly take: number | undefined }>();

/** The most pairs that can be chosen so that no card fits where it should not; looked for once for all findings. */
function largestSound(dealt: DealtLoop): number | undefined {
  const known = sound.get(dealt);
  if (known) return known.take;
  const { request, options, pairs } = dealt;
  const most = Math.min(options.take ?? pairs.length, pairs.length) - 1;
  let take: number | undefined;
  for (let fewer = most; fewer >= fewestPairs && take === undefined; fewer--) {
    const value = { ...options, take: fewer };
    if (clashesAfter({ ...request, options: { ...request.options, value } }, dealt) === 0) take = fewer;
  }
  sound.set(dealt, { take });
  return take;
}
