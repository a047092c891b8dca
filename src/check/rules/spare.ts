import type { ActivityKind, Deal, Dealt } from "../../activities/contract";
import { withoutItem } from "../../activities/without-item";
import type { Item, Section } from "../../unit/unit";
import type { CheckContext } from "../context";

/** How many errors and warnings a kind's own rules find. */
export function troublesOf(kind: ActivityKind | undefined, dealt: Dealt<Deal>, press: CheckContext["press"]): number {
  return (kind?.rules ?? [])
    .flatMap((rule) => rule.check({ dealt, press }).map((report) => report.severity ?? rule.severity))
    .filter((severity) => severity === "error" || severity === "warning").length;
}

/** Whether all activities about an item can do without it: they are dealt as before, and nothing more is wrong with them. */
export function canSpare({ activities, press }: CheckContext, item: Item): boolean {
  const has = ({ pairs, statements, events }: Section): boolean =>
    [...pairs, ...statements, ...events].some((each) => each === item);
  return activities.every(({ plan: { kind, sections }, dealt }) => {
    if (!kind || dealt.deals.length === 0 || !sections.some(has)) return true;
    const after = kind.deal(withoutItem(dealt.request, item));
    return after.deals.length > 0 && troublesOf(kind, after, press) <= troublesOf(kind, dealt, press);
  });
}
