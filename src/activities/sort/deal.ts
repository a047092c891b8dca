import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import { finished, mapped, type Steps, told } from "../../base/steps";
import { fold } from "../../match/fold";
import { heldCount } from "../../prove/proof";
import { isPair } from "../../unit/unit";
import { whySameClaims } from "../claim-supply";
import type { DealRequest } from "../contract";
import { blanksText, copiesOf } from "../copies";
import type { ShownPair } from "../dealt-claims";
import { type DealPlan, planCode, streamOf } from "../levels";
import { mixedOrder } from "../mixed-order";
import { counted } from "../report";
import { proveTruth } from "../truth-proof";
import { shapeFor } from "./mats";
import type { DealtSort, SortCard, SortDeal, SortHand, SortSupply } from "./model";
import { type SortOptions, sortOptions } from "./options";
import { supplySort } from "./supply";

/** Fewer cards than these, or piles, or more piles, cannot be dealt. */
export const fewestCards = 4;
export const fewestPiles = 2;
export const mostPiles = 6;

/** Orders drawn before the most mixed one is taken. */
const attempts = 20;

/** A pile gives its header card an example where so many cards besides are left to it. */
const fewestBesides = 2;

/** Cards for two to six piles. */
export function dealSort(request: DealRequest): DealtSort {
  return finished(dealingSort(request));
}

/** The same with a pause after what is chosen, and after each deal. */
export function* dealingSort(request: DealRequest): Steps<DealtSort> {
  const asked = sortOptions(request.options);
  const { plans, dealt: hands, plain, ...supply } = supplySort(request, asked);
  yield "arranging";
  const options = { ...asked, headers: headersFor(asked, supply) };
  const { cards, piles, unknown } = supply;
  // A card that stands for several items shows them all.
  const items = cards.flatMap(({ item, again = [] }) => [item, ...again.map((each) => each.item)]);
  items.push(...supply.repeated.map(({ item }) => item));
  const used = [...new Set(items.filter(isPair))];
  const shown = supply.by === "truth" ? cards.flatMap(shownBy) : [];
  const shownIn = hands.map((hand) => (supply.by === "truth" ? hand.cards.flatMap(shownBy) : []));
  const fewest = Math.min(...hands.map((hand) => hand.cards.length));
  const base = { request, options, ...supply, fewest, used, shown, shownIn };
  if (fewest < fewestCards || piles.length < fewestPiles || piles.length > mostPiles || unknown.length > 0)
    return { ...base, summary: "sort", deals: [] };
  const copies = copiesOf(options, request.classes, plans);
  const indexOf = indicesOf(cards);
  const taken = new Set<string>();
  const deal = (plan: DealPlan, i: number): SortDeal => {
    const { level, version } = plan;
    const stream = streamOf("sort", options.seed, plan, plain);
    const examples =
      level === "gentle" && supply.by === "headings" && options.headers === "cards"
        ? examplesOf(piles.length, hands[i]?.cards ?? [], `${stream}/examples`)
        : [];
    const shown = new Set(examples);
    const own = (hands[i]?.cards ?? []).filter((card) => !shown.has(card));
    const drawn = drawOrder(supply.by, own, stream, taken);
    const order = drawn.order.map((place) => indexOf(own[place]));
    taken.add(drawn.order.join(" "));
    const texts = order.map((card) => printOf(cards[card]));
    const names = piles.map(({ name }, pile) => (examples[pile] ? [name, printOf(examples[pile])] : name));
    const { headers, blanks, mats } = options;
    const code = dealCode(JSON.stringify(["sort", planCode(plan, plain), headers, blanks, mats, names, order, texts]));
    return {
      code,
      level,
      version,
      attempt: drawn.attempt,
      copies: copies[i] ?? 1,
      order,
      examples: examples.map((card) => (card ? indexOf(card) : undefined)),
      proof: proofOf(supply.by, own, options.overlap),
    };
  };
  const deals = yield* told(mapped(plans, deal), "arranging");
  const same = options.levels && whySame(base, deals, hands, plans);
  return {
    ...base,
    deals,
    summary: summaryOf({ request, options, piles }, ...deals.map(({ order }) => order.length)),
    ...(same === undefined ? {} : { sameLevels: same }),
  };
}

/** Mats bear the names of the piles: header cards beside them are cut for nothing, but for the examples that gentle ones show. */
function headersFor(
  options: SortOptions,
  supply: Pick<SortSupply, "by" | "cards" | "piles">,
): Exclude<SortOptions["headers"], "auto"> {
  if (options.headers !== "auto") return options.headers;
  const examples = supply.by === "headings" && options.levels?.includes("gentle");
  return examples || shapeFor({ options, ...supply }) === "none" ? "cards" : "none";
}

/** A card's place among the cards of all deals: that of the card that looks and belongs as it does; -1 where there is none. */
function indicesOf(cards: readonly SortCard[]): (card: SortCard | undefined) => number {
  const byItem = new Map<SortCard["item"], number[]>();
  for (const [i, { item }] of cards.entries()) byItem.set(item, [...(byItem.get(item) ?? []), i]);
  const isLike = (each: SortCard | undefined, { key, piles }: SortCard): boolean =>
    each?.key === key && each.piles.join() === piles.join();
  return (card) => (card && byItem.get(card.item)?.find((i) => isLike(cards[i], card))) ?? -1;
}

/** By pile a card of that pile alone, by the seed, where enough others are left to it; undefined where not. */
function examplesOf(piles: number, cards: readonly SortCard[], stream: string): (SortCard | undefined)[] {
  const random = new Random(stream);
  let left = cards.length;
  return upTo(piles).map((pile) => {
    const own = random.shuffle(cards.filter((card) => card.piles.join() === String(pile)));
    const many = cards.filter((card) => card.piles.includes(pile)).length > fewestBesides;
    if (!many || left <= fewestCards || !own[0]) return undefined;
    left--;
    return own[0];
  });
}

/** Why levels that were asked for do not differ; undefined where they do. */
function whySame(
  { by, options, request }: Pick<DealtSort, "by" | "options" | "request">,
  deals: readonly SortDeal[],
  hands: readonly SortHand[],
  plans: readonly DealPlan[],
): string | undefined {
  if (by === "headings") {
    const gentle = deals.find(({ level }) => level === "gentle");
    if (!gentle || gentle.examples.some((card) => card !== undefined)) return undefined;
    return options.headers === "none"
      ? "gentle shows examples on header cards, and there are none"
      : "gentle shows an example on each header card, and the piles have too few cards of their own";
  }
  if (hands.every(({ cards, claims }) => cards.length === claims.length)) return whySameClaims(request, options, plans);
  const { dealt } = supplySort(request, { ...options, levels: ["gentle", "hard"], versions: 1 });
  const [gentle, hard] = dealt.map(({ cards }) => JSON.stringify(cards.map(printOf)));
  return gentle === hard ? "the pairs have too few surely wrong partners to choose from" : undefined;
}

/** `12 cards and 2 blank for 3 piles`; `11–12 cards` where levels have examples on their header cards. */
export function summaryOf(
  { request, options, piles }: Pick<DealtSort, "request" | "options" | "piles">,
  ...cards: readonly number[]
): string {
  const blank = blanksText(options, request.classes);
  const [least, most] = [Math.min(...cards), Math.max(...cards)];
  const printed = least === most ? counted(most, "card") : `${least}–${most} cards`;
  return `${printed}${blank === undefined ? "" : ` and ${blank}`} for ${piles.length} piles`;
}

function printOf(card: SortCard | undefined): unknown {
  return [card?.runs, card?.picture?.path ?? "", card?.piles, card?.by ?? "", card?.correction?.runs ?? []];
}

/**
 * A shuffled order that no earlier version has and in which at least every second card is for other piles than the one before it;
 * where none is met, the most mixed one.
 */
function drawOrder(
  by: SortSupply["by"],
  cards: readonly SortCard[],
  stream: string,
  taken: ReadonlySet<string>,
): { readonly order: readonly number[]; readonly attempt: number } {
  const truths = cards.map(({ piles }) => piles[0] === 0);
  let best: { readonly order: readonly number[]; readonly attempt: number; readonly mixed: number } | undefined;
  for (let attempt = 0; attempt < attempts; attempt++) {
    const order =
      by === "truth"
        ? mixedOrder(truths, `${stream}/${attempt}`, (a, b) => cards[a]?.item === cards[b]?.item)
        : new Random(`${stream}/${attempt}`).shuffle(upTo(cards.length));
    const mixed = changesIn(cards, order) - (taken.has(order.join(" ")) ? cards.length : 0);
    if (!best || mixed > best.mixed) best = { order, attempt, mixed };
    if (mixed >= (by === "truth" ? 2 : cards.length / 2)) break;
  }
  return best ?? { order: upTo(cards.length), attempt: 0 };
}

/** How many cards are for other piles than the one before them. As many as there are piles less one: they lie sorted. */
function changesIn(cards: readonly SortCard[], order: readonly number[]): number {
  const zones = order.map((card) => cards[card]?.piles.join(" "));
  return zones.filter((zone, i) => i > 0 && zone !== zones[i - 1]).length;
}

/**
 * Cards that are true or false have one pile each, unless they contradict each other. A card of several piles lies where their
 * circles overlap; without overlap it may go to any of them, and each is right.
 */
const isTrue = ({ piles }: SortCard): boolean => piles[0] === 0;

/** A pair's card as one reads it: its words say together what a statement may say as well. None of another card. */
function shownBy(card: SortCard): ShownPair[] {
  const { item, text, picture, key } = card;
  return isPair(item) ? [{ ...card, item, key: picture ? key : fold(text), truth: isTrue(card) }] : [];
}

function proofOf(by: SortSupply["by"], cards: readonly SortCard[], overlap: boolean): SortDeal["proof"] {
  if (by === "truth") return proveTruth(cards.map((card) => shownBy(card)[0] ?? { ...card, truth: isTrue(card) }));
  const known = { nodes: 0, by: "certificate" } as const;
  const ways = overlap ? 1n : cards.reduce((product, { piles }) => product * BigInt(piles.length), 1n);
  const count = heldCount(ways);
  return ways === 1n
    ? { ...known, ...count, status: "one" }
    : { ...known, ...count, status: "several", accepted: true };
}
