import { pieceMark } from "../../base/mark";
import { upTo } from "../../base/seed";
import { type PlacedCard, placesByPage, setCard } from "../../page/cards";
import { bodyBox } from "../../page/furniture";
import { type Box, mm } from "../../page/paper";
import type { Sheet, SheetItem } from "../../page/sheet";
import { cardSheet, copySheets, type SheetParts, sharedSheet } from "../card-sheets";
import type { Press, Sharing } from "../contract";
import { blanksOf } from "../copies";
import { cardFace } from "../printed";
import { areasOf, type CardAreas, capHeight, type LoopLayout, layoutLoop, maxLines } from "./layout";
import { cardAt, cardCount, type DealtLoop, type LoopDeal, signOfPiece } from "./model";

const markSize = 5;
/** From line to line on blank cards, mm. */
const writingPitch = 9;

/** The cards of one copy as dealt, the blank ones last. */
export function pieceSheets(
  dealt: DealtLoop,
  deal: LoopDeal,
  copy: number | undefined,
  press: Press,
): readonly Sheet[] {
  return copySheets(placesOf(dealt, deal, press), copy, (parts) => sheetWith(dealt, deal, press, parts));
}

/** Sets of a few mini cards lie on one sheet, each in rows of its own. */
export function loopSharing(dealt: DealtLoop, deal: LoopDeal, press: Press): Sharing | undefined {
  // Cards on the walls are one set; how many stand on a sheet is said.
  if (dealt.options.size === "room") return undefined;
  const { paper, margin } = layoutLoop(dealt, press);
  const draw = (parts: SheetParts): Sheet => sheetWith(dealt, deal, press, parts);
  return sharedSheet(bodyBox(paper, margin), placesOf(dealt, deal, press), draw, dealt.options.cards);
}

/** Where the cards of a set lie, page by page. */
function placesOf(dealt: DealtLoop, deal: LoopDeal, press: Press): PlacedCard[][] {
  const { request, options } = dealt;
  return placesByPage(layoutLoop(dealt, press).places, cardCount(deal) + blanksOf(options, request.classes));
}

function sheetWith(dealt: DealtLoop, deal: LoopDeal, press: Press, parts: SheetParts): Sheet {
  const layout = layoutLoop(dealt, press);
  const { size } = dealt.options;
  const draw = (place: PlacedCard, copy: number | undefined): SheetItem[] => {
    const areas = areasOf(place, size, layout.signSize);
    const mark = pieceMark(deal.code, copy, place.card);
    return place.card < cardCount(deal)
      ? wordCard(dealt, deal, place, areas, mark, layout, press)
      : blankCard(areas, mark, size);
  };
  const { paper, grid } = layout;
  // A card that has a sheet to itself is posted as it is.
  return cardSheet(dealt.request, deal, press, parts, draw, { paper, cut: grid.columns * grid.rows > 1 });
}

function wordCard(
  { options }: DealtLoop,
  deal: LoopDeal,
  place: PlacedCard,
  areas: CardAreas,
  mark: string,
  { size, signSize }: LoopLayout,
  press: Press,
): SheetItem[] {
  const card = cardAt(deal, deal.dealt[place.card]);
  if (!card) return [];
  const { x, y, w, h } = place;
  const set = (face: typeof card.answer, box: Box): SheetItem[] =>
    size === undefined ? [] : (setCard(cardFace(face, press), box, size, press.typeface, { maxLines }) ?? []);
  return [
    { type: "area", x, y, w, h, piece: place.card },
    signItem(signOfPiece(deal, place.card), areas.sign, signSize, options.size),
    ...set(card.answer, areas.answer),
    ...middle(areas, options.size),
    ...set(card.prompt, areas.prompt),
    ...markItems(mark, areas.mark),
  ];
}

/** In the room at the left above the words, else in the middle of its column. */
function signItem(text: string, box: Box, size: number, where: "room" | "mini"): SheetItem {
  const line = { type: "text", runs: [{ text, bold: true }], size, turn: 0, lang: "zxx" } as const;
  if (where === "room") return { ...line, x: box.x, y: box.y + capHeight(size), anchor: "start" };
  return { ...line, x: box.x + box.w / 2, y: box.y + box.h / 2 + capHeight(size) / 2, anchor: "middle" };
}

/** The line between the halves, and a triangle beside the one that asks. */
function middle({ line, pointer: [x, y] }: CardAreas, where: "room" | "mini"): SheetItem[] {
  const arm = where === "room" ? 2.6 : 1.1;
  return [
    {
      type: "line",
      role: "rule",
      x1: line.x1,
      y1: line.y,
      x2: line.x2,
      y2: line.y,
      weight: where === "room" ? 0.75 : 0.35,
    },
    {
      type: "shape",
      points: [
        [x - arm * 0.8, y - arm],
        [x + arm * 0.8, y],
        [x - arm * 0.8, y + arm],
      ],
    },
  ];
}

function blankCard(areas: CardAreas, mark: string, where: "room" | "mini"): SheetItem[] {
  const halves = [areas.answer, areas.prompt].flatMap((box) => {
    const lines = Math.max(1, Math.min(2, Math.floor(box.h / writingPitch)));
    const first = box.y + box.h / 2 - ((lines - 1) * writingPitch) / 2 + 2.5;
    return upTo(lines).map((i): SheetItem => {
      const y = first + i * writingPitch;
      return { type: "line", role: "rule", x1: box.x, y1: y, x2: box.x + box.w, y2: y, weight: 0.25, dash: [0.6, 1.2] };
    });
  });
  return [...middle(areas, where), ...halves, ...markItems(mark, areas.mark)];
}

/** A mark in two lines, code above. */
function markItems(mark: string, box: Box): SheetItem[] {
  const [code, ...rest] = mark.split("-");
  const lines = [code ?? "", rest.join("-")].filter((text) => text !== "");
  const leading = mm(markSize) * 1.2;
  return lines.map((text, i) => ({
    type: "text",
    runs: [{ text }],
    x: box.x + box.w / 2,
    y: box.y + box.h / 2 + capHeight(markSize) / 2 + (i - (lines.length - 1) / 2) * leading,
    size: markSize,
    turn: 0,
    anchor: "middle",
    lang: "zxx",
  }));
}
