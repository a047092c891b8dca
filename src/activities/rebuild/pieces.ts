import { plain } from "../../base/run";
import { isNumber, isText, placesSaid } from "../belongs";
import { blankPieces } from "../blank-pieces";
import type { Piece, Press } from "../contract";
import { layoutRebuild, placeRebuild } from "./layout";
import { type DealtRebuild, packetOf, type RebuildDeal, signIn } from "./model";
import { headOf } from "./sheets";

/**
 * The cards in the order dealt. `solution` has the packet's number, the sentence's letter (empty where it is alone) and the
 * places in the sentence, from 0, that a card may take. Blank cards come last and have none of it.
 */
export function rebuildPieces(dealt: DealtRebuild, deal: RebuildDeal, press: Press): Piece[] {
  const { places } = placeRebuild(dealt, deal, press);
  const cards = deal.dealt.map((card, i): Piece => {
    const place = places[i];
    const own = deal.cards[card.sentence] ?? [];
    const alike = own.flatMap(({ text }, part) => (text === card.text ? [part] : []));
    const orders = dealt.sentences[card.sentence]?.orders ?? [];
    const may = new Set(orders.flatMap((order) => alike.map((part) => order.indexOf(part))));
    const packet = packetOf(deal.packets, card.sentence);
    return {
      faces: [{ side: "front", text: plain(card.runs) || (card.picture?.alt ?? ""), source: card.source }],
      at: place ? [{ page: place.page, x: place.x, y: place.y, w: place.w, h: place.h, turn: 0, side: "front" }] : [],
      solution: {
        packet: packet?.number ?? 0,
        sentence: packet ? signIn(packet, card.sentence) : "",
        places: [...may].sort((a, b) => a - b),
      },
    };
  });
  return [...cards, ...blankPieces(places.slice(cards.length), {})];
}

/** What it takes to print this deal again as it was. */
export function rebuildRecord(dealt: DealtRebuild, deal: RebuildDeal, press: Press): unknown {
  const { paper, margin, height, size, rightToLeft } = layoutRebuild(dealt, press);
  const { places } = placeRebuild(dealt, deal, press);
  const { seed, blanks, packet } = dealt.options;
  const lang = dealt.request.teaches;
  return {
    settings: { seed, attempt: deal.attempt, packet, blanks, paper: paper.name, margin, lang },
    layout: { h: height, size: size ?? null, rightToLeft },
    cards: deal.dealt.map((card, i) => ({
      head: headOf(deal, card),
      runs: card.runs,
      ...(card.picture ? { picture: card.picture.path } : {}),
      w: places[i]?.w ?? 0,
    })),
  };
}

/** `packet 2, sentence B, place 1 or 3`, from a card's `solution`; the sentence only where it has a sign. */
export function partSaid(solution: unknown): string {
  const { packet, sentence, places } = (solution ?? {}) as Readonly<Record<string, unknown>>;
  const said = [
    isNumber(packet) && packet > 0 ? `packet ${packet}` : "",
    isText(sentence) && sentence !== "" ? `sentence ${sentence}` : "",
    placesSaid(places),
  ];
  return said.filter(Boolean).join(", ");
}
