import type { Range } from "../../base/range";
import { upTo } from "../../base/seed";
import type { Matching, Worded } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import { type DealtStrips, type StripEvent, type StripsDeal, signOf } from "./model";
import { tellsStory } from "./proof";

/** Indices of the events that only their words tell apart: neither pictures nor those whose place is told. */
function untold({ events, told }: StripsDeal): number[] {
  return upTo(events.length).filter((i) => !events[i]?.picture && !told.includes(i));
}

export function stripTexts({ request }: DealtStrips, deal: StripsDeal): Worded[] {
  return untold(deal).flatMap((i) => {
    const event = deal.events[i];
    return event ? [{ key: event.key, text: event.text, lang: request.teaches }] : [];
  });
}

export function stripPlaces(_: DealtStrips, { events }: StripsDeal, keys: readonly MatchKey[]): Range[] {
  return events.filter(({ key }) => keys.includes(key)).map(({ source }) => source);
}

/** Letters of the strips that can be exchanged under this matching, so that what lies is another order than the story's. */
export function confusedStrips(_: DealtStrips, deal: StripsDeal, { overlooked }: Matching): string[] {
  const { events, dealt } = deal;
  const open = untold(deal);
  const mixed = open.flatMap((one, n) =>
    open.slice(n + 1).flatMap((other) => (isMixedUp(events, one, other, overlooked) ? [one, other] : [])),
  );
  return [...new Set(mixed)].map((event) => signOf(dealt.indexOf(event))).sort();
}

/** Whether two events look alike and their exchange spoils the story. */
function isMixedUp(
  events: readonly StripEvent[],
  one: number,
  other: number,
  overlooked: Matching["overlooked"],
): boolean {
  const [a, b] = [events[one]?.key ?? "", events[other]?.key ?? ""];
  if (a === b || !overlooked?.like(a).has(b)) return false;
  const exchanged = upTo(events.length).map((i) => (i === one ? other : i === other ? one : i));
  return !tellsStory(events, exchanged);
}
