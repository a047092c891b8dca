import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { copiesOf } from "../copies";
import { mixedOrder } from "../mixed-order";
import { counted } from "../report";
import type { DealtSort, SortCard, SortDeal, SortSupply } from "./model";
import { type SortOptions, sortOptions } from "./options";
import { supplySort } from "./supply";

/** Fewer cards than these, or piles, or more piles, cannot be dealt. */
export const fewestCards = 4;
export const fewestPiles = 2;
export const mostPiles = 6;

/** Orders drawn before the most mixed one is taken. */
const attempts = 20;

/** Cards for two to six piles. */
export function dealSort(request: DealRequest): DealtSort {
  const options = sortOptions(request.options);
  const supply = supplySort(request, options);
  const { cards, piles, unknown } = supply;
  const used = cards.flatMap(({ item }): Pair[] => (isPair(item) ? [item] : []));
  const base = { request, options, ...supply, used };
  if (cards.length < fewestCards || piles.length < fewestPiles || piles.length > mostPiles || unknown.length > 0)
    return { ...base, summary: "sort", deals: [] };
  const plans = upTo(options.versions).map((i) => ({ level: "gentle", version: i + 1 }));
  const copies = copiesOf(options, request.classes, plans);
  const taken = new Set<string>();
  const deals = plans.map(({ level, version }, i): SortDeal => {
    const { order, attempt } = drawOrder(supply, `sort/${options.seed}/${version}`, taken);
    taken.add(order.join(" "));
    const texts = order.map((card) => printOf(cards[card]));
    const names = piles.map(({ name }) => name);
    const { headers, blanks, mats } = options;
    const code = dealCode(JSON.stringify(["sort", version, headers, blanks, mats, names, order, texts]));
    return { code, level, version, attempt, copies: copies[i] ?? 1, order, proof: proofOf(supply) };
  });
  return { ...base, deals, summary: summaryOf(supply, options) };
}

function isPair(item: object): item is Pair {
  return "left" in item && "right" in item;
}

export function summaryOf({ cards, piles }: SortSupply, { blanks }: SortOptions): string {
  return `${counted(cards.length, "card")}${blanks > 0 ? ` and ${blanks} blank` : ""} for ${piles.length} piles`;
}

function printOf(card: SortCard | undefined): unknown {
  return [card?.runs, card?.picture?.path ?? "", card?.piles, card?.by ?? "", card?.correction?.runs ?? []];
}

/**
 * A shuffled order that no earlier version has and in which at least every second card is for other piles than the one before it;
 * where none is met, the most mixed one.
 */
function drawOrder(
  supply: SortSupply,
  stream: string,
  taken: ReadonlySet<string>,
): { readonly order: readonly number[]; readonly attempt: number } {
  const { cards } = supply;
  const truths = cards.map(({ piles }) => piles[0] === 0);
  let best: { readonly order: readonly number[]; readonly attempt: number; readonly mixed: number } | undefined;
  for (let attempt = 0; attempt < attempts; attempt++) {
    const order =
      supply.by === "truth"
        ? mixedOrder(truths, `${stream}/${attempt}`, (a, b) => cards[a]?.item === cards[b]?.item)
        : new Random(`${stream}/${attempt}`).shuffle(upTo(cards.length));
    const mixed = changesIn(supply, order) - (taken.has(order.join(" ")) ? cards.length : 0);
    if (!best || mixed > best.mixed) best = { order, attempt, mixed };
    if (mixed >= (supply.by === "truth" ? 2 : cards.length / 2)) break;
  }
  return best ?? { order: upTo(cards.length), attempt: 0 };
}

/** How many cards are for other piles than the one before them. As many as there are piles less one: they lie sorted. */
function changesIn({ cards }: Pick<SortSupply, "cards">, order: readonly number[]): number {
  const zones = order.map((card) => cards[card]?.piles.join(" "));
  return zones.filter((zone, i) => i > 0 && zone !== zones[i - 1]).length;
}

/** Each card has its piles, unless the same text is both true and false: then no sorting is right. */
function proofOf({ cards, by }: SortSupply): SortDeal["proof"] {
  const places = new Map<string, number | undefined>();
  const clash = cards.some(({ key, piles }) => {
    const known = places.has(key) && places.get(key) !== piles[0];
    places.set(key, piles[0]);
    return by === "truth" && known;
  });
  return { status: clash ? "none" : "one", count: clash ? 0 : 1, capped: false, nodes: 0, by: "certificate" };
}
