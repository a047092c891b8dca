import type { Deal, DealRequest, Dealt, Overlooked } from "../../activities/contract";
import type { Range } from "../../base/range";
import type { Steps } from "../../base/steps";
import { soundAlike, soundingAlike } from "../../match/heard";
import { keptLookAlikes, type LookAlikes, overlooking } from "../../match/look-alikes";
import type { MatchKey, Relation } from "../../match/relation";
import type { CheckContext, CheckedActivity } from "../context";
import { itemAt } from "../item-at";
import { areMeant } from "./look-alike-fixes";
import { placesOf } from "./look-alike-phrases";
import type { Words } from "./look-alike-words";

export type Hook = Overlooked<Deal, Dealt<Deal>>;

/** Groups that do harm, with the pieces that may change places and where the texts stand, in the unit's order. */
export interface Harm {
  readonly groups: readonly LookAlikes[];
  readonly pieces: readonly string[];
  readonly places: readonly Range[];
  /** They are said aloud, and sound the same. */
  readonly unheard: boolean;
}

/** What does harm in a deal of an activity. */
export interface Cause extends Harm {
  readonly activity: CheckedActivity;
  readonly hook: Hook;
  /** Where of larger groups, that can be told by ear, some texts sound the same: those. */
  readonly within?: Harm;
}

export interface Judged {
  readonly activity: CheckedActivity;
  /** Groups that nothing else keeps apart, by cause, deal by deal. */
  readonly causes: readonly Cause[];
  /** Groups that stand on the pieces of a deal, and those of them that do no harm there, proven. */
  readonly met: readonly LookAlikes[];
  readonly safe: readonly LookAlikes[];
  /** What may go wrong all the same with those that do no harm, by their texts. */
  readonly besides: ReadonlyMap<MatchKey, string>;
  /** A deal is not settled, with the differences or without them: then nothing is claimed. */
  readonly open: boolean;
}

interface Around {
  readonly context: CheckContext;
  readonly words: Words;
}

/** In steps: asks the prover what becomes of an activity's deals when the differences are overlooked. */
export function* judging(activity: CheckedActivity, around: Around): Steps<Judged> {
  const { words } = around;
  const { plan, dealt } = activity;
  const { kind } = plan;
  const hook = kind?.overlooked;
  const causes: Cause[] = [];
  const met: LookAlikes[] = [];
  const safe: LookAlikes[] = [];
  const besides = new Map<MatchKey, string>();
  let open = false;
  if (!kind || !hook) return { activity, causes, met, safe, besides, open };
  const { relation } = dealt.request;
  for (const deal of dealt.deals) {
    yield "comparing words";
    const alike = alikeIn(hook, dealt, deal);
    yield "asking which do the same";
    const groups = harmful(alike, hook, dealt, deal, words);
    met.push(...groups);
    if (deal.proof.status !== "one" && !deal.proof.accepted) {
      open = true;
      continue;
    }
    if (groups.length === 0) continue;
    const confused = (some: readonly LookAlikes[]): readonly string[] | undefined =>
      hook.confused(dealt, deal, overlooking(relation, some));
    yield "asking what becomes of it";
    const together = confused(groups);
    if (!together) {
      open = true;
      continue;
    }
    if (together.length === 0) {
      safe.push(...groups);
      for (const group of groups) {
        const still = hook.besides?.(dealt, deal, overlooking(relation, [group]));
        if (still !== undefined) for (const key of group.keys) besides.set(key, still);
      }
      continue;
    }
    const stands = (group: LookAlikes): readonly Range[] => placesIn(hook, dealt, deal, group, words);
    const itemsOf = (group: LookAlikes): string =>
      [...new Set(stands(group).map((place) => (itemAt(around.context.unit, place)?.block ?? place).start))].join(" ");
    for (const cause of yield* causesOf(groups, confused, itemsOf)) {
      const isUnheard = ({ keys }: LookAlikes): boolean => hook.heard?.(dealt, deal, keys) === true && soundAlike(keys);
      const harm = (some: readonly LookAlikes[]): Harm => ({
        groups: some,
        pieces: confused(some) ?? together,
        places: [...new Set(some.flatMap(stands))].sort((a, b) => a.start - b.start),
        unheard: some.some(isUnheard),
      });
      const whole = harm(cause);
      const some = whole.unheard
        ? []
        : cause.flatMap(partsOf).filter((part) => isUnheard(part) && confused([part])?.length);
      causes.push({ activity, hook, ...whole, ...(some.length > 0 ? { within: harm(some) } : {}) });
    }
  }
  return { activity, causes, met, safe, besides, open };
}

const known = new WeakMap<Deal, readonly LookAlikes[]>();

/** The texts of a deal that look alike, looked at once. */
function alikeIn(hook: Hook, dealt: Dealt<Deal>, deal: Deal): readonly LookAlikes[] {
  const found = known.get(deal) ?? keptLookAlikes(hook.texts(dealt, deal));
  known.set(deal, found);
  return found;
}

/** Texts of a larger group that sound the same. */
function partsOf(group: LookAlikes): readonly LookAlikes[] {
  return group.keys.length > 2 ? soundingAlike(group) : [];
}

/** Where the texts of a group stand, in the unit's order. */
function placesIn(hook: Hook, dealt: Dealt<Deal>, deal: Deal, group: LookAlikes, words: Words): readonly Range[] {
  const own = hook.places?.(dealt, deal, group.keys) ?? [];
  return own.length > 0 ? [...own].sort((a, b) => a.start - b.start) : placesOf(group, words);
}

/**
 * What does harm, cause by cause: groups that do so alone, those of the same items or about the same pieces together, as the words
 * and the glosses of two pairs; else as few groups as do so only together.
 */
function* causesOf(
  groups: readonly LookAlikes[],
  confused: (some: readonly LookAlikes[]) => readonly string[] | undefined,
  itemsOf: (group: LookAlikes) => string,
): Steps<(readonly LookAlikes[])[]> {
  const alone: LookAlikes[] = [];
  for (const group of groups) {
    yield "asking what becomes of each";
    if (confused([group])?.length) alone.push(group);
  }
  if (alone.length === 0) {
    let needed = groups;
    for (const group of groups) {
      yield "asking what becomes without one";
      const others = needed.filter((each) => each !== group);
      if (others.length > 0 && confused(others)?.length) needed = others;
    }
    return [needed];
  }
  const causes: { readonly names: readonly string[]; readonly groups: LookAlikes[] }[] = [];
  for (const group of alone) {
    const names = [`items ${itemsOf(group)}`, `pieces ${confused([group])?.join(" ")}`].filter(
      (name) => name !== "items ",
    );
    const known = causes.find((cause) => cause.names.some((name) => names.includes(name)));
    if (known) known.groups.push(group);
    else causes.push({ names, groups: [group] });
  }
  return causes.map((cause) => cause.groups);
}

/**
 * Those of the look-alikes among a deal's texts that do not the same anyway, and that nobody teaches as a contrast; of those that are taught such
 * as are said aloud and sound the same, since nobody hears that contrast.
 */
function harmful(
  alike: readonly LookAlikes[],
  hook: Hook,
  dealt: Dealt<Deal>,
  deal: Deal,
  { taught }: Words,
): readonly LookAlikes[] {
  const { relation } = dealt.request;
  const doSame = (keys: readonly MatchKey[]): boolean => {
    const roles = keys.map((key) => hook.role?.(dealt, deal, key));
    const played = new Set(roles).size > 1;
    return !played && (roles[0] !== undefined || answerAlike(relation, keys));
  };
  const isHeard = ({ keys }: LookAlikes): boolean => hook.heard?.(dealt, deal, keys) === true;
  return alike
    .flatMap((group) =>
      group.keys.some((key) => !taught.has(key)) ? [group] : soundingAlike(group).filter((each) => isHeard(each)),
    )
    .filter(({ keys }) => !doSame(keys));
}

/** Whether the same texts answer all of some. */
export function answerAlike(relation: Relation, [first, ...others]: readonly MatchKey[]): boolean {
  const partners = relation.partners(first ?? "");
  return others.every((key) => {
    const own = relation.partners(key);
    if (own.size !== partners.size) return false;
    for (const each of own) if (!partners.has(each)) return false;
    return true;
  });
}

/**
 * A changed request dealt, where each deal is as it is meant and, if the difference is overlooked, these groups do no harm any
 * more and no other one does that did none; else undefined.
 */
export function* mended(
  {
    activity: {
      plan: { kind },
      dealt,
    },
    hook,
    groups: all,
    within,
  }: Cause,
  words: Words,
  request: DealRequest,
): Steps<Dealt<Deal> | undefined> {
  yield "trying a fix";
  const groups = within?.groups ?? all;
  const after = kind?.dealing ? yield* kind.dealing(request) : kind?.deal(request);
  if (!after || !areMeant(after)) return undefined;
  yield "looking whether it helps";
  const left = yield* culpritsOf(hook, after, words);
  if (!left || left.length === 0) return left && after;
  const before = (yield* culpritsOf(hook, dealt, words)) ?? [];
  const isIn = (one: LookAlikes, other: LookAlikes): boolean => one.keys.every((key) => other.keys.includes(key));
  const known = (each: LookAlikes): boolean => before.some((other) => isIn(each, other));
  const isLeft = (each: LookAlikes): boolean => groups.some((group) => isIn(each, group) || isIn(group, each));
  return left.every((each) => known(each) && !isLeft(each)) ? after : undefined;
}

/** Groups that can be mistaken in some deal; undefined where that is not settled, or where only several of them together can be. */
function* culpritsOf(hook: Hook, dealt: Dealt<Deal>, words: Words): Steps<readonly LookAlikes[] | undefined> {
  const { relation } = dealt.request;
  const culprits: LookAlikes[] = [];
  for (const deal of dealt.deals) {
    yield "comparing words";
    const groups = harmful(keptLookAlikes(hook.texts(dealt, deal)), hook, dealt, deal, words);
    yield "asking what becomes of it";
    const together = hook.confused(dealt, deal, overlooking(relation, groups));
    if (!together) return undefined;
    if (together.length === 0) continue;
    const alone: LookAlikes[] = [];
    for (const group of groups) {
      yield "asking what becomes of each";
      if (hook.confused(dealt, deal, overlooking(relation, [group]))?.length) alone.push(group);
    }
    if (alone.length === 0) return undefined;
    culprits.push(...alone);
  }
  return culprits;
}
