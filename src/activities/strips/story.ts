import { upTo } from "../../base/seed";
import { answerKey } from "../../match/relation";
import type { Section } from "../../unit/unit";
import { takeSpread, type Uses } from "../supply";
import type { StripEvent, StripsDeal } from "./model";

/** The events of some sections as one story, by section; free events follow theirs and share a rank. */
export function storyOf(sections: readonly Section[]): StripEvent[][] {
  let rank = 0;
  return sections.map(({ events }) =>
    events.flatMap((event) => {
      const first = toEvent(event, rank++);
      const free = event.free.map((each): StripEvent => ({ ...toEvent(each, rank), under: event }));
      rank++;
      return [first, ...free];
    }),
  );
}

/** Some events of a story, so many as `take` says; an event under another one is never without it. */
export function takeEvents(
  groups: readonly (readonly StripEvent[])[],
  take: number | undefined,
  seed: string,
  uses: Uses<StripEvent>,
): StripEvent[] {
  const chosen = new Set(takeSpread(groups, take, seed, uses));
  const all = groups.flat();
  for (const event of [...chosen]) {
    const head = all.find(({ item }) => item === event.under);
    if (!head || chosen.has(head)) continue;
    chosen.delete(event);
    chosen.add(head);
  }
  return all.filter((event) => chosen.has(event));
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

/** With fewer events than these, only the first place is told: two would leave nothing to find out. */
const fewestForBoth = 5;

/**
 * Events whose place the gentle level tells, as indices: the first and the last of those that have a place of their own. Empty
 * where none has.
 */
export function toldOf(events: readonly StripEvent[]): number[] {
  const fixed = upTo(events.length).filter((i) => {
    const event = events[i];
    return event !== undefined && placesOf(events, event).length === 1;
  });
  const [first, last] = [fixed[0], fixed.at(-1)];
  if (first === undefined || last === undefined) return [];
  return first === last || events.length < fewestForBoth ? [first] : [first, last];
}

/** An event as its strip shows it: with its place before it, where that is told. */
export function printedEvent(
  { events, told }: Pick<StripsDeal, "events" | "told">,
  index: number,
): StripEvent | undefined {
  const event = events[index];
  if (!event || !told.includes(index)) return event;
  const place = `${index + 1}. `;
  return { ...event, runs: [{ text: place, bold: true }, ...event.runs], text: place + event.text };
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
