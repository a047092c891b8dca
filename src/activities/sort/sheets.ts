import { pieceMark } from "../../base/mark";
import type { Run } from "../../base/run";
import { type CardFace, type PlacedCard, placesByPage, setCard } from "../../page/cards";
import type { Box } from "../../page/paper";
import type { Sheet, SheetItem } from "../../page/sheet";
import { cardSheet, copySheets, type SheetParts, sharedSheet } from "../card-sheets";
import type { Press, Sharing } from "../contract";
import { blanksOf } from "../copies";
import {
  faceOf,
  headerBoxes,
  headerCount,
  layoutSort,
  maxLines,
  pieceCount,
  type SortLayout,
  wordsBox,
} from "./layout";
import { type DealtSort, equals, type SortCard, type SortDeal } from "./model";

const markSize = 5;
const noBreak = "\u00a0";
const labelSize = 8;
/** Baseline of the mark above the cut, and its distance from the sides, mm. */
const foot = 2.2;
const side = 2.6;

/** The cards of one copy: names of the piles, cards as dealt, blank ones. */
export function pieceSheets(
  dealt: DealtSort,
  deal: SortDeal,
  copy: number | undefined,
  press: Press,
): readonly Sheet[] {
  return copySheets(placesOf(dealt, deal, press), copy, (parts) => sheetWith(dealt, deal, press, parts));
}

/** Sets of a few rows lie on one sheet, each in rows of its own. */
export function sortSharing(dealt: DealtSort, deal: SortDeal, press: Press): Sharing | undefined {
  const { box } = layoutSort(dealt, press);
  const draw = (parts: SheetParts): Sheet => sheetWith(dealt, deal, press, parts);
  return sharedSheet(box, placesOf(dealt, deal, press), draw, dealt.options.cards);
}

/** Where the cards of a set lie, page by page. */
function placesOf(dealt: DealtSort, deal: SortDeal, press: Press): PlacedCard[][] {
  const { request, options } = dealt;
  return placesByPage(layoutSort(dealt, press).places, pieceCount(dealt, deal) + blanksOf(options, request.classes));
}

function sheetWith(dealt: DealtSort, deal: SortDeal, press: Press, parts: SheetParts): Sheet {
  const layout = layoutSort(dealt, press);
  const draw = (place: PlacedCard, copy: number | undefined) => drawPiece(dealt, deal, place, copy, layout, press);
  return cardSheet(dealt.request, deal, press, parts, draw);
}

function drawPiece(
  dealt: DealtSort,
  deal: SortDeal,
  place: PlacedCard,
  copy: number | undefined,
  layout: SortLayout,
  press: Press,
): SheetItem[] {
  const headers = headerCount(dealt);
  const { x, y, w, h, card: piece } = place;
  const mark = pieceMark(deal.code, copy, piece);
  // A blank card has its mark and nothing else.
  if (piece >= pieceCount(dealt, deal)) return [markAt(mark, place)];
  const area: SheetItem = { type: "area", x, y, w, h, piece };
  const pile = piece < headers ? dealt.piles[piece] : undefined;
  if (pile) {
    const source = pile.source ? { source: pile.source } : {};
    const face = { runs: [{ text: pile.name, bold: true }], lang: pile.lang, ...source };
    const { headerSize: size, exampleSize } = layout;
    const shown = dealt.cards[deal.examples[piece] ?? -1];
    const { name, example } = headerBoxes(place, shown !== undefined);
    const words = size === undefined ? [] : (setCard(face, name, size, press.typeface, { maxLines: 3 }) ?? []);
    const below =
      shown && exampleSize !== undefined
        ? (setCard({ ...faceOf(shown, press), source: shown.source }, example, exampleSize, press.typeface, {
            maxLines: 3,
          }) ?? [])
        : [];
    return [area, ...words, ...below, markAt(mark, place)];
  }
  const card = cardAt(dealt, deal, piece);
  if (!card) return [];
  const face = { ...faceOf(card, press), source: card.source };
  const words = layout.size === undefined ? [] : wordsOf(face, wordsBox(place), layout.size, press);
  return [area, ...words, ...(card.by === undefined ? [] : [labelAt(card.by, place)]), markAt(mark, place)];
}

/** What stands on a card; a pair that takes two lines is parted after its equals sign, or before it, where its sides have room. */
function wordsOf(face: CardFace, box: Box, size: number, press: Press): SheetItem[] {
  const set = (runs: readonly Run[]) => setCard({ ...face, runs }, box, size, press.typeface, { maxLines }) ?? [];
  const words = set(face.runs);
  const parted = [`${noBreak}= `, ` =${noBreak}`]
    .map((between) => set(partedAt(face.runs, between)))
    .find((items) => items.length === words.length);
  return parted ? parted.map(asWritten) : words;
}

/** The runs of a pair so that a line ends at its equals sign or nowhere; none where there is no such sign. */
function partedAt(runs: readonly Run[], between: string): readonly Run[] {
  const sign = runs.findIndex(({ text }) => text === equals);
  if (sign < 0 || runs.some(({ text }) => text.includes(noBreak))) return [];
  return runs.map((run, i) => ({ ...run, text: i === sign ? between : run.text.replaceAll(" ", noBreak) }));
}

function asWritten(item: SheetItem): SheetItem {
  if (item.type !== "text") return item;
  return { ...item, runs: item.runs.map((run) => ({ ...run, text: run.text.replaceAll(noBreak, " ") })) };
}

/** The card with a piece's number; undefined for header cards and blank ones. */
export function cardAt(dealt: DealtSort, deal: SortDeal, piece: number): SortCard | undefined {
  const place = deal.order[piece - headerCount(dealt)];
  return place === undefined ? undefined : dealt.cards[place];
}

function markAt(mark: string, { x, y, w, h }: Box): SheetItem {
  return {
    type: "text",
    runs: [{ text: mark }],
    x: x + w - side,
    y: y + h - foot,
    size: markSize,
    turn: 0,
    anchor: "end",
    lang: "zxx",
  };
}

/** The code of the learner who wrote the card. */
function labelAt(code: string, { x, y, h }: Box): SheetItem {
  return {
    type: "text",
    runs: [{ text: code, bold: true }],
    x: x + side,
    y: y + h - foot,
    size: labelSize,
    turn: 0,
    anchor: "start",
    lang: "zxx",
  };
}
