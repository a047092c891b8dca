import type { Report, Rule } from "../../../base/finding";
import type { StripsContext } from "./context";
import { repeatedEvent } from "./events";

/** Two events with the same text, where one deal has both: versions may have events of their own. */
export const repeatedInDeal: Rule<StripsContext> = {
  ...repeatedEvent,
  check: ({ dealt, press }) => {
    const reports = dealt.deals.flatMap((deal) =>
      repeatedEvent.check({ dealt: { ...dealt, events: deal.events, deals: [deal] }, press }),
    );
    return [...new Map(reports.map((report): [number, Report] => [report.range.start, report])).values()];
  },
};
