import { pieceMark } from "../../base/mark";
import type { Range } from "../../base/range";
import { lookAlikes, type Matching, type Worded } from "../../match/look-alikes";
import { answerKey, type MatchKey } from "../../match/relation";
import { type Answer, isPair } from "../../unit/unit";
import type { DealtSort, SortCard, SortDeal } from "./model";

/** The cards that are dealt, but for twins: those differ from their true statement in a form, and that is what is asked. */
function cardsOf({ cards }: DealtSort, { order }: SortDeal): SortCard[] {
  return order.flatMap((index) => {
    const card = cards[index];
    return card && !card.twin ? [card] : [];
  });
}

/** A card that says of two texts that they belong together. */
function isClaimedPair({ by }: DealtSort, card: SortCard): boolean {
  return by === "truth" && isPair(card.item);
}

/** Statements and cards of piles as they are printed; of pairs that are right or wrong both sides. */
export function sortTexts(dealt: DealtSort, deal: SortDeal): Worded[] {
  const { teaches, explains } = dealt.request;
  const worded = (answer: Answer, lang: string): Worded[] =>
    answer.picture ? [] : [{ key: answerKey(answer), text: answer.text, lang }];
  return cardsOf(dealt, deal).flatMap((card): Worded[] => {
    const { item, key, text, lang, picture } = card;
    if (isClaimedPair(dealt, card) && isPair(item))
      return [...worded(item.left.answers[0], teaches), ...worded(item.right.answers[0], explains)];
    return picture ? [] : [{ key, text, lang }];
  });
}

/** The piles of a card; a side of a pair is judged by what answers it. */
export function pilesFor(dealt: DealtSort, deal: SortDeal, key: MatchKey): string | undefined {
  return cardsOf(dealt, deal)
    .find((card) => card.key === key)
    ?.piles.join(" ");
}

export function sortPlaces(dealt: DealtSort, deal: SortDeal, keys: readonly MatchKey[]): Range[] {
  return cardsOf(dealt, deal)
    .filter(({ key }) => keys.includes(key))
    .map(({ source }) => source);
}

/** Codes of the cards that someone who overlooks a difference lays on the pile of another one, or takes for a right pair. */
export function confusedPiles(dealt: DealtSort, deal: SortDeal, matching: Matching): string[] {
  const cards = cardsOf(dealt, deal);
  const mixed = cards.filter((card) =>
    isClaimedPair(dealt, card)
      ? looksRight(dealt, card, matching)
      : cards.some((other) => isMixedUp(dealt, card, other, matching)),
  );
  const numbers = mixed.map((card) => deal.order.indexOf(dealt.cards.indexOf(card)));
  return numbers.sort((a, b) => a - b).map((piece) => pieceMark(deal.code, undefined, piece).split("-")[1] ?? "");
}

/** A wrong pair whose sides fit once the difference is overlooked. */
function looksRight({ request }: DealtSort, { key, piles }: SortCard, matching: Matching): boolean {
  const [left = "", right = ""] = key.split("\u0001");
  return piles[0] !== 0 && matching.fits(left, right) && !request.relation.fits(left, right);
}

function isMixedUp(dealt: DealtSort, one: SortCard, other: SortCard, { overlooked }: Matching): boolean {
  if (one.key === other.key || one.piles.join() === other.piles.join()) return false;
  return overlooked?.like(one.key).has(other.key) === true && !(dealt.by === "headings" && isEnding(one, other));
}

/** Whether two cards differ in their article or last letter: what piles of genders and forms are told apart by. */
function isEnding(one: SortCard, other: SortCard): boolean {
  const [group] = lookAlikes([one, other]);
  if (!group || group.differences.includes("article")) return true;
  const [a = "", b = ""] = [one, other].map(({ text }) => text.toLowerCase());
  const [stem, like] = [a.slice(0, -1), b.slice(0, -1)];
  return group.differences.includes("letter") && (stem === like || stem === b || a === like);
}
