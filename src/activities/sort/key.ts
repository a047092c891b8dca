import { pieceMark } from "../../base/mark";
import { plain, type Run } from "../../base/run";
import { type Block, type Cell, setDocument } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { activityPage, stateOf } from "../sheet-page";
import { labelled } from "../statements";
import { summaryOf } from "./deal";
import { headerCount } from "./layout";
import { type DealtSort, pileNames, type SortCard, type SortDeal } from "./model";

/** Pile by pile, what belongs to several under both names; what is false with its correction. */
export function solutionSheets(dealt: DealtSort, deal: SortDeal, view: "solved" | "second", press: Press): Sheet[] {
  if (view === "second") return [];
  const { request, piles, cards } = dealt;
  const examples = deal.examples.flatMap((card, pile) => {
    const shown = cards[card ?? -1];
    return shown ? [[{ text: `${piles[pile]?.name ?? ""}: ` }, ...cardRuns(shown)]] : [];
  });
  const page = activityPage(request, press, "Key", stateOf(request, deal));
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Key: ${request.title}` },
    {
      type: "facts",
      rows: [
        { label: "Cards", value: `${summaryOf(dealt, deal.order.length)}; deal code ${deal.code}` },
        { label: "Code", value: "The last two characters of a card’s mark." },
        ...(examples.length > 0
          ? [
              {
                label: "Examples",
                value: [
                  { text: "on the header cards: " },
                  ...examples.flatMap((runs, i) => (i > 0 ? [{ text: "; " }, ...runs] : runs)),
                ],
              },
            ]
          : []),
      ],
    },
    ...zonesOf(dealt, deal).flatMap(({ name, cards: own }): Block[] => [
      { type: "heading", level: 2, text: `${name} (${own.length})` },
      zoneTable(dealt, deal, own),
    ]),
  ];
  return setDocument(blocks, page, press.typeface);
}

/** Cards of a deal, or of all, that belong to the same piles, in the order of these. */
export function zonesOf(
  dealt: DealtSort,
  deal?: SortDeal,
): { readonly name: string; readonly cards: readonly SortCard[] }[] {
  const zones = new Map<string, SortCard[]>();
  const own = deal ? new Set(deal.order) : undefined;
  const order = dealt.cards
    .filter((_, i) => own?.has(i) ?? true)
    .sort((a, b) => a.piles.length - b.piles.length || (a.piles[0] ?? 0) - (b.piles[0] ?? 0));
  for (const card of order) {
    const key = card.piles.join(" ");
    zones.set(key, [...(zones.get(key) ?? []), card]);
  }
  return [...zones.values()].map((cards) => ({
    name: cards[0] ? pileNames(dealt, cards[0]).join(" + ") : "",
    cards,
  }));
}

function zoneTable(dealt: DealtSort, deal: SortDeal, cards: readonly SortCard[]): Block {
  const corrected = cards.some(({ correction }) => correction);
  if (!corrected) {
    const longest = Math.max(...cards.map((card) => plain(cardRuns(card)).length));
    const entries = cards.map((card) => ({
      runs: [{ text: codeOf(dealt, deal, card), bold: true }, { text: "  " }, ...cardRuns(card)],
      source: card.source,
      lang: card.lang,
    }));
    return { type: "columns", count: longest <= 24 ? 3 : longest <= 40 ? 2 : 1, entries };
  }
  return {
    type: "table",
    columns: [{ head: "Code", width: "fit" }, { head: "Card" }, { head: "Correction" }],
    rows: cards.map((card): Cell[] => [
      codeOf(dealt, deal, card),
      { runs: cardRuns(card), source: card.source, lang: card.lang },
      ...(card.correction ? [{ runs: card.correction.runs, source: card.correction.source, lang: card.lang }] : []),
    ]),
  };
}

function codeOf(dealt: DealtSort, deal: SortDeal, card: SortCard): string {
  const place = deal.order.indexOf(dealt.cards.indexOf(card));
  return pieceMark(deal.code, undefined, headerCount(dealt) + place).split("-")[1] ?? "";
}

/** A card in a list: a picture by its alternative text. */
export function cardRuns(card: SortCard): readonly Run[] {
  return labelled(card);
}
