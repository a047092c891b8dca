import { upTo } from "../../base/seed";
import { answerKey } from "../../match/relation";
import type { Section } from "../../unit/unit";
import { takeSpread } from "../supply";
import type { StripEvent } from "./model";

/** The events of some sections as one story; free events follow theirs and share a rank. `take` of them, chosen by the seed. */
export function storyOf(sections: readonly Section[], take: number | undefined, seed: string): StripEvent[] {
  let rank = 0;
  const groups = sections.map(({ events }) =>
    events.flatMap((event) => {
      const first = toEvent(event, rank++);
      const free = event.free.map((each) => toEvent(each, rank));
      rank++;
      return [first, ...free];
    }),
  );
  return takeSpread(groups, take, seed);
}

function toEvent(
  item: Section["events"][number] | Section["events"][number]["free"][number],
  rank: number,
): StripEvent {
  const { runs, text, range, picture } = item;
  return { runs, text, key: answerKey(item), source: range, item, rank, ...(picture ? { picture } : {}) };
}

/** Places in the story from 0 that an event may take: those of its rank, and of events with the same text. */
export function placesOf(events: readonly StripEvent[], event: StripEvent): number[] {
  const ranks = new Set(events.filter(({ key }) => key === event.key).map(({ rank }) => rank));
  return upTo(events.length).filter((place) => ranks.has(events[place]?.rank ?? -1));
}

/** `3`, `3–5`, `2, 5`: places from 0 as they are counted, from 1. */
export function writePlaces(places: readonly number[]): string {
  const stretches: [number, number][] = [];
  for (const place of places) {
    const last = stretches.at(-1);
    if (last && last[1] === place - 1) last[1] = place;
    else stretches.push([place, place]);
  }
  return stretches.map(([from, to]) => (from === to ? `${from + 1}` : `${from + 1}–${to + 1}`)).join(", ");
}
