import { blankPieces } from "../blank-pieces";
import type { Piece, Press } from "../contract";
import { blanksOf } from "../copies";
import { recorded } from "../printed";
import { layoutLoop } from "./layout";
import { cardAt, cardCount, type DealtLoop, type LoopDeal, signOfPiece } from "./model";

/** The cards in the order dealt, answer and prompt; `next` is the card that goes on from there, of decoys none. Blank ones come last. */
export function loopPieces(dealt: DealtLoop, deal: LoopDeal, press: Press): Piece[] {
  const { places } = layoutLoop(dealt, press);
  const cards = deal.dealt.flatMap((place, piece): Piece[] => {
    const card = cardAt(deal, place);
    const at = places[piece];
    if (!card || !at) return [];
    const { page, x, y, w, h } = at;
    return [
      {
        faces: [card.answer, card.prompt].map(({ text, source }) => ({ side: "front", text, source })),
        at: [{ page, x, y, w, h, turn: 0, side: "front" }],
        solution: "",
        ...(place < deal.cards.length ? { next: deal.dealt.indexOf((place + 1) % deal.cards.length) } : {}),
      },
    ];
  });
  const count = cardCount(deal);
  const blank = places.slice(count, count + blanksOf(dealt.options, dealt.request.classes));
  return [...cards, ...blankPieces(blank, "")];
}

/** What it takes to print this deal again as it was. */
export function loopRecord(dealt: DealtLoop, deal: LoopDeal, press: Press): unknown {
  const { options } = dealt;
  const { paper, grid, size, signSize } = layoutLoop(dealt, press);
  const { seed, blanks, margin } = options;
  return {
    settings: { seed, attempt: deal.attempt, size: options.size, blanks, paper: options.paper, margin },
    layout: { landscape: paper.width > paper.height, w: grid.w, h: grid.h, size: size ?? null, sign: signSize },
    cards: deal.dealt.flatMap((place, piece) => {
      const card = cardAt(deal, place);
      return card
        ? [{ sign: signOfPiece(deal, piece), place, answer: recorded(card.answer), prompt: recorded(card.prompt) }]
        : [];
    }),
    posting: deal.posting.map((piece) => signOfPiece(deal, piece)),
  };
}
