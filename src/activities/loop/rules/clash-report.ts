import type { Related, Report } from "../../../base/finding";
import { distinctFixes } from "../../shared-answers";
import { type DealtLoop, type LoopDeal, signAt } from "../model";
import { type Clash, clashCause, closedBy, laterPair } from "./clashes";
import { type Aim, fixesFor } from "./fixes";

/** What a clash looks like on the cards; `effect` is the sentence that says what comes of it, `aim` what its fixes must take away. */
export function report(
  dealt: DealtLoop,
  clash: Clash,
  aim: Aim,
  effect: string,
  also: readonly Related[] = [],
): Report {
  const { deal, card, next, asks, answers } = clash;
  const { range, others } = clashCause(clash, dealt.request.relation);
  const [here, there] = [deal.cards[card], deal.cards[next]];
  const earlier = laterPair(clash) === asks ? answers : asks;
  const related = range.start === earlier.range.start ? laterPair(clash) : earlier;
  return {
    range,
    message: `“${here?.prompt.text}” on card ${signAt(deal, card)} is answered by “${there?.answer.text}” on card ${signAt(deal, next)} too. ${effect}`,
    related: [
      { range: related.range, message: "The other pair" },
      ...others.slice(0, 2).map((pair) => ({ range: pair.range, message: "This says that the two fit" })),
      ...also,
    ],
    fixes: function* () {
      return distinctFixes(yield* fixesFor(dealt, clash, aim));
    },
  };
}

/** The signs of the cards of a circle, in its order; of a long one only the first. */
export function named(deal: LoopDeal, circle: readonly number[]): string {
  const signs = circle.map((place) => signAt(deal, place));
  const shown = signs.length > 14 ? [...signs.slice(0, 13), "…"] : signs;
  return shown.join(" ");
}

/** What a clash closes too early, as a part of a sentence. */
export function closes(clash: Clash): string {
  const circle = closedBy(clash);
  if (circle.length === 1) return "that card closes a circle of its own";
  const { deal } = clash;
  return `a circle can close with ${circle.length} of ${deal.cards.length} cards: ${named(deal, circle)}`;
}
