import type { Steps } from "../base/steps";
import { answerKey, differingKeys, type MatchKey } from "../match/relation";
import { originOf } from "../unit/section-memory";
import type { ActivityBlock, Section } from "../unit/unit";
import type { ActivityKind, Deal, DealRequest, Dealt } from "./contract";
import { keysIn } from "./supply";

/*
 * While one section is edited, what is dealt from those above it stays: their items are the very ones of the reading before.
 */

/** The last deal of an activity, with what it was made from. */
const kept = new WeakMap<ActivityBlock, Dealt<Deal>>();

/** Deals, with a pause wherever the kind makes one; what stays from the reading before is taken from there. */
export function* dealing(kind: ActivityKind, request: DealRequest): Steps<Dealt<Deal>> {
  const last = kept.get(request.block);
  const dealt = last && stays(kind, last, request) ? { ...last, request } : yield* anew(kind, request);
  kept.set(request.block, dealt);
  return dealt;
}

function* anew(kind: ActivityKind, request: DealRequest): Steps<Dealt<Deal>> {
  const steps = kind.dealing?.(request);
  if (!steps) return kind.deal(request);
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield `Proving “${request.title}”: ${step.value}`;
  return step.value;
}

function stays({ alone }: ActivityKind, last: Dealt<Deal>, request: DealRequest): boolean {
  const before = last.request;
  const { sections } = request;
  return (
    alone?.(last) === true &&
    alone({ ...last, request }) &&
    sections.length === before.sections.length &&
    sections.every((section, i) => section === before.sections[i]) &&
    factsOf(request) === factsOf(before) &&
    !concerns(sections, before, request)
  );
}

/** Equal where all is that a request says of itself. */
function factsOf({ index, title, options, teaches, explains, refused, classes }: DealRequest): string {
  return JSON.stringify([index, title, options.value, teaches, explains, refused, classes]);
}

/** Whether what one of two relations says of the words of some sections, or of what fits these, is not what the other says. */
function concerns(sections: readonly Section[], before: DealRequest, after: DealRequest): boolean {
  for (const key of differingKeys(before.relation, after.relation)) {
    for (const { relation } of [before, after]) {
      for (const each of [key, ...relation.partners(key)])
        if (sections.some((section) => wordsIn(section).has(each))) return true;
    }
  }
  return false;
}

const words = new WeakMap<Section, ReadonlySet<MatchKey>>();

/** All texts of a section's items, as keys. */
function wordsIn(section: Section): ReadonlySet<MatchKey> {
  const origin = originOf(section);
  const known = words.get(origin);
  if (known) return known;
  const { pairs, statements, events, piles } = section;
  const told = [
    ...pairs.flatMap(({ examples }) => examples),
    ...statements.flatMap((each) => [each, ...(each.correction ? [each.correction] : [])]),
    ...events.flatMap((event) => [event, ...event.free]),
    ...piles.flatMap(({ members }) => members.flatMap((member) => (member.shape === "text" ? member.item : []))),
  ];
  const own = new Set([...keysIn(section).flatMap(({ left, right }) => [...left, ...right]), ...told.map(answerKey)]);
  words.set(origin, own);
  return own;
}
