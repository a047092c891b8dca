import { pieceMark } from "../../base/mark";
import { upTo } from "../../base/seed";
import { type PlacedCard, setCard } from "../../page/cards";
import { type Box, mm } from "../../page/paper";
import type { Sheet, SheetItem } from "../../page/sheet";
import { cardSheet, copySheets, type SheetParts, sharedSheet } from "../card-sheets";
import type { Press, Sharing } from "../contract";
import { areasOf, faceOf, layoutRebuild, maxLines, placeRebuild, type RebuildLayout } from "./layout";
import { type DealtRebuild, packetOf, type RebuildDeal, type SentenceCard, signIn } from "./model";

const markSize = 5;
const numberSize = 8;

/** The cards of one copy, packet by packet as dealt, the blank ones last. */
export function pieceSheets(
  dealt: DealtRebuild,
  deal: RebuildDeal,
  copy: number | undefined,
  press: Press,
): readonly Sheet[] {
  return copySheets(placesOf(dealt, deal, press), copy, (parts) => sheetWith(dealt, deal, press, parts));
}

/** Sets of a few rows lie on one sheet, each in rows of its own. */
export function rebuildSharing(dealt: DealtRebuild, deal: RebuildDeal, press: Press): Sharing | undefined {
  const { box } = layoutRebuild(dealt, press);
  return sharedSheet(box, placesOf(dealt, deal, press), (parts) => sheetWith(dealt, deal, press, parts));
}

/** Where the cards of a set lie, page by page. */
function placesOf(dealt: DealtRebuild, deal: RebuildDeal, press: Press): PlacedCard[][] {
  const { pages, places } = placeRebuild(dealt, deal, press);
  return upTo(pages).map((index) => places.filter((place) => place.page === index));
}

function sheetWith(dealt: DealtRebuild, deal: RebuildDeal, press: Press, parts: SheetParts): Sheet {
  const layout = layoutRebuild(dealt, press);
  return cardSheet(dealt.request, deal, press, parts, (place, copy) => {
    const card = deal.dealt[place.card];
    const mark = pieceMark(deal.code, copy, place.card);
    // A blank card has its mark and nothing else.
    return card ? drawCard(dealt, deal, card, place, mark, layout, press) : [footLine(mark, place)];
  });
}

/** What stands above a card's words: its packet's number, and its sentence's letter where there are several. */
export function headOf({ packets }: RebuildDeal, { sentence }: SentenceCard): string {
  const packet = packetOf(packets, sentence);
  return packet ? [String(packet.number), signIn(packet, sentence)].filter(Boolean).join(" ") : "";
}

function drawCard(
  dealt: DealtRebuild,
  deal: RebuildDeal,
  card: SentenceCard,
  place: PlacedCard,
  mark: string,
  { size, rightToLeft }: RebuildLayout,
  press: Press,
): SheetItem[] {
  const { x, y, w, h } = place;
  const { head, words } = areasOf(place);
  const face = { ...faceOf(card, press), lang: dealt.request.teaches };
  return [
    { type: "area", x, y, w, h, piece: place.card },
    {
      type: "text",
      runs: [{ text: headOf(deal, card), bold: true }],
      x: rightToLeft ? head.x + head.w : head.x,
      y: head.y + mm(numberSize) * 0.74,
      size: numberSize,
      turn: 0,
      anchor: rightToLeft ? "end" : "start",
      lang: "zxx",
    },
    ...(size === undefined ? [] : (setCard(face, words, size, press.typeface, { maxLines }) ?? [])),
    footLine(mark, place),
  ];
}

function footLine(mark: string, place: Box): SheetItem {
  const { foot } = areasOf(place);
  const y = foot.y + foot.h / 2 + mm(markSize) * 0.36;
  return {
    type: "text",
    runs: [{ text: mark }],
    x: foot.x + foot.w / 2,
    y,
    size: markSize,
    turn: 0,
    anchor: "middle",
    lang: "zxx",
  };
}
