import type { Run } from "../../base/run";
import type { Caution, GuideEntry, LabelEntry } from "../contract";
import { pencils } from "../copies";
import { counted } from "../report";
import { summaryOf } from "./deal";
import { cardRuns, zonesOf } from "./key";
import { headerCount } from "./layout";
import { matsOf } from "./mats";
import type { DealtSort, SortCard, SortDeal } from "./model";

/** What a colleague needs to run sort. */
export function sortGuide(dealt: DealtSort): GuideEntry {
  const { request, options, cards, piles, deals } = dealt;
  const count = Math.max(0, ...deals.map(({ order }) => order.length));
  const examples = deals.some((deal) => deal.examples.some((card) => card !== undefined));
  const mats = matsOf(dealt);
  const names = piles.map(({ name }) => `“${name}”`).join(", ");
  const several = cards.some((card) => card.piles.length > 1);
  const cautions: Caution[] = ["cutter", "scissors"];
  if (options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `Learners sort ${cardsByDeal(dealt)} into ${piles.length} piles: ${names}.${several ? " Some cards belong to several piles." : ""}${cards.some(({ correction }) => correction) ? " What is false they put right aloud." : ""}${examples ? " In the gentle sets the header cards show an example." : ""}${options.blanks > 0 ? ` ${counted(options.blanks, "blank card")} in each set ${options.blanks === 1 ? "is" : "are"} for their own.` : ""}`,
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
        ...onlyIn(dealt, card),
      ]),
    ),
    cautions,
  };
}

/** `6 cards`; where the sets differ, each kind of them: `4 cards (gentle) or 6 (hard)`. */
function cardsByDeal(dealt: DealtSort): string {
  const named = new Map<number, string[]>();
  for (const [name, deals] of setsByName(dealt))
    for (const { order } of deals) {
      const names = named.get(order.length) ?? [];
      named.set(order.length, names.includes(name) ? names : [...names, name]);
    }
  const [first, ...rest] = named;
  if (!first) return "no cards";
  if (rest.length === 0) return counted(first[0], "card");
  return [
    `${counted(first[0], "card")} (${first[1].join(", ")})`,
    ...rest.map(([count, names]) => `${count} (${names.join(", ")})`),
  ].join(" or ");
}

/** Deals by what tells their cards apart: their level, unless versions of a level have different cards. */
function setsByName({ deals }: DealtSort): Map<string, SortDeal[]> {
  const cardsOf = ({ order }: SortDeal): string => [...order].sort((a, b) => a - b).join(" ");
  const levels = new Set(deals.map(({ level }) => level));
  const alike = [...levels].every((level) => {
    const own = deals.filter((deal) => deal.level === level);
    return new Set(own.map(cardsOf)).size === 1;
  });
  const sets = new Map<string, SortDeal[]>();
  for (const deal of deals) {
    const version = `version ${deal.version}`;
    const name = alike ? deal.level : levels.size > 1 ? `${deal.level} ${version}` : version;
    sets.set(name, [...(sets.get(name) ?? []), deal]);
  }
  return sets;
}

/** Behind a card that not all sets have, the sets that do: ` (hard)`. */
function onlyIn(dealt: DealtSort, card: SortCard): Run[] {
  const index = dealt.cards.indexOf(card);
  const sets = [...setsByName(dealt)];
  const names = sets.flatMap(([name, deals]) => (deals.some(({ order }) => order.includes(index)) ? [name] : []));
  return names.length === sets.length ? [] : [{ text: ` (${names.join(", ")})`, italic: true }];
}

export function sortLabels(dealt: DealtSort, deal: SortDeal): LabelEntry[] {
  const headers = headerCount(dealt);
  return [{ contents: `${summaryOf(dealt, deal.order.length)}${headers > 0 ? `, ${headers} header cards` : ""}` }];
}
