import type { Fix, Report, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import type { DealRequest } from "../../contract";
import { setOption, setOptions } from "../../edits";
import { quotedList } from "../../report";
import { withoutItem } from "../../without-item";
import { dealSort } from "../deal";
import { type DealtSort, pileNames, type SortCard } from "../model";
import type { SortContext } from "./context";
import { activity, articles } from "./example";
import { cardBetween } from "./mat-between";

export const cardInTwoPiles: Rule<SortContext> = {
  code: "card-in-two-piles",
  severity: "warning",
  title: "A card that belongs to several piles",
  why: "The same text stands under several headings, so its card belongs to each of these piles and the key says so. Where that is meant, say `overlap: true`, for two or three piles: then the directions tell the learners, and mats have circles that overlap. With more piles there is no place that belongs to some of them and not to others.",
  example: {
    wrong: `${articles}- café${activity()}`,
    right: `${articles}- café${activity("overlap: true\n")}`,
  },
  check: ({ dealt }) => {
    const { cards, piles, options, deals } = dealt;
    if (deals.length === 0 || (options.overlap && piles.length <= 3)) return [];
    return cards.flatMap((card): Report[] => {
      const [again] = card.again ?? [];
      if (!again) return [];
      const names = quotedList(pileNames(dealt, card));
      const meant = piles.length <= 3 ? [overlapping(dealt)] : [];
      return [
        {
          range: again.range,
          message: `“${card.text}” stands under ${names}, so its card belongs to each of them${piles.length > 3 ? `; of ${piles.length} piles that cannot be shown` : ""}.`,
          related: [{ range: card.source, message: "Here it stands first" }],
          fixes: () => mending(dealt, card, meant),
        },
      ];
    });
  },
};

function* mending(dealt: DealtSort, card: SortCard, meant: readonly Fix[]): Steps<Fix[]> {
  yield "trying a fix";
  return [...meant, ...takenOut(dealt, card)];
}

/** On fields that have no place for such a card circles are needed too. */
function overlapping(dealt: DealtSort): Fix {
  const { block, unit } = dealt.request;
  if (!cardBetween(dealt))
    return { title: "Let piles overlap", edits: [setOption(block, unit.text, "overlap", "true")] };
  const edits = setOptions(block, unit.text, { overlap: "true", mats: "circles" });
  return { title: "Let piles overlap, on circles", edits };
}

/**
 * Takes a card out of the second of its piles, however often it stands there; not where that would be left without a card, or
 * with none that a level could show.
 */
function takenOut(dealt: DealtSort, card: SortCard): Fix[] {
  const { cards, repeated, request } = dealt;
  const [again] = card.again ?? [];
  const pile = card.piles[1] ?? -1;
  if (!again || !cards.some((other) => other !== card && other.piles.includes(pile))) return [];
  const more = repeated.filter((stray) => stray.first === card.source && stray.pile === pile);
  const items = [again, ...more].map(({ item }) => item);
  const after = dealSort(items.reduce<DealRequest>(withoutItem, request));
  if (after.sameLevels !== undefined && dealt.sameLevels === undefined) return [];
  const edits = items.map(({ block }) => ({ range: block, text: "" }));
  return [{ title: more.length === 0 ? "Take it out here" : "Take it out of this pile", edits }];
}
