import type { MatchKey, Relation } from "../../../match/relation";
import type { Pair } from "../../../unit/unit";
import { type Cause, causeOf, laterOf } from "../../shared-answers";
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

/** How many cards of all deals, or only those with one answer, may follow where they are not meant to. */
export function clashCount({ deals, request }: DealtLoop, only?: MatchKey): number {
  const counts = ({ deal, next }: Clash): boolean => only === undefined || deal.cards[next]?.answer.key === only;
  return deals.reduce((sum, deal) => sum + clashesOf(deal, request.relation).filter(counts).length, 0);
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

/** The pair of a clash that stands further down in the unit. */
export function laterPair({ asks, answers }: Clash): Pair {
  return laterOf(asks, answers);
}

/** Deals of which more than one circle takes every card, and the clashes that a second one goes by. */
export function secondCircles({
  deals,
  request,
}: DealtLoop): { readonly deal: LoopDeal; readonly by: readonly Clash[] }[] {
  return deals.flatMap((deal) => {
    const { second } = deal.proof;
    if (deal.proof.status !== "several" || !second) return [];
    const steps = new Set(second.map((card, i) => `${card} ${second[(i + 1) % second.length]}`));
    return [{ deal, by: clashesOf(deal, request.relation).filter(({ card, next }) => steps.has(`${card} ${next}`)) }];
  });
}
