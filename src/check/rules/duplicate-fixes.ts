import {
  changed,
  distinctFixes,
  dropAnswers,
  dropPair,
  dropPairs,
  type Standing,
  type TriedFix,
} from "../../activities/shared-answers";
import { holds, isMeant, stillDeals } from "../../activities/trial";
import type { Fix } from "../../base/finding";
import type { Pair } from "../../unit/unit";
import type { CheckContext, CheckedActivity } from "../context";

/* What helps where items share answers: each change is tried on all activities that have the items before it is offered. */

interface About {
  /** The items are one pair, written several times. */
  readonly whole: boolean;
  /** Activities that the shared answers give a second solution. */
  readonly hits: readonly CheckedActivity[];
  /** The items of every finding of this kind. */
  readonly all: readonly (readonly Pair[])[];
}

/** Fixes of items that share answers, by the groups of these; the smallest change first. */
export function duplicateFixes(
  context: CheckContext,
  shared: readonly (readonly Standing[])[],
  { whole, hits, all }: About,
): Fix[] {
  const pairs = (shared[0] ?? []).map(({ pair }) => pair);
  const [first, ...later] = pairs;
  const sound = (tried: TriedFix | undefined): Fix[] => (tried && isSound(context, tried, hits) ? [tried.fix] : []);
  const words = whole ? [] : sound(idleAnswers(shared));
  const options = hits.length === 1 ? hits.flatMap(otherOptions) : [];
  const alone = pairs.length === 2 || hits.length > 0 ? [...later, ...(first && !whole ? [first] : [])] : [];
  const single = alone.map(dropPair).flatMap(sound);
  const title = "Take out all of them but the first";
  const rest = later.length > 1 ? sound(dropPairs(later, title)) : [];
  const every = hits.length > 0 && words.length + single.length + rest.length === 0 ? sound(dropEvery(all)) : [];
  if (whole) return distinctFixes([...single, ...rest]).map((fix, i) => ({ ...fix, preferred: i === 0 }));
  return distinctFixes([...words, ...options, ...single, ...rest, ...every]);
}

/** Takes shared answers out wherever they are not printed, so that one item has them; undefined where two print one. */
function idleAnswers(shared: readonly (readonly Standing[])[]): TriedFix | undefined {
  const out = shared.map((group) => {
    const keeps = group.find(({ index }) => index === 0) ?? group[0];
    return group.filter((standing) => standing !== keeps);
  });
  return dropAnswers(out.flat());
}

function otherOptions({ plan: { kind }, dealt }: CheckedActivity): readonly Fix[] {
  return kind?.trial?.options?.(dealt) ?? [];
}

/** Of each group of items that share answers, takes out all but the first. */
function dropEvery(all: readonly (readonly Pair[])[]): TriedFix | undefined {
  const out = [...new Set(all.flatMap((pairs) => pairs.slice(1)))];
  return out.length < 2 ? undefined : dropPairs(out, `Take out ${out.length} pairs that share answers with others`);
}

/** Whether all activities that were dealt still are, those that had one solution keep it, and those that had several get one. */
function isSound({ activities }: CheckContext, { change }: TriedFix, hits: readonly CheckedActivity[]): boolean {
  return activities.every((activity) => {
    const { plan, dealt } = activity;
    const concerned = plan.sections.some(({ pairs }) => pairs.some((pair) => change(pair) !== pair));
    if (!plan.kind || dealt.deals.length === 0 || !concerned) return true;
    const after = changed(dealt.request, change);
    const needsProof = hits.includes(activity) || dealt.deals.every(isMeant);
    return needsProof ? holds(plan.kind, after) : stillDeals(plan.kind, after);
  });
}
