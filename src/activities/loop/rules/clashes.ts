import type { Relation } from "../../../match/relation";
import type { Pair } from "../../../unit/unit";
import { type Cause, causeOf } from "../../shared-answers";
import type { DealtLoop, LoopDeal } from "../model";
import { puzzleOf } from "../proof";

/** A card that may come next although another one is meant to. Places in the circle. */
export interface Clash {
  readonly deal: LoopDeal;
  readonly card: number;
  readonly next: number;
  /** The pair whose left side asks, and the one whose right side answers it besides its own. */
  readonly asks: Pair;
  readonly answers: Pair;
}

/** All cards of a deal that may follow where they are not meant to. */
export function clashesOf(deal: LoopDeal, relation: Relation): Clash[] {
  const count = deal.cards.length;
  return puzzleOf(deal.cards, relation).follows.flatMap((list, card) =>
    list.flatMap((next): Clash[] => {
      const [asks, answers] = [deal.cards[card]?.asks, deal.cards[next]?.answers];
      return next === (card + 1) % count || !asks || !answers ? [] : [{ deal, card, next, asks, answers }];
    }),
  );
}

/** How many cards of all deals may follow where they are not meant to. */
export function clashCount({ deals, request }: DealtLoop): number {
  return deals.reduce((sum, deal) => sum + clashesOf(deal, request.relation).length, 0);
}

/** The circle that a clash closes: from the card that comes too early round to the one before it. */
export function closedBy({ deal, card, next }: Clash): number[] {
  const count = deal.cards.length;
  const length = ((card - next + count) % count) + 1;
  return Array.from({ length }, (_, i) => (next + i) % count);
}

export function clashCause({ asks, answers }: Clash, relation: Relation): Cause {
  return causeOf({ pair: asks, side: "left" }, { pair: answers, side: "right" }, relation);
}
