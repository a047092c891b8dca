import { upTo } from "../../base/seed";
import { answerKey, type MatchKey, type Relation } from "../../match/relation";
import { strongComponents } from "../../prove/items/components";
import { tally } from "../../prove/orders/orders";
import type { Pair } from "../../unit/unit";
import { type Choice, choosePairs, mostWithoutClash, type Rivals } from "../choice";
import type { DealRequest } from "../contract";
import { type DealPlan, plansOf, streamOf } from "../levels";
import { toPrinted } from "../printed";
import { isFormPair, pairsOf } from "../supply";
import { chooseDecoys } from "./decoys";
import type { LoopCard } from "./model";
import { type LoopOptions, loopOptions } from "./options";

/* Which pairs make a circle, and how many cards belong nowhere in it; nothing here hangs on the order of its cards. */

/** Of three cards in a circle each can be found by leaving out the other. */
export const fewestPairs = 4;

/** A hard circle has a decoy for each so many cards, where nothing says how many. Ours. */
const cardsForDecoy = 6;

/** What is dealt of an activity, before its circles are drawn. */
export interface CirclePlan {
  /** Pairs that no circle has room for, where nothing says how many it takes. */
  readonly leftOut: number;
  /** None where nothing can be dealt. */
  readonly plans: readonly DealPlan[];
  /** The pairs of each version's circle, and how often each pair is used. */
  readonly choices: readonly (readonly Pair[])[];
  readonly uses: ReadonlyMap<Pair, number>;
  /** For each plan its cards that belong nowhere. */
  readonly decoys: readonly (readonly LoopCard[])[];
  /** Cards that some hard circle lacks of those that belong nowhere, and how many the one with the fewest has. */
  readonly missingDecoys: number;
  readonly fewestDecoys: number;
}

/** The level that the other options amount to. */
export function plainLevel({ decoys = 0 }: LoopOptions): "gentle" | "hard" {
  return decoys === 0 ? "gentle" : "hard";
}

const plans = new WeakMap<DealRequest, CirclePlan>();

/** Planned once for a request, however often it is asked for. */
export function planCircles(request: DealRequest): CirclePlan {
  const plan = plans.get(request) ?? planFor(request);
  plans.set(request, plan);
  return plan;
}

function planFor(request: DealRequest): CirclePlan {
  const { decoys = 0, levels, take } = loopOptions(request.options);
  if (!levels?.includes("hard") && decoys === 0) return planned(request, take, 0);
  const pairs = stockOf(request).size;
  const asked =
    loopOptions(request.options).decoys ?? Math.max(1, Math.floor(Math.min(take ?? pairs, pairs) / cardsForDecoy));
  const plan = planned(request, take, asked);
  // Decoys may have no words but those of the circle, where nothing says how many pairs it takes.
  if (take !== undefined) return plan;
  for (let count = asked; count > asked - plan.missingDecoys; count--) {
    if (pairs - 2 * count < fewestPairs) continue;
    const smaller = planned(request, pairs - 2 * count, count);
    if (smaller.missingDecoys === 0) return { ...smaller, missingDecoys: asked - count };
  }
  return plan;
}

/** The pairs of each version's circle; none where nothing can be dealt. */
export function circlePairs(request: DealRequest): readonly (readonly Pair[])[] {
  const { decoys = 0, levels, take } = loopOptions(request.options);
  // Cards that belong nowhere have a say only where nothing says how many pairs are taken.
  if (take === undefined && (levels?.includes("hard") || decoys > 0)) return planCircles(request).choices;
  const { pairs, size } = stockOf(request);
  const wanted = Math.min(take ?? size, pairs.length);
  return wanted < fewestPairs ? [] : chooseCircles(request, take).choices;
}

function planned(request: DealRequest, take: number | undefined, count: number): CirclePlan {
  const options = loopOptions(request.options);
  const { pairs, size } = stockOf(request);
  const wanted = Math.min(take ?? size, pairs.length);
  const leftOut = take === undefined ? pairs.length - wanted : 0;
  const nothing = { plans: [], choices: [], uses: new Map(), decoys: [], missingDecoys: 0, fewestDecoys: 0 };
  if (wanted < fewestPairs) return { leftOut, ...nothing };
  const plain = plainLevel(options);
  const plans = plansOf(options, plain);
  const { choices, uses } = chooseCircles(request, take);
  const decoys = plans.map((plan) => {
    if (plan.level !== "hard" || count === 0) return [];
    const circle = toCards(choices[plan.version - 1] ?? [], request);
    return chooseDecoys(circle, count, request, `${streamOf("loop", options.seed, plan, plain)}/decoys`);
  });
  const hard = decoys.filter((_, i) => plans[i]?.level === "hard");
  const fewestDecoys = hard.length === 0 ? count : Math.min(...hard.map(({ length }) => length));
  return { leftOut, plans, choices, uses, decoys, missingDecoys: count - fewestDecoys, fewestDecoys };
}

/** What there is to choose from. */
interface Stock {
  /** The pairs of each section, and of all. */
  readonly groups: readonly (readonly Pair[])[];
  readonly pairs: readonly Pair[];
  readonly clash: (p: Pair, q: Pair) => boolean;
  readonly rivals: Rivals;
  /** For each pair those whose answers its prompt has besides its own. */
  readonly also: Rivals;
  /**
   * How many pairs a circle has where nothing says how many: all that are written, and the cells of forms tables, but of cells
   * that could follow each other's prompts one only; all where too few would be left.
   */
  readonly size: number;
}

const stocks = new WeakMap<DealRequest, Stock>();

function stockOf(request: DealRequest): Stock {
  const known = stocks.get(request);
  if (known) return known;
  const groups = request.sections.map(pairsOf);
  const pairs = groups.flat();
  const { rivals, also } = rivalsAmong(pairs, request.relation);
  const clash = (p: Pair, q: Pair): boolean => rivals.get(p)?.has(q) === true;
  const own = pairs.filter((pair) => !isFormPair(pair));
  for (const pair of pairs) if (isFormPair(pair) && !own.some((other) => clash(pair, other))) own.push(pair);
  const stock = { groups, pairs, clash, rivals, also, size: own.length < fewestPairs ? pairs.length : own.length };
  stocks.set(request, stock);
  return stock;
}

/** For each pair those of which one's prompt is answered by the other's answer, so that the other's card could come next; and which. */
function rivalsAmong(pairs: readonly Pair[], relation: Relation): Pick<Stock, "rivals" | "also"> {
  const answering = new Map<MatchKey, Pair[]>();
  const rivals = new Map<Pair, Set<Pair>>();
  const also = new Map<Pair, Set<Pair>>();
  for (const pair of pairs) {
    const key = answerKey(pair.right.answers[0]);
    const known = answering.get(key);
    if (known) known.push(pair);
    else answering.set(key, [pair]);
    rivals.set(pair, new Set());
    also.set(pair, new Set());
  }
  for (const [pair, own] of rivals) {
    for (const key of relation.partners(answerKey(pair.left.answers[0])))
      for (const other of answering.get(key) ?? []) {
        if (other === pair) continue;
        own.add(other);
        also.get(pair)?.add(other);
        rivals.get(other)?.add(pair);
      }
  }
  return { rivals, also };
}

/** The pairs of each version's circle, and how often each pair is used. */
function chooseCircles(
  request: DealRequest,
  take: number | undefined,
): { readonly choices: readonly (readonly Pair[])[]; readonly uses: ReadonlyMap<Pair, number> } {
  const { seed, versions } = loopOptions(request.options);
  const { groups, clash, rivals, size } = stockOf(request);
  const uses = new Map<Pair, number>();
  const choices = upTo(versions).map((i) => {
    const choice = { clash, rivals, uses, stream: choiceStream(seed, i + 1) };
    const chosen = take === undefined ? allButTwins(groups, size, choice) : choosePairs(groups, take, choice);
    for (const pair of chosen) uses.set(pair, (uses.get(pair) ?? 0) + 1);
    return chosen;
  });
  return { choices, uses };
}

/** All written pairs, and of the cells of forms tables as many as make up the number, by the seed. */
function allButTwins(groups: readonly (readonly Pair[])[], size: number, choice: Choice): readonly Pair[] {
  const pairs = groups.flat();
  if (size >= pairs.length) return pairs;
  const written = pairs.filter((pair) => !isFormPair(pair));
  const free = (pair: Pair): boolean => isFormPair(pair) && !written.some((other) => choice.clash(pair, other));
  const forms = new Set(
    choosePairs(
      groups.map((group) => group.filter(free)),
      size - written.length,
      choice,
    ),
  );
  return pairs.filter((pair) => !isFormPair(pair) || forms.has(pair));
}

/** The most pairs that the first circle can take before one of them clashes. */
export function mostSound(request: DealRequest): number {
  const { groups, clash, rivals } = stockOf(request);
  return mostWithoutClash(groups, { clash, rivals, stream: choiceStream(loopOptions(request.options).seed, 1) });
}

function choiceStream(seed: number, version: number): string {
  return `loop/${seed}/${version}/choice`;
}

/**
 * How many cards of the circles, or only those with one answer, could follow where they are not meant to, without dealing: a card
 * fits by its pair, wherever it stands. `undefined` where nothing can be dealt.
 */
export function clashesAhead(request: DealRequest, only?: MatchKey): number | undefined {
  const choices = circlePairs(request);
  if (choices.length === 0) return undefined;
  return choices.reduce((sum, pairs) => {
    const answers = pairs.map((pair) => answerKey(pair.right.answers[0]));
    const times = tally(only === undefined ? answers : answers.filter((answer) => answer === only));
    const clashes = pairs.map((pair, i) => {
      const prompt = answerKey(pair.left.answers[0]);
      let fitting = 0;
      for (const partner of request.relation.partners(prompt)) fitting += times.get(partner) ?? 0;
      const own = answers[i] ?? "";
      return fitting - (times.has(own) && request.relation.fits(prompt, own) ? 1 : 0);
    });
    return sum + clashes.reduce((total, each) => total + each, 0);
  }, 0);
}

/**
 * Whether the cards make one full circle in whatever order they are dealt: for a second one three cards or more change what follows
 * them in turn, and two that change alone part the circle. False says nothing.
 */
export function isSurelyOne(request: DealRequest): boolean {
  const { also } = stockOf(request);
  const choices = circlePairs(request);
  return choices.length > 0 && choices.every((pairs) => changing(pairs, also) < 3);
}

/** How many of some pairs can get another answer, where another pair takes theirs in turn. */
function changing(pairs: readonly Pair[], also: Rivals): number {
  const numbers = new Map(pairs.map((pair, i) => [pair, i]));
  const arcs = pairs.map((pair) => [...(also.get(pair) ?? [])].flatMap((other) => numbers.get(other) ?? []));
  const sizes = tally([...strongComponents(arcs)].map(String));
  return [...sizes.values()].reduce((sum, size) => sum + (size > 1 ? size : 0), 0);
}

/** Whether cards that belong nowhere are fewer than they are of another request, or none are left; asked only where there are any. */
export function losesDecoys(request: DealRequest, before: DealRequest): boolean {
  const { decoys = 0, levels } = loopOptions(request.options);
  const isHard = levels?.includes("hard") === true;
  if (decoys === 0 && !isHard) return false;
  const [now, then] = [planCircles(request), planCircles(before)];
  if (decoys > 0 && now.missingDecoys > then.missingDecoys) return true;
  return isHard && now.fewestDecoys === 0 && then.fewestDecoys > 0;
}

/** Each pair asks on one card and answers on the next. */
export function toCards(order: readonly Pair[], { teaches, explains }: DealRequest): LoopCard[] {
  return order.flatMap((asks, i): LoopCard[] => {
    const answers = order[(i + order.length - 1) % order.length];
    if (!answers) return [];
    const answer = toPrinted(answers.right.answers[0], explains);
    const prompt = toPrinted(asks.left.answers[0], teaches);
    return [{ answer, prompt, answers, asks }];
  });
}
