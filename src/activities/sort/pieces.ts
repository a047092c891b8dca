import { upTo } from "../../base/seed";
import { blankPieces } from "../blank-pieces";
import type { Piece, Press } from "../contract";
import { blanksOf } from "../copies";
import { headerCount, layoutSort, pieceCount } from "./layout";
import { type DealtSort, pileNames, type SortDeal } from "./model";
import { cardAt } from "./sheets";

/** Header cards with their examples, then the cards as dealt, then blank ones. `solution` has the names of a card's piles; header cards and blank ones have none. */
export function sortPieces(dealt: DealtSort, deal: SortDeal, press: Press): Piece[] {
  const { places } = layoutSort(dealt, press);
  const headers = headerCount(dealt);
  const count = pieceCount(dealt, deal);
  const cards = upTo(count).flatMap((piece): Piece[] => {
    const place = places[piece];
    const card = cardAt(dealt, deal, piece);
    const pile = piece < headers ? dealt.piles[piece] : undefined;
    if (!place || (!card && !pile)) return [];
    const { page, x, y, w, h } = place;
    const [text, source] = card ? [card.text, card.source] : [pile?.name ?? "", pile?.source];
    const example = pile ? dealt.cards[deal.examples[piece] ?? -1] : undefined;
    return [
      {
        faces: [
          { side: "front", text, ...(source ? { source } : {}) },
          ...(example ? [{ side: "front" as const, text: example.text, source: example.source }] : []),
        ],
        at: [{ page, x, y, w, h, turn: 0, side: "front" }],
        solution: card ? pileNames(dealt, card) : [],
      },
    ];
  });
  const blank = places.slice(count, count + blanksOf(dealt.options, dealt.request.classes));
  return [...cards, ...blankPieces(blank, [])];
}

/** What it takes to print this deal again as it was. */
export function sortRecord(dealt: DealtSort, deal: SortDeal, press: Press): unknown {
  const { options, piles } = dealt;
  const { grid, size, headerSize, paper, margin } = layoutSort(dealt, press);
  return {
    settings: {
      seed: options.seed,
      attempt: deal.attempt,
      headers: options.headers,
      blanks: options.blanks,
      paper: paper.name,
      margin,
    },
    layout: {
      w: grid.w,
      h: grid.h,
      columns: grid.columns,
      rows: grid.rows,
      size: size ?? null,
      headerSize: headerSize ?? null,
    },
    piles: piles.map(({ name }) => name),
    examples: deal.examples.map((card) => dealt.cards[card ?? -1]?.text ?? null),
    cards: deal.order
      .flatMap((i) => dealt.cards[i] ?? [])
      .map((card) => ({
        runs: card.runs,
        lang: card.lang,
        ...(card.picture ? { picture: card.picture.path } : {}),
        ...(card.by === undefined ? {} : { by: card.by }),
        piles: pileNames(dealt, card),
      })),
  };
}
