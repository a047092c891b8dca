import type { Rule } from "../../../base/finding";
import type { SortContext } from "./context";
import { unbalancedPiles } from "./piles";

/** A pile with few cards, judged deal by deal: levels and versions have cards of their own. */
export const unbalancedHands: Rule<SortContext> = {
  ...unbalancedPiles,
  check: ({ dealt, press }) => {
    for (const deal of dealt.deals) {
      const cards = deal.order.flatMap((index) => dealt.cards[index] ?? []);
      const reports = unbalancedPiles.check({ dealt: { ...dealt, cards, deals: [deal] }, press });
      if (reports.length > 0) return reports;
    }
    return [];
  },
};
