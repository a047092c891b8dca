import type { DealtLoop, LoopCard, LoopDeal } from "./model";

/** Cards of several circles in one room whose words lead from one circle into another. */
export interface Shared {
  /** Cards whose words are answered on a card of another circle. */
  readonly cards: readonly LoopCard[];
  /** Numbers of the circles that such cards hang in or lead to. */
  readonly circles: readonly number[];
}

/** Undefined where no card leads astray: one circle alone, circles without common words, and circles on tables of their own. */
export function sharedBetween({ deals, options, request }: DealtLoop): Shared | undefined {
  if (options.size !== "room" || deals.length < 2) return undefined;
  const cards = new Set<LoopCard>();
  const circles = new Set<number>();
  for (const deal of deals) {
    for (const other of deals) {
      if (other === deal) continue;
      const answers = cardsOf(other).map(({ answer }) => answer.key);
      for (const card of deal.cards) {
        if (!answers.some((answer) => request.relation.fits(card.prompt.key, answer))) continue;
        cards.add(card);
        for (const { number } of [deal, other]) if (number !== undefined) circles.add(number);
      }
    }
  }
  if (cards.size === 0) return undefined;
  return { cards: [...cards], circles: [...circles].sort((a, b) => a - b) };
}

function cardsOf({ cards, decoys }: LoopDeal): readonly LoopCard[] {
  return [...cards, ...decoys];
}
