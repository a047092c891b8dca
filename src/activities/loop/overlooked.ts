import type { Matching, Worded } from "../../match/look-alikes";
import { type DealtLoop, type LoopDeal, signAt } from "./model";
import { proveCards } from "./proof";

/** All words on a deal's cards. */
export function cardTexts(_: DealtLoop, { cards }: LoopDeal): Worded[] {
  return cards.flatMap(({ answer, prompt }) => [answer, prompt]).filter(({ picture }) => !picture);
}

/** Signs of the cards that another card follows in a second full circle under this matching; empty where there is none, undefined where that is not settled. */
export function confusedCards(_: DealtLoop, deal: LoopDeal, matching: Matching): string[] | undefined {
  const { status, second } = proveCards(deal.cards, matching).full;
  if (status === "unsettled") return undefined;
  if (status !== "several" || !second) return [];
  const count = second.length;
  return second
    .flatMap((card, i) => (second[(i + 1) % count] === (card + 1) % count ? [] : [signAt(deal, card)]))
    .sort();
}
