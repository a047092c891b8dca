import type { Report, Rule } from "../../../base/finding";
import type { DealRequest } from "../../contract";
import { fewestEvents } from "../deal";
import type { StripEvent } from "../model";
import type { StripsContext } from "./context";

export const repeatedEvent: Rule<StripsContext> = {
  code: "repeated-event",
  severity: "warning",
  title: "Two events with the same text",
  why: "Strips with the same text can be exchanged: which of them comes first cannot be seen, so each may lie in the other's place. The key says so. Where the two stand for different moments, say what tells them apart.",
  example: {
    wrong:
      "## The morning\n\n1. A Inês entra.\n2. Ela bebe.\n3. Ela come.\n4. Ela bebe.\n\n```activity\nmake: strips\n```",
    right:
      "## The morning\n\n1. A Inês entra.\n2. Ela bebe.\n3. Ela come.\n4. Ela bebe outra vez.\n\n```activity\nmake: strips\n```",
  },
  check: ({ dealt }) => {
    const { deals, request } = dealt;
    // Where no order is wrong, that is what there is to say.
    if (deals.length === 0 || deals.some(({ inOrder }) => inOrder)) return [];
    // Deal by deal: versions may have events of their own.
    const reports = deals.flatMap(({ events }) => repeatedIn(events, request));
    return [...new Map(reports.map((report): [number, Report] => [report.range.start, report])).values()];
  },
};

function repeatedIn(events: readonly StripEvent[], request: DealRequest): Report[] {
  return events.flatMap((event, i): Report[] => {
    const first = events.slice(0, i).find(({ key }) => key === event.key);
    if (!first) return [];
    const own = events.length > fewestEvents && isFree(request.sections, event.item);
    return [
      {
        range: event.source,
        message: `“${event.text}” stands twice in the story: the two strips can be exchanged.`,
        related: [{ range: first.source, message: "The same text" }],
        fixes: own ? [{ title: `Take this one out`, edits: [{ range: event.item.block, text: "" }] }] : [],
      },
    ];
  });
}

/** Whether nothing hangs under an event, so that it can go alone. */
function isFree(sections: StripsContext["dealt"]["request"]["sections"], item: object): boolean {
  return !sections.some(({ events }) => events.some((event) => event === item && event.free.length > 0));
}
