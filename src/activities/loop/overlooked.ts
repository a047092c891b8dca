import type { Matching, Worded } from "../../match/look-alikes";
import { type DealtLoop, type LoopDeal, signAt } from "./model";
import { proveCards } from "./proof";

/** All words on a deal's cards. */
export function cardTexts(_: DealtLoop, { cards, decoys }: LoopDeal): Worded[] {
  return [...cards, ...decoys].flatMap(({ answer, prompt }) => [answer, prompt]).filter(({ picture }) => !picture);
}

/**
 * Signs of the cards that another card follows in a second full circle under this matching, or that a card without a place in
 * the circle could follow; none where neither can be, undefined where that is not settled.
 */
export function confusedCards(_: DealtLoop, deal: LoopDeal, matching: Matching): string[] | undefined {
  const { cards, decoys } = deal;
  const { status, second } = proveCards(cards, matching).full;
  const strays = cards.flatMap((card, place) =>
    decoys.flatMap((decoy, i) =>
      matching.fits(card.prompt.key, decoy.answer.key) ? [signAt(deal, place), signAt(deal, cards.length + i)] : [],
    ),
  );
  if (strays.length > 0) return [...new Set(strays)].sort();
  if (status === "unsettled") return undefined;
  if (status !== "several" || !second) return [];
  return second
    .flatMap((card, i) => (second[(i + 1) % second.length] === (card + 1) % second.length ? [] : [signAt(deal, card)]))
    .sort();
}

/**
 * Whether under this matching a card may come next that could not: whoever takes it closes a circle while others are left over,
 * also where only one circle takes every card.
 */
export function closesEarly(_: DealtLoop, { cards }: LoopDeal, matching: Matching): boolean {
  return cards.some(({ prompt }) => {
    const [before, now] = [matching.overlooked?.under.partners(prompt.key), matching.partners(prompt.key)];
    return cards.some(({ answer }) => now.has(answer.key) && !before?.has(answer.key));
  });
}
