import type { ActivityKind, Deal, DealRequest, Dealt } from "../../activities/contract";
import { withoutItem } from "../../activities/without-item";
import { type Fix, type FixSearch, type Report, type Rule, reporting } from "../../base/finding";
import type { Steps } from "../../base/steps";
import type { Item, Section } from "../../unit/unit";
import type { CheckContext, CheckedActivity } from "../context";
import { claimTroubles } from "./written-claims";

/** In steps: how many errors and warnings each of a kind's own rules finds, by code, and whether levels are as they should be. */
export function* troublesOf(
  kind: ActivityKind | undefined,
  dealt: Dealt<Deal>,
  press: CheckContext["press"],
): Steps<ReadonlyMap<string, number>, unknown> {
  // These are told by general rules.
  const troubles = new Map([
    ["levels", dealt.sameLevels === undefined && dealt.upsetLevels === undefined ? 0 : 1],
    ...claimTroubles(dealt),
  ]);
  for (const rule of kind?.rules ?? []) {
    const reports = yield* reporting(rule, { dealt, press });
    troubles.set(rule.code, reports.filter((each) => isLoud(rule, each)).length);
  }
  return troubles;
}

/** Whether what a rule reports is an error or a warning. */
export function isLoud(rule: Pick<Rule<never>, "severity">, { severity = rule.severity }: Report): boolean {
  return severity === "error" || severity === "warning";
}

/** Whether something is told that was not told before, or more often. */
export function areMore(after: ReadonlyMap<string, number>, before: ReadonlyMap<string, number>): boolean {
  return [...after].some(([code, count]) => count > (before.get(code) ?? 0));
}

/** The fix that takes an item out, where that can be spared, behind others that are there anyway. */
export function takingOut(
  context: CheckContext,
  item: Item,
  fix: Omit<Fix, "edits">,
  others: readonly Fix[] = [],
): FixSearch {
  return function* () {
    const edits = [{ range: item.block, text: "" }];
    return (yield* sparing(context, item)) ? [...others, { ...fix, edits }] : others;
  };
}

/**
 * In steps: whether all activities about an item can do without it, but for some that were asked already: they are dealt as before,
 * and nothing more is wrong with them.
 */
export function sparing(
  context: CheckContext,
  item: Item,
  asked: readonly CheckedActivity[] = [],
): Steps<boolean, unknown> {
  return staysSound(context, item, (request) => withoutItem(request, item), asked);
}

/** The same of any change to an item. */
export function* staysSound(
  { activities, press }: CheckContext,
  item: Item,
  change: (request: DealRequest) => DealRequest,
  asked: readonly CheckedActivity[] = [],
): Steps<boolean, unknown> {
  const has = ({ pairs, statements, events, piles }: Section): boolean =>
    [...pairs, ...statements, ...events, ...events.flatMap(({ free }) => free)].some((each) => each === item) ||
    piles.some(({ members }) => members.some((member) => member.item === item));
  for (const activity of activities) {
    const { plan, dealt } = activity;
    const { kind, sections } = plan;
    if (asked.includes(activity) || !kind || !sections.some(has)) continue;
    // What has too little to be dealt tells of its statements all the same.
    if (dealt.deals.length === 0 && claimTroubles(dealt).size === 0) continue;
    yield "trying a fix";
    const request = change(dealt.request);
    const after = kind.dealing ? yield* kind.dealing(request) : kind.deal(request);
    if (dealt.deals.length === 0) {
      if (areMore(claimTroubles(after), claimTroubles(dealt))) return false;
      continue;
    }
    yield "looking what else is wrong then";
    if (after.deals.length === 0) return false;
    if (areMore(yield* troublesOf(kind, after, press), yield* troublesOf(kind, dealt, press))) return false;
  }
  return true;
}
