import { pieceMark } from "../../base/mark";
import { upTo } from "../../base/seed";
import {
  backBox,
  backsOf,
  type CardPicture,
  cardCuts,
  type PlacedBack,
  type PlacedCard,
  setCard,
} from "../../page/cards";
import { sheetOf } from "../../page/document";
import type { Box } from "../../page/paper";
import { mm } from "../../page/paper";
import type { QuarterTurn, Sheet, SheetItem } from "../../page/sheet";
import type { Press } from "../contract";
import { stationWords } from "../paper-words";
import { activityPage, folio, setLabel, sideFolio, stateOf } from "../sheet-page";
import { areasOf, faceOf, layoutStrips, maxLines, partsOf, placesOn, type StripsLayout } from "./layout";
import { type DealtStrips, type StripEvent, type StripsDeal, signOf } from "./model";
import { placesOf, printedEvent, writePlaces } from "./story";

const markSize = 5;
/** The desk's number is read at the desk. */
const deskSize = 7;
const signSize = 14;
const backSize = 22;
/** From line to line on blank strips, mm. */
const writingPitch = 9;

/** The strips of one copy as dealt, the blank ones last; with backs, each sheet's back follows its front. */
export function pieceSheets(dealt: DealtStrips, deal: StripsDeal, copy: number | undefined, press: Press): Sheet[] {
  const layout = layoutStrips(dealt, press);
  const { request, options } = dealt;
  const places = placesOn(layout, dealt, deal);
  const pages = 1 + (places.at(-1)?.page ?? 0);
  const state = [...stateOf(request, deal).slice(0, -1), setLabel(copy), deal.code];
  const page = { ...activityPage(request, press, "Strips", state), stock: "card" as const };
  return upTo(pages).flatMap((index) => {
    const here = places.filter((place) => place.page === index);
    const strips = here.flatMap((place) => [
      ...(place.card < deal.dealt.length
        ? eventStrip(dealt, deal, place, layout, press)
        : blankStrip(dealt, deal, place, layout)),
      ...markLines(
        pieceMark(deal.code, copy, place.card),
        deskOf(dealt, deal),
        areasOf(place, layout.rightToLeft).mark,
      ),
    ]);
    const backed = options.backs === "numbers";
    const frontFolio = (at: number, of: number): string =>
      backed ? sideFolio("front", options.flip, at, of) : folio(at, of);
    const front = sheetOf(
      { ...page, folio: frontFolio, label: `${request.title}, ${state.join(" · ")}, ${folio(index, pages)}` },
      index,
      pages,
      [...cardCuts(here), ...strips],
    );
    return backed ? [front, backSheet(dealt, deal, layout, page, { index, pages })] : [front];
  });
}

function eventStrip(
  dealt: DealtStrips,
  deal: StripsDeal,
  place: PlacedCard,
  { size, rightToLeft }: StripsLayout,
  press: Press,
): SheetItem[] {
  const event = printedEvent(deal, deal.dealt[place.card] ?? 0);
  if (!event) return [];
  const { sign, text } = areasOf(place, rightToLeft);
  const lang = dealt.request.teaches;
  const face = { ...faceOf(event, press), lang };
  const { picture, words } = partsOf(event, text, rightToLeft, press);
  const items =
    size === undefined ? [] : (setCard(face, words, size, press.typeface, { align: "start", maxLines }) ?? []);
  const { x, y, w, h } = place;
  return [
    { type: "area", x, y, w, h, piece: place.card },
    small(signOf(place.card), sign, signSize, true),
    ...(picture ? [pictureItem(picture, event)] : []),
    ...(rightToLeft ? items.map((item) => toRight(item, words)) : items),
  ];
}

/** Its number on the left and lines to write on. Each class has its own ones. */
function blankStrip(
  { options }: DealtStrips,
  { dealt }: StripsDeal,
  place: PlacedCard,
  { rightToLeft }: StripsLayout,
): SheetItem[] {
  const { sign, text } = areasOf(place, rightToLeft);
  const lines = Math.max(1, Math.min(2, Math.floor(text.h / writingPitch)));
  const first = place.y + place.h / 2 - ((lines - 1) * writingPitch) / 2 + 2.5;
  return [
    small(`${((place.card - dealt.length) % options.blanks) + 1}`, sign, signSize, true),
    ...upTo(lines).map((i): SheetItem => {
      const y = first + i * writingPitch;
      return { type: "line", role: "rule", x1: text.x, y1: y, x2: text.x + text.w, y2: y, weight: 0.35 };
    }),
  ];
}

function pictureItem({ key, alt, x, y, w, h }: CardPicture & Box, { source }: StripEvent): SheetItem {
  return { type: "picture", key, alt, x, y, w, h, turn: 0, source };
}

/** The same line, set from the right. */
function toRight(item: SheetItem, box: Box): SheetItem {
  return item.type === "text" ? { ...item, x: box.x + box.w, anchor: "end" } : item;
}

/** A short text in the middle of a box. */
function small(text: string, box: Box, size: number, bold: boolean, turn: QuarterTurn = 0): SheetItem {
  // Figures and capitals are about 0.72 em high: half of that below the middle.
  const drop = mm(size) * 0.36 * (turn === 2 ? -1 : 1);
  return {
    type: "text",
    runs: [bold ? { text, bold } : { text }],
    x: box.x + box.w / 2,
    y: box.y + box.h / 2 + drop,
    size,
    turn,
    anchor: "middle",
    lang: "zxx",
  };
}

/** A mark in two lines, code above; over it the desk that the strip lies on, where there are several. */
function markLines(mark: string, desk: string | undefined, box: Box): SheetItem[] {
  const [code, ...rest] = mark.split("-");
  const lines = [...(desk === undefined ? [] : [desk]), code ?? "", rest.join("-")].filter((line) => line !== "");
  const leading = mm(markSize) * 1.2;
  const middle = (lines.length - 1) / 2;
  return lines.map((line, i) => {
    const above = line === desk;
    const y = box.y + (i - middle) * leading - (above ? 0.5 : 0);
    return small(line, { ...box, y }, above ? deskSize : markSize, above);
  });
}

function deskOf({ request }: DealtStrips, { desk }: StripsDeal): string | undefined {
  return desk === undefined ? undefined : `${stationWords(request.explains).desk} ${desk}`;
}

/** What stands on the back of each strip of a sheet. */
export function backTexts(deal: StripsDeal): string[] {
  return deal.dealt.map((index) => {
    const event = deal.events[index];
    return event ? writePlaces(placesOf(deal.events, event)) : "";
  });
}

/** The backs of a sheet's strips, as its other side is seen. */
export function backPlaces({ options }: DealtStrips, { places, paper }: StripsLayout): PlacedBack[] {
  return backsOf(places, options.flip, paper);
}

function backSheet(
  dealt: DealtStrips,
  deal: StripsDeal,
  layout: StripsLayout,
  page: ReturnType<typeof activityPage>,
  { index, pages }: { readonly index: number; readonly pages: number },
): Sheet {
  const texts = backTexts(deal);
  const items = backPlaces(dealt, layout)
    .filter((place) => place.page === index && place.card < texts.length)
    .map((place) => small(texts[place.card] ?? "", backBox(place), backSize, true, place.turn));
  const backFolio = (at: number, of: number): string => sideFolio("back", dealt.options.flip, at, of);
  const label = `${page.label}, ${backFolio(index, pages)}`;
  return { ...sheetOf({ ...page, folio: backFolio, label }, index, pages, items), back: true };
}
