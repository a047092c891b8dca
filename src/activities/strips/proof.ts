import { upTo } from "../../base/seed";
import type { Proof } from "../../prove/proof";
import type { StoryOrder, StripEvent } from "./model";

/** Whether events in this order tell the story: at each place one that belongs there, equal texts being exchangeable. */
export function tellsStory(events: readonly StripEvent[], order: StoryOrder): boolean {
  return ranked(events).every(({ from, members }) => {
    const here = order.slice(from, from + members.length).map((event) => events[event]?.key ?? "");
    const meant = members.map((event) => events[event]?.key ?? "");
    return here.sort().join("\u0000") === meant.sort().join("\u0000");
  });
}

/** Events of one rank, with the place of the first. */
function ranked(events: readonly StripEvent[]): { readonly from: number; readonly members: number[] }[] {
  const groups: { from: number; members: number[] }[] = [];
  events.forEach(({ rank }, i) => {
    const last = groups.at(-1);
    if (last && events[last.from]?.rank === rank) last.members.push(i);
    else groups.push({ from: i, members: [i] });
  });
  return groups;
}

/**
 * How many orders that differ to the eye tell the story: ∏ m!/∏ c! over the sets of m events that are free among themselves, c of
 * them with one text. Exact up to 2^53, else capped.
 */
export function proveStory(events: readonly StripEvent[]): Proof<StoryOrder> {
  let count = 1n;
  let second: StoryOrder | undefined;
  for (const { from, members } of ranked(events)) {
    const texts = new Map<string, number>();
    members.forEach((event, i) => {
      const key = events[event]?.key ?? "";
      const alike = (texts.get(key) ?? 0) + 1;
      texts.set(key, alike);
      // Multinomials grow one member at a time: (i + 1) / alike, always whole after the division.
      count = (count * BigInt(i + 1)) / BigInt(alike);
    });
    const other = members.find((event) => events[event]?.key !== events[from]?.key);
    if (!second && other !== undefined) {
      second = upTo(events.length).map((event) => (event === from ? other : event === other ? from : event));
    }
  }
  const capped = count > BigInt(Number.MAX_SAFE_INTEGER);
  return {
    status: count === 1n ? "one" : "several",
    count: capped ? Number.MAX_SAFE_INTEGER : Number(count),
    capped,
    nodes: 0,
    by: "certificate",
    ...(second ? { second } : {}),
  };
}
