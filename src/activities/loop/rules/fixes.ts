import type { Fix } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { answerKey, type MatchKey } from "../../../match/relation";
import type { DealRequest } from "../../contract";
import { setOption } from "../../edits";
import { changed, dropAnswer, dropPair, laterOf, type TriedFix } from "../../shared-answers";
import { clashesAhead, fewestPairs, isSurelyOne, losesDecoys, mostSound } from "../circles";
import { dealingLoop } from "../deal";
import type { DealtLoop } from "../model";
import { type Clash, clashCause, clashCount } from "./clashes";

/** What a fix must take away: all second circles, or all that comes of the answer that clashes. */
export type Aim = "second circle" | "early close";

/** Fixes that mend, each tried by dealing again or by what is known of its cards ahead: those that leave no clash at all first. */
export function* fixesFor(dealt: DealtLoop, clash: Clash, aim: Aim): Steps<Fix[]> {
  const { block, unit, relation } = dealt.request;
  const { asks, answers } = clash;
  const { alternative, others: saying } = clashCause(clash, relation);
  const before = clashCount(dealt);
  const changes = new Map<object, () => TriedFix | undefined>();
  if (alternative) changes.set(alternative.answer, () => dropAnswer(alternative));
  // What another pair says of the two goes with that; the cards stay as they are.
  for (const pair of [...saying, laterOf(asks, answers), asks, answers]) changes.set(pair, () => dropPair(pair));
  const tried: { readonly fix: Fix; readonly left: number }[] = [];
  for (const [what, change] of changes) {
    yield "trying a fix";
    const trial = trialOf(dealt, what, change);
    if (trial?.left === undefined || trial.left >= before) continue;
    const { fix, request, left } = trial;
    // Too few of other cards, or levels that do not differ, are no better than a circle that closes early.
    if (aim === "early close" && losesDecoys(request, dealt.request)) continue;
    if (left > 0 && !(yield* mends(request, dealt, clash, aim))) continue;
    if (left > 0 && !(yield* keepsOne(trial, dealt, aim))) continue;
    tried.push({ fix, left });
  }
  const sound = tried.filter(({ left }) => left === 0).map(({ fix }) => fix);
  // A card that fits two places closes a smaller circle: with one full circle that is only warned of, and said beforehand.
  const still = aim === "second circle" ? "; a smaller circle can still close" : "";
  const others = tried.filter(({ left }) => left > 0).map(({ fix }) => ({ ...fix, title: `${fix.title}${still}` }));
  const fewer = largestSound(dealt);
  if (fewer === undefined) return [...sound, ...others];
  const title = `Take ${fewer} of the ${dealt.pairs.length} pairs, none of which clash`;
  return [...sound, { title, edits: [setOption(block, unit.text, "take", String(fewer))] }, ...others];
}

interface Trial {
  readonly fix: Fix;
  readonly request: DealRequest;
  /** How many clashes are left; undefined where nothing is left to deal. */
  readonly left: number | undefined;
  /** Whether each circle is the only one then, once that was asked. */
  isOne?: boolean;
}

const trials = new WeakMap<DealtLoop, Map<object, Trial | undefined>>();

/** What comes of taking an answer or a pair out, tried once for all findings. */
function trialOf(dealt: DealtLoop, what: object, change: () => TriedFix | undefined): Trial | undefined {
  const known = trials.get(dealt) ?? new Map<object, Trial | undefined>();
  trials.set(dealt, known);
  if (!known.has(what)) {
    const tried = change();
    const request = tried && changed(dealt.request, tried.change);
    known.set(what, request && { fix: tried.fix, request, left: clashesAfter(request, dealt) });
  }
  return known.get(what);
}

/** Whether nothing of what a finding is about is left where clashes are. */
function* mends(request: DealRequest, dealt: DealtLoop, { asks, answers }: Clash, aim: Aim): Steps<boolean> {
  if (aim === "second circle") return (yield* dealingLoop(request)).deals.every(({ proof }) => proof.status === "one");
  const [prompt, answer] = [answerKey(asks.left.answers[0]), answerKey(answers.right.answers[0])];
  const left = new Set(request.relation.pairs.map(({ range }) => range.start));
  // Where both stay, and do not fit any more, whatever else clashes with them is told at its own place.
  if (left.has(asks.range.start) && left.has(answers.range.start)) return !request.relation.fits(prompt, answer);
  return clashesAfter(request, dealt, answer) === 0;
}

/** Whether what has one full circle still has one where only a clash is mended: fewer cards may make a second one. Dealt once for all findings. */
function* keepsOne(trial: Trial, { deals }: DealtLoop, aim: Aim): Steps<boolean> {
  const isOne = ({ proof }: Pick<DealtLoop["deals"][number], "proof">): boolean => proof.status === "one";
  if (aim === "second circle" || !deals.every(isOne)) return true;
  trial.isOne ??= isSurelyOne(trial.request) || (yield* dealingLoop(trial.request)).deals.every(isOne);
  return trial.isOne;
}

/** How many clashes another request would have in all deals, or only of one answer; undefined where it has none to deal. */
function clashesAfter(request: DealRequest, { deals, options }: DealtLoop, only?: MatchKey): number | undefined {
  const ahead = clashesAhead(request, only);
  // Each version has a deal for each level, with the same circle.
  return ahead === undefined ? undefined : (ahead * deals.length) / options.versions;
}

const sound = new WeakMap<DealtLoop, { readonly take: number | undefined }>();

/** The most pairs that can be chosen so that no card fits where it should not; looked for once for all findings. */
function largestSound(dealt: DealtLoop): number | undefined {
  const known = sound.get(dealt);
  if (known) return known.take;
  const { request, options, pairs } = dealt;
  const most = Math.min((options.take ?? pairs.length) - 1, pairs.length - 1, mostSound(request));
  let take: number | undefined;
  for (let fewer = most; fewer >= fewestPairs && take === undefined; fewer--) {
    const value = { ...options, take: fewer };
    if (clashesAfter({ ...request, options: { ...request.options, value } }, dealt) === 0) take = fewer;
  }
  sound.set(dealt, { take });
  return take;
}
