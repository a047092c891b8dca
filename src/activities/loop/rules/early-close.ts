import type { Rule } from "../../../base/finding";
import type { DealtLoop } from "../model";
import { closes, report } from "./clash-report";
import { type Clash, clashesOf, laterPair, secondCircles } from "./clashes";
import type { LoopContext } from "./context";

/** Clashes of the first deal in which a later item has any, one for each later item. */
function clashesByItem({ deals, request }: DealtLoop): Map<number, Clash> {
  const found = new Map<number, Clash>();
  for (const clash of deals.flatMap((deal) => clashesOf(deal, request.relation))) {
    const { start } = laterPair(clash).range;
    if (!found.has(start)) found.set(start, clash);
  }
  return found;
}

export const earlyClose: Rule<LoopContext> = {
  code: "early-close",
  severity: "warning",
  title: "Cards that close a circle while others are left over",
  why: "A word on one card is answered by two cards. Whoever takes the wrong one comes back to the start too soon and never meets the other cards. No order of the cards helps: take out a pair or an alternative answer, or let `take` leave pairs out; those that clash are left out first.",
  example: {
    wrong:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n- a prima = the cousin\n\n```activity\nmake: loop\n```",
    right:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n- a prima = the cousin\n\n```activity\nmake: loop\ntake: 4\n```",
  },
  check: ({ dealt }) => {
    // What makes a second circle is told by that.
    const [hit] = secondCircles(dealt);
    const told = new Set(hit?.by.map((clash) => laterPair(clash).range.start));
    return [...clashesByItem(dealt)].flatMap(([start, clash]) =>
      told.has(start) ? [] : [report(dealt, clash, "early close", `So ${closes(clash)}.`)],
    );
  },
};
