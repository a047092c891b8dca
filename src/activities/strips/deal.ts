import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import { finished, mapped, type Steps, told } from "../../base/steps";
import type { DealRequest } from "../contract";
import { blanksText, copiesOf } from "../copies";
import { type DealPlan, planCode, plansOf, streamOf } from "../levels";
import { chooseForVersions, type Uses } from "../supply";
import { withDesks } from "./desks";
import type { DealtStrips, StoryOrder, StripEvent, StripsDeal } from "./model";
import { type StripsOptions, stripsOptions } from "./options";
import { proveStory, tellsStory } from "./proof";
import { printedEvent, storyOf, takeEvents, toldOf } from "./story";

/** Fewer events than these give nothing to put in order. */
export const fewestEvents = 3;

/** Orders drawn before one that is right, or that another version has, is taken. */
const attempts = 60;

/** What strips are without help: `gentle` tells places besides. */
const plainLevel = "hard";

export function dealStrips(request: DealRequest): DealtStrips {
  return finished(dealingStrips(request));
}

/** The same with a pause after what is chosen, and after each deal. */
export function* dealingStrips(request: DealRequest): Steps<DealtStrips> {
  const options = withDesks(stripsOptions(request.options), request);
  const groups = storyOf(request.sections);
  const choices = choicesFrom(groups, options);
  const chosen = new Set(choices.flat());
  const events = groups.flat().filter((event) => chosen.has(event));
  const base = { request, options, events, used: [] };
  const fewest = Math.min(...choices.map(({ length }) => length));
  const enough = fewest >= fewestEvents || (events.length === 0 && options.blanks >= fewestEvents);
  if (!enough) return { ...base, summary: "strips", deals: [] };
  const proofs = choices.map((own) => proveStory(own));
  yield "arranging";
  const plans = options.desks === undefined ? plansOf(options, plainLevel) : deskPlans(options, options.desks);
  const copies = copiesOf({ ...options, ...(copiesFor(options) ?? {}) }, request.classes, plans);
  const taken = new Set<string>();
  const deal = (plan: DealPlan, i: number): StripsDeal => {
    const { level, version } = plan;
    const [own = [], proof = proveStory([])] = [choices[version - 1], proofs[version - 1]];
    const { dealt, attempt } = drawOrder(own, streamOf("strips", options.seed, plan, plainLevel), taken);
    taken.add(dealt.join(" "));
    const told = level === "gentle" ? toldOf(own) : [];
    const texts = dealt.map((event) => printOf(printedEvent({ events: own, told }, event)));
    const code = dealCode(
      JSON.stringify(["strips", planCode(plan, plainLevel), options.blanks, options.backs, dealt, texts]),
    );
    const inOrder = own.length > 0 && tellsStory(own, dealt);
    const desk = options.desks === undefined ? {} : { desk: version };
    return { code, level, version, ...desk, attempt, copies: copies[i] ?? 1, events: own, told, dealt, inOrder, proof };
  };
  const deals = yield* told(mapped(plans, deal), "arranging");
  const helpless = deals.some(({ level, told }) => level === "gentle" && told.length === 0);
  return {
    ...base,
    deals,
    summary: summaryOf(fewest, { options, request }, Math.max(...choices.map(({ length }) => length))),
    ...(options.levels !== undefined && helpless ? { sameLevels: whyHelpless(events) } : {}),
  };
}

/** The events of each version; with desks of each desk, which tell the stories of the sections in turn. */
function choicesFrom(groups: readonly (readonly StripEvent[])[], options: StripsOptions): (readonly StripEvent[])[] {
  const { versions, desks, take, seed } = options;
  const choose = (story: readonly (readonly StripEvent[])[], count: number): (readonly StripEvent[])[] =>
    chooseForVersions(count, seed, (own, uses: Uses<StripEvent>) => takeEvents(story, take, own, uses));
  if (desks === undefined) return choose(groups, versions);
  const stories = groups.filter(({ length }) => length > 0);
  const count = Math.max(1, stories.length);
  const chosen = upTo(count).map((i) => choose(stories.slice(i, i + 1), Math.ceil(desks / count)));
  return upTo(desks).map((desk) => chosen[desk % count]?.[Math.floor(desk / count)] ?? []);
}

/** A version a desk; of several levels the first desks have the first. */
function deskPlans({ levels = [plainLevel] }: StripsOptions, desks: number): DealPlan[] {
  return upTo(desks).map((i) => ({
    level: levels[Math.floor((i * levels.length) / desks)] ?? plainLevel,
    version: i + 1,
  }));
}

function whyHelpless(events: readonly StripEvent[]): string {
  return events.length === 0
    ? "gentle tells the places of two events, and here the learners write them all"
    : "gentle tells the places of two events, and here no event has a place of its own";
}

/** What of an event can be seen. */
function printOf(event: StripEvent | undefined): unknown {
  return event?.picture ? [event.picture.path, event.runs] : event?.runs;
}

/** With desks, one set for each of them. */
function copiesFor({ copies, desks }: StripsOptions): Pick<StripsOptions, "copies"> | undefined {
  return copies === undefined && desks !== undefined ? { copies: desks } : undefined;
}

/** `8 strips and 2 blank`; `6–8 strips` where desks tell stories of several lengths. */
export function summaryOf(
  events: number,
  { options, request }: Pick<DealtStrips, "options" | "request">,
  most = events,
): string {
  const blank = blanksText(options, request.classes);
  if (events === 0) return (blank ?? "0").replace("blank", "blank strips");
  const printed = most > events ? `${events}–${most} strips` : `${events} strips`;
  return blank === undefined ? printed : `${printed} and ${blank}`;
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
