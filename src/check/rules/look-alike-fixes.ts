import type { Deal, DealRequest, Dealt } from "../../activities/contract";
import { setOption } from "../../activities/edits";
import { isMeant } from "../../activities/trial";
import { withoutItem } from "../../activities/without-item";
import type { Fix } from "../../base/finding";
import type { Range } from "../../base/range";
import { type Steps, sifted } from "../../base/steps";
import { type ActivityBlock, type Item, isPair, type Unit } from "../../unit/unit";
import type { CheckedActivity } from "../context";
import { itemAt } from "../item-at";

/* What helps where words are easily taken for one another; what changes pieces is dealt and judged anew before it is offered. */

const reason = "the difference is meant";

/** Says at the item, or in the activity, that a difference is meant; undefined where no comment can stand. */
export function meantFix(unit: Unit, place: Range): Fix | undefined {
  const item = itemAt(unit, place);
  if (item) {
    const edits = [
      { range: { start: item.range.end, end: item.range.end }, text: ` <!-- allow look-alike: ${reason} -->` },
    ];
    return { title: "Say here that the difference is meant", edits };
  }
  const block = unit.activities.find(({ fence }) => fence.start <= place.start && place.start < fence.end);
  if (!block || block.options.broken || has(block, "allow")) return undefined;
  const edits = [setOption(block, unit.text, "allow", `{look-alike: ${reason}}`)];
  return { title: "Say here that the difference is meant", edits };
}

function has({ options }: ActivityBlock, key: string): boolean {
  return options.entries.some((entry) => entry.key === key);
}

/** In steps: whether after a change each deal is proven, nothing on it can be mistaken any more, and nothing else goes wrong. */
export type StaysApart = (request: DealRequest) => Steps<boolean, unknown>;

/** Items at some places, the last one first. */
export function itemsAt(unit: Unit, places: readonly Range[]): Item[] {
  return [...new Set([...places].reverse().flatMap((place) => itemAt(unit, place) ?? []))];
}

/** In steps: those of some items without which nothing can be mistaken in an activity, and it loses nothing else. */
export function* helping(
  { dealt }: CheckedActivity,
  items: readonly Item[],
  staysApart: StaysApart,
): Steps<Item[], unknown> {
  return yield* sifted(items, (item) => staysApart(withoutItem(dealt.request, item)));
}

export function takingOutOne(item: Item): Fix {
  return { title: `Take out “${textOf(item)}”`, edits: [{ range: item.block, text: "" }] };
}

function textOf(item: Item): string {
  if (isPair(item)) return `${item.left.answers[0].text} = ${item.right.answers[0].text}`;
  return "text" in item ? String(item.text) : "";
}

/** Whether all deals are there and as they are meant. */
export function areMeant({ deals }: Dealt<Deal>): boolean {
  return deals.length > 0 && deals.every(isMeant);
}
