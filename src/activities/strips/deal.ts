import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import type { DealRequest } from "../contract";
import { copiesOf } from "../copies";
import type { DealtStrips, StoryOrder, StripEvent, StripsDeal } from "./model";
import { type StripsOptions, stripsOptions } from "./options";
import { proveStory, tellsStory } from "./proof";
import { storyOf } from "./story";

/** Fewer events than these give nothing to put in order. */
export const fewestEvents = 3;

/** Orders drawn before one that is right, or that another version has, is taken. */
const attempts = 60;

export function dealStrips(request: DealRequest): DealtStrips {
  const options = stripsOptions(request.options);
  const events = storyOf(request.sections, options.take, String(options.seed));
  const base = { request, options, events, used: [] };
  const enough = events.length >= fewestEvents || (events.length === 0 && options.blanks >= fewestEvents);
  if (!enough) return { ...base, summary: "strips", deals: [] };
  const proof = proveStory(events);
  const plans = upTo(options.versions).map((i) => ({ level: "gentle", version: i + 1 }));
  const copies = copiesOf({ ...options, ...(copiesFor(options) ?? {}) }, request.classes, plans);
  const taken = new Set<string>();
  const deals = plans.map(({ level, version }, i): StripsDeal => {
    const { dealt, attempt } = drawOrder(events, `strips/${options.seed}/${version}`, taken);
    taken.add(dealt.join(" "));
    const texts = dealt.map((event) => printOf(events[event]));
    const code = dealCode(JSON.stringify(["strips", version, options.blanks, options.backs, dealt, texts]));
    const inOrder = events.length > 0 && tellsStory(events, dealt);
    return { code, level, version, attempt, copies: copies[i] ?? 1, dealt, inOrder, proof };
  });
  return { ...base, deals, summary: summaryOf(events.length, options.blanks) };
}

/** What of an event can be seen. */
function printOf(event: StripEvent | undefined): unknown {
  return event?.picture ? [event.picture.path, event.runs] : event?.runs;
}

/** With desks, a set for each desk. */
function copiesFor({ copies, desks }: StripsOptions): Pick<StripsOptions, "copies"> | undefined {
  return copies === undefined && desks !== undefined ? { copies: desks } : undefined;
}

export function summaryOf(events: number, blanks: number): string {
  if (events === 0) return `${blanks} blank strips`;
  return blanks > 0 ? `${events} strips and ${blanks} blank` : `${events} strips`;
}

/**
 * A shuffled order that does not tell the story, that no earlier version has, and in which no three strips lie as they belong.
 * Where there is none, the first that is at least wrong; where every order is right, the first.
 */
function drawOrder(
  events: readonly StripEvent[],
  stream: string,
  taken: ReadonlySet<string>,
): { readonly dealt: StoryOrder; readonly attempt: number } {
  let wrong: { readonly dealt: StoryOrder; readonly attempt: number } | undefined;
  for (let attempt = 0; attempt < attempts; attempt++) {
    const dealt = new Random(`${stream}/${attempt}`).shuffle(upTo(events.length));
    if (tellsStory(events, dealt)) continue;
    if (!taken.has(dealt.join(" ")) && longestRow(dealt) < 3) return { dealt, attempt };
    if (!wrong || (taken.has(wrong.dealt.join(" ")) && !taken.has(dealt.join(" ")))) wrong = { dealt, attempt };
  }
  return wrong ?? { dealt: new Random(`${stream}/0`).shuffle(upTo(events.length)), attempt: 0 };
}

/** Most events that lie one after the other as in the unit. */
function longestRow(order: StoryOrder): number {
  let [row, longest] = [1, 1];
  order.forEach((event, i) => {
    row = i > 0 && order[i - 1] === event - 1 ? row + 1 : 1;
    longest = Math.max(longest, row);
  });
  return longest;
}
