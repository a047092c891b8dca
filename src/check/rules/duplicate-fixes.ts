import type { ActivityKind, DealRequest } from "../../activities/contract";
import {
  changed,
  distinctFixes,
  dropAnswer,
  dropAnswers,
  dropPair,
  dropPairs,
  type Standing,
  type TriedFix,
} from "../../activities/shared-answers";
import { holding, isMeant, staysAsGood } from "../../activities/trial";
import type { Fix } from "../../base/finding";
import { Recent } from "../../base/recent";
import { type Steps, sifted } from "../../base/steps";
import type { Pair } from "../../unit/unit";
import type { CheckContext, CheckedActivity } from "../context";
import { isWrittenTwice } from "./same-words";

/* What helps where items share answers: each change is tried on all activities that have the items before it is offered. */

/** Of many items that share an answer one less helps nobody: so many are tried one by one. Ours. */
const mostAlone = 8;

interface About {
  /** The items are one pair, written several times. */
  readonly whole: boolean;
  /** Activities that the shared answers give a second solution. */
  readonly hits: readonly CheckedActivity[];
  /** The items of every finding of this kind. */
  readonly all: readonly (readonly Pair[])[];
}

/** Fixes of items that share answers, by the groups of these; the smallest change first. */
export function* duplicateFixes(
  context: CheckContext,
  shared: readonly (readonly Standing[])[],
  { whole, hits, all }: About,
): Steps<Fix[], unknown> {
  const fixesThat = function* (calm: boolean): Steps<Fix[], unknown> {
    const sound = function* (all: readonly (TriedFix | undefined)[]): Steps<Fix[], unknown> {
      const tried = all.flatMap((each) => each ?? []);
      return (yield* sifted(tried, (each) => isSound(context, each, hits, calm))).map(({ fix }) => fix);
    };
    return yield* fixesBy(context, sound, shared, { whole, hits, all });
  };
  const calm = yield* fixesThat(true);
  // Where a warning comes instead, that is better than a second solution, but nothing to do unasked.
  if (calm.length > 0 || hits.length === 0) return calm;
  return (yield* fixesThat(false)).map((fix) => ({ ...fix, preferred: false }));
}

function* fixesBy(
  context: CheckContext,
  sound: (all: readonly (TriedFix | undefined)[]) => Steps<Fix[], unknown>,
  shared: readonly (readonly Standing[])[],
  { whole, hits, all }: About,
): Steps<Fix[], unknown> {
  const pairs = (shared[0] ?? []).map(({ pair }) => pair);
  const [first, ...later] = pairs;
  const words = whole ? [] : yield* sound([idleAnswers(shared)]);
  const [hit] = hits;
  const options = hit && hits.length === 1 ? yield* otherOptions(hit) : [];
  const alone = pairs.length === 2 || hits.length > 0 ? [...later, ...(first && !whole ? [first] : [])] : [];
  const single = yield* sound(alone.slice(0, mostAlone).map(dropPair));
  const title = "Take out all of them but the first";
  const rest = later.length > 1 ? yield* sound([dropPairs(later, title)]) : [];
  const none = words.length + single.length + rest.length === 0;
  const every = hits.length > 0 && none ? yield* sound([dropEvery(all)]) : [];
  if (whole) {
    const twice = first !== undefined && later.every((each) => isWrittenTwice(context.unit, first, each));
    return distinctFixes([...single, ...rest]).map((fix, i) => ({ ...fix, preferred: twice && i === 0 }));
  }
  return distinctFixes([...words, ...options, ...single, ...rest, ...every]);
}

/** Takes shared answers out wherever they are not printed, so that one item has them; undefined where two print one. */
function idleAnswers(shared: readonly (readonly Standing[])[]): TriedFix | undefined {
  const out = shared.map((group) => {
    const keeps = group.find(({ index }) => index === 0) ?? group[0];
    return group.filter((standing) => standing !== keeps);
  });
  const [only, ...more] = out.flat();
  // A finding stands at the second item.
  if (only && more.length === 0) return dropAnswer(only, only.pair === shared[0]?.[1]?.pair ? "here" : "there");
  return dropAnswers(out.flat());
}

function* otherOptions({ plan: { kind }, dealt }: CheckedActivity): Steps<readonly Fix[], unknown> {
  return kind?.trial?.options ? yield* kind.trial.options(dealt) : [];
}

/** Of each group of items that share answers, takes out all but the first. */
function dropEvery(all: readonly (readonly Pair[])[]): TriedFix | undefined {
  const out = [...new Set(all.flatMap((pairs) => pairs.slice(1)))];
  return out.length < 2 ? undefined : dropPairs(out, `Take out ${out.length} pairs that share answers with others`);
}

/**
 * Whether all activities that were dealt still are, those that had one solution keep it, those that the answers give several get
 * one, and the others are no worse; calm, if none gets a warning for it.
 */
function* isSound(
  { activities }: CheckContext,
  { change }: TriedFix,
  hits: readonly CheckedActivity[],
  calm: boolean,
): Steps<boolean, unknown> {
  for (const activity of activities) {
    const { plan, dealt } = activity;
    const concerned = plan.sections.some(({ pairs }) => pairs.some((pair) => change(pair) !== pair));
    if (!plan.kind || dealt.deals.length === 0 || !concerned) continue;
    yield "trying a fix";
    const needsProof = hits.includes(activity) || dealt.deals.every(isMeant);
    const name = nameOf(plan.kind, dealt.request, change, [needsProof, calm]);
    let outcome = name === undefined ? undefined : outcomes.find(name);
    if (outcome === undefined) {
      const after = changed(dealt.request, change);
      outcome = needsProof
        ? yield* holding(plan.kind, after, calm ? dealt : undefined)
        : staysAsGood(plan.kind, dealt, after);
    }
    const found = outcome;
    if (name !== undefined) outcomes.get(name, () => found);
    if (!outcome) return false;
  }
  return true;
}

/** What became of changes that were tried of late: a word that is mended elsewhere asks for none of them again. */
const outcomes = new Recent<boolean>(1000);

/** Equal for changes of which the same becomes: of alike requests the same answers go. Undefined where that is not known. */
function nameOf(
  { name, trial }: ActivityKind,
  request: DealRequest,
  change: TriedFix["change"],
  how: readonly boolean[],
): string | undefined {
  const structure = trial?.structure(request);
  if (structure === undefined) return undefined;
  const changes = request.relation.pairs.flatMap((pair, i) => {
    const after = change(pair);
    if (after === pair) return [];
    const kept = (side: "left" | "right"): number[] | undefined =>
      after?.[side].answers.map((answer) => pair[side].answers.indexOf(answer));
    return [[i, kept("left"), kept("right")]];
  });
  return JSON.stringify([name, how, structure, changes]);
}
