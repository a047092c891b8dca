import type { Rule } from "../../../base/finding";
import { takingEnough } from "../../enough";
import { bulletsAsPiles } from "../../plain-bullets";
import { optionPlace } from "../../report";
import { fewestCards, fewestPiles, mostPiles } from "../deal";
import { dealtWhole, dealtWith, type SortContext } from "./context";
import { activity, articles } from "./example";

export const tooFewCards: Rule<SortContext> = {
  code: "too-few-cards",
  severity: "error",
  counts: true,
  title: "Too few cards to sort",
  why: "Sorting needs at least four cards: items under the headings that name the piles, or statements (`[x]`, `[ ]`), or pairs of which some are shown with a wrong partner.",
  example: {
    wrong: `## Articles\n\n### o\n\n- disco\n\n### a\n\n- mochila${activity()}`,
    right: `${articles}${activity()}`,
  },
  check: (context) => {
    const { dealt } = context;
    const { fewest, piles, unknown, deals, request, options } = dealt;
    if (deals.length > 0 || unknown.length > 0 || piles.length < fewestPiles || piles.length > mostPiles) return [];
    const { block, unit } = request;
    const enough = options.take !== undefined && dealtWith(dealt, { take: fewestCards }).deals.length > 0;
    const bullets = fewest === 0 ? bulletsAsPiles(unit, request.sections, fewestPiles) : undefined;
    const there = fewest === 0 ? "there is none" : `there ${fewest === 1 ? "is" : "are"} ${fewest}`;
    const meant = bullets ? `, but ${bullets.told}` : "";
    return [
      {
        range: optionPlace(block, ...(enough ? ["take"] : ["from"])),
        message: `Sorting needs at least ${fewestCards} cards; ${enough ? `\`take\` leaves ${fewest}` : `${there}${meant}`}.`,
        fixes: enough
          ? () => takingEnough(context, { fewest: fewestCards, most: dealtWhole(dealt).fewest })
          : bullets
            ? [bullets.fix]
            : [],
      },
    ];
  },
};
