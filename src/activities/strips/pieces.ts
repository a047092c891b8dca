import { blankPieces } from "../blank-pieces";
import type { Piece, PiecePlace, Press } from "../contract";
import { layoutStrips, placesOn } from "./layout";
import { type DealtStrips, type StripsDeal, signOf } from "./model";
import { backPlaces, backTexts } from "./sheets";
import { placesOf, printedEvent } from "./story";

/** The strips in the order dealt, then blank ones. `solution` has the places in the story, from 0, that a strip may take; of a blank one none. */
export function stripPieces(dealt: DealtStrips, deal: StripsDeal, press: Press): Piece[] {
  const { options } = dealt;
  const { events } = deal;
  const layout = layoutStrips(dealt, press);
  const withBacks = options.backs === "numbers";
  const sheetAt = (page: number): number => (withBacks ? 2 * page : page);
  const backs = backPlaces(dealt, layout);
  const texts = backTexts(deal);
  const strips = deal.dealt.flatMap((index, card): Piece[] => {
    const event = events[index];
    const front = layout.places[card];
    const back = backs[card];
    if (!event || !front || !back) return [];
    const at = ({ page, x, y, w, h }: typeof front, side: PiecePlace["side"], turn: number): PiecePlace => {
      return { page: side === "back" ? sheetAt(page) + 1 : sheetAt(page), x, y, w, h, turn, side };
    };
    return [
      {
        faces: [
          { side: "front", text: printedEvent(deal, index)?.text ?? event.text, source: event.source },
          ...(withBacks ? [{ side: "back" as const, text: texts[card] ?? "" }] : []),
        ],
        at: [at(front, "front", 0), ...(withBacks ? [at(back, "back", back.turn)] : [])],
        solution: placesOf(events, event),
      },
    ];
  });
  const blank = placesOn(layout, dealt, deal)
    .slice(deal.dealt.length)
    .map((place) => ({ ...place, page: sheetAt(place.page) }));
  return [...strips, ...blankPieces(blank, [])];
}

/** What it takes to print this deal again as it was. */
export function stripRecord(dealt: DealtStrips, deal: StripsDeal, press: Press): unknown {
  const { options, request } = dealt;
  const { paper, margin, grid, size, rightToLeft } = layoutStrips(dealt, press);
  const { seed, backs, flip, blanks } = options;
  const texts = backTexts(deal);
  return {
    settings: {
      seed,
      ...(deal.desk === undefined ? {} : { desk: deal.desk }),
      attempt: deal.attempt,
      backs,
      flip,
      blanks,
      paper: paper.name,
      margin,
      lang: request.teaches,
    },
    layout: { w: grid.w, h: grid.h, size: size ?? null, rightToLeft },
    strips: deal.dealt.map((index, card) => ({
      sign: signOf(card),
      runs: printedEvent(deal, index)?.runs ?? [],
      ...(deal.events[index]?.picture ? { picture: deal.events[index].picture.path } : {}),
      ...(backs === "numbers" ? { back: texts[card] ?? "" } : {}),
    })),
  };
}
