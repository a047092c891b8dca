import type { ActivityKind, Deal, Dealt } from "../../activities/contract";
import { withoutItem } from "../../activities/without-item";
import type { Fix, FixSearch } from "../../base/finding";
import type { Steps } from "../../base/steps";
import type { Item, Section } from "../../unit/unit";
import type { CheckContext } from "../context";

/** How many errors and warnings a kind's own rules find. */
export function troublesOf(kind: ActivityKind | undefined, dealt: Dealt<Deal>, press: CheckContext["press"]): number {
  return (kind?.rules ?? [])
    .flatMap((rule) => rule.check({ dealt, press }).map((report) => report.severity ?? rule.severity))
    .filter((severity) => severity === "error" || severity === "warning").length;
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

/** In steps: whether all activities about an item can do without it: they are dealt as before, and nothing more is wrong with them. */
function* sparing({ activities, press }: CheckContext, item: Item): Steps<boolean> {
  const has = ({ pairs, statements, events }: Section): boolean =>
    [...pairs, ...statements, ...events].some((each) => each === item);
  for (const { plan, dealt } of activities) {
    const { kind, sections } = plan;
    if (!kind || dealt.deals.length === 0 || !sections.some(has)) continue;
    yield "trying a fix";
    const request = withoutItem(dealt.request, item);
    const after = kind.dealing ? yield* kind.dealing(request) : kind.deal(request);
    yield "looking what else is wrong then";
    if (after.deals.length === 0 || troublesOf(kind, after, press) > troublesOf(kind, dealt, press)) return false;
  }
  return true;
}
