import type { Fix, Report, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { isPair } from "../../../unit/unit";
import { setOption } from "../../edits";
import { withOptions } from "../../foreseen";
import { optionPlace } from "../../report";
import type { SortCard } from "../model";
import { dealtWith, type SortContext } from "./context";
import { activity, articles } from "./example";

/** A pile with less than this part of an even share is small: for two piles 30 %. */
const leastPart = 0.6;
/** Of fewer pairs beside statements nothing is said. */
const fewestBeside = 4;

export const unbalancedPiles: Rule<SortContext> = {
  code: "unbalanced-piles",
  severity: "information",
  title: "A pile with few cards",
  why: "Where nearly all cards belong to the other piles, learners can guess. A pile should have at least three fifths of an even share: 30 % of the cards with two piles, 20 % with three (own rule, after the one for true and false).",
  example: {
    wrong: `## Articles\n\n### o\n\n- disco\n- café\n- pão\n- mel\n\n### a\n\n- mochila${activity()}`,
    right: `${articles}${activity()}`,
  },
  // Deal by deal: levels and versions have cards of their own.
  check: (context) => {
    const { dealt } = context;
    for (const { order } of dealt.deals) {
      const reports = unbalanced(
        context,
        order.flatMap((index) => dealt.cards[index] ?? []),
      );
      if (reports.length > 0) return reports;
    }
    return [];
  },
};

function unbalanced({ dealt, foresee }: SortContext, all: readonly SortCard[]): Report[] {
  const { piles, by, request, options } = dealt;
  // Where fewer cards are false than were asked for, that is what there is to say.
  if (dealt.missingMispairs > 0 && options.mispair !== undefined) return [];
  // Statements are judged by their own rule: of pairs beside them it is told apart which are right.
  const cards = by === "truth" ? all.filter(({ item }) => isPair(item)) : all;
  const beside = cards.length < all.length;
  if (cards.length < (beside ? fewestBeside : 1)) return [];
  const counts = piles.map((_, pile) => cards.filter((card) => card.piles.includes(pile)).length);
  const least = (leastPart * cards.length) / piles.length;
  const small = piles.flatMap((pile, i) => ((counts[i] ?? 0) < least ? [{ pile, count: counts[i] ?? 0 }] : []));
  const [first] = small;
  if (!first) return [];
  const half = Math.floor(cards.length / 2);
  // Nothing may be warned of for it.
  const fixes = function* (): Steps<Fix[], unknown> {
    if (by !== "truth" || dealtWith(dealt, { mispair: half }).missingMispairs > 0) return [];
    const left = foresee && (yield* foresee(withOptions({ mispair: half })));
    if (left && left.length > 0) return [];
    const edits = [setOption(request.block, request.unit.text, "mispair", String(half))];
    return [{ title: `Make ${half} of them false`, edits }];
  };
  const many = `${cards.length} ${beside ? "cards with pairs" : "cards"}`;
  return [
    {
      range: by === "truth" ? optionPlace(request.block, "mispair") : (first.pile.source ?? optionPlace(request.block)),
      message: `${small.map(({ pile, count }) => `“${pile.name}” has ${count}`).join(", ")} of ${many}: learners can guess. At least ${Math.ceil(least)} would be better.`,
      fixes,
    },
  ];
}
