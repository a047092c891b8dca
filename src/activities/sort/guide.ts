import type { Caution, GuideEntry, LabelEntry } from "../contract";
import { pencils } from "../copies";
import { counted } from "../report";
import { summaryOf } from "./deal";
import { cardRuns, zonesOf } from "./key";
import { headerCount } from "./layout";
import { matsOf } from "./mats";
import type { DealtSort, SortDeal } from "./model";

/** What a colleague needs to run sort. */
export function sortGuide(dealt: DealtSort): GuideEntry {
  const { request, options, cards, piles, deals } = dealt;
  const count = deals[0]?.order.length ?? 0;
  const examples = deals.some((deal) => deal.examples.some((card) => card !== undefined));
  const mats = matsOf(dealt);
  const names = piles.map(({ name }) => `“${name}”`).join(", ");
  const several = cards.some((card) => card.piles.length > 1);
  const cautions: Caution[] = ["cutter", "scissors"];
  if (options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `Learners sort ${counted(count, "card")} into ${piles.length} piles: ${names}.${several ? " Some cards belong to several piles." : ""}${cards.some(({ correction }) => correction) ? " What is false they put right aloud." : ""}${examples ? " In the gentle sets the header cards show an example." : ""}${options.blanks > 0 ? ` ${counted(options.blanks, "blank card")} in each set ${options.blanks === 1 ? "is" : "are"} for their own.` : ""}`,
    materials: (words) => [
      words.table,
      ...(mats === "none" ? [] : [words.mat]),
      ...(options.blanks > 0 ? [pencils(words, options, "some")] : []),
    ],
    atSet: options.group,
    // Own estimate: a third of a minute a card, a minute and a half to write one, five to begin and to check.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(5 + count / 3 + 1.5 * options.blanks)),
    answers: zonesOf(dealt).flatMap(({ name, cards: own }) =>
      own.map((card) => [
        { text: `${name}: `, bold: true },
        ...cardRuns(card),
        ...(card.correction ? [{ text: " – " }, ...card.correction.runs] : []),
      ]),
    ),
    cautions,
  };
}

export function sortLabels(dealt: DealtSort, deal: SortDeal): LabelEntry[] {
  const headers = headerCount(dealt);
  return [{ contents: `${summaryOf(dealt, deal.order.length)}${headers > 0 ? `, ${headers} header cards` : ""}` }];
}
