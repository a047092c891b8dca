import { pieceMark } from "../../base/mark";
import { upTo } from "../../base/seed";
import { cardCuts, lowered, type PlacedCard, setCard, shareRows } from "../../page/cards";
import { sheetOf } from "../../page/document";
import { type Box, mm } from "../../page/paper";
import type { Sheet, SheetItem } from "../../page/sheet";
import type { Press, Sharing } from "../contract";
import { activityPage, folio, setLabel, setsLabel, stateOf } from "../sheet-page";
import { areasOf, faceOf, layoutRebuild, maxLines, placeRebuild, type RebuildLayout } from "./layout";
import { type DealtRebuild, packetOf, type RebuildDeal, type SentenceCard, signIn } from "./model";

const markSize = 5;
const numberSize = 8;

/** The cards of one copy, packet by packet as dealt, the blank ones last. */
export function pieceSheets(dealt: DealtRebuild, deal: RebuildDeal, copy: number | undefined, press: Press): Sheet[] {
  const { pages, places } = placeRebuild(dealt, deal, press);
  return upTo(pages).map((index) => {
    const here = places.filter((place) => place.page === index);
    return sheetWith(dealt, deal, press, { set: setLabel(copy), index, pages, parts: [{ copy, places: here }] });
  });
}

/** Sets of a few rows lie on one sheet, each in rows of its own. */
export function rebuildSharing(dealt: DealtRebuild, deal: RebuildDeal, press: Press): Sharing | undefined {
  const { box } = layoutRebuild(dealt, press);
  const { pages, places } = placeRebuild(dealt, deal, press);
  const shared = pages > 1 ? undefined : shareRows(box, places);
  if (!shared) return undefined;
  const sheet = (copies: readonly (number | undefined)[]): Sheet => {
    const parts = copies.map((copy, i) => ({ copy, places: lowered(places, i * shared.apart) }));
    return sheetWith(dealt, deal, press, { set: setsLabel(copies), index: 0, pages: 1, parts });
  };
  return { ...shared, sheet };
}

interface SheetParts {
  /** What the sheet says of the sets on it. */
  readonly set: string;
  readonly index: number;
  readonly pages: number;
  readonly parts: readonly { readonly copy: number | undefined; readonly places: readonly PlacedCard[] }[];
}

function sheetWith(
  dealt: DealtRebuild,
  deal: RebuildDeal,
  press: Press,
  { set, index, pages, parts }: SheetParts,
): Sheet {
  const layout = layoutRebuild(dealt, press);
  const { request } = dealt;
  const state = [...stateOf(request, deal).slice(0, -1), set, deal.code];
  const page = { ...activityPage(request, press, "Cards", state), stock: "card" as const };
  const label = `${request.title}, ${state.join(" · ")}, ${folio(index, pages)}`;
  const cards = parts.flatMap(({ copy, places }) =>
    places.flatMap((place): SheetItem[] => {
      const card = deal.dealt[place.card];
      const mark = pieceMark(deal.code, copy, place.card);
      // A blank card has its mark and nothing else.
      return card ? drawCard(dealt, deal, card, place, mark, layout, press) : [footLine(mark, place)];
    }),
  );
  return sheetOf({ ...page, label }, index, pages, [...cardCuts(parts.flatMap(({ places }) => places)), ...cards]);
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
