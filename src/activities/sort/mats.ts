import { upTo } from "../../base/seed";
import { turned } from "../../page/cards";
import { setInBox, sheetOf } from "../../page/document";
import { bodyBox } from "../../page/furniture";
import { type Box, papers } from "../../page/paper";
import type { LineItem, Sheet, SheetItem } from "../../page/sheet";
import type { Press } from "../contract";
import { setsWanted } from "../copies";
import { activityPage } from "../sheet-page";
import type { DealtSort, SortPile } from "./model";

/** pt */
const nameSize = 20;
const weight = 1;
/** Straight pieces that a circle is drawn of: at a radius of 90 mm they leave it by less than 0.02 mm. */
const steps = 180;

/** What the mats of a sort show: circles only for two or three piles. */
export function matsOf(dealt: DealtSort): "none" | "circles" | "fields" {
  return dealt.deals.length === 0 ? "none" : shapeFor(dealt);
}

/** The same before anything is dealt. */
export function shapeFor({
  options,
  cards,
  piles,
}: Pick<DealtSort, "options" | "cards" | "piles">): "none" | "circles" | "fields" {
  if (options.mats === "none") return "none";
  const round = piles.length <= 3;
  if (options.mats === "auto") return round && cards.some((card) => card.piles.length > 1) ? "circles" : "none";
  return options.mats === "circles" && round ? "circles" : "fields";
}

/** A mat for each set, lying on its long side. */
export function sortPapers(dealt: DealtSort, press: Press): Sheet[] {
  const shape = matsOf(dealt);
  if (shape === "none") return [];
  const { request, options, piles, deals } = dealt;
  // Only pieces are copied from a master: each of its sets in the largest class gets a mat.
  const masters = setsWanted(dealt) ?? 1;
  const paper = turned(papers[options.paper]);
  const page = { ...activityPage(request, press, "Mat", []), paper };
  const box = bodyBox(paper, options.margin);
  const items = shape === "circles" ? circles(piles, box, press) : fields(piles, box, press);
  const sets = deals.reduce((sum, { copies }) => sum + (copies === "by copier" ? masters : copies), 0);
  return upTo(sets).map((set) =>
    sheetOf({ ...page, folio: () => (sets > 1 ? `mat ${set + 1} of ${sets}` : "one mat") }, set, sets, items),
  );
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Two circles side by side, or three that all meet in the middle, as large as the box allows. mm */
export function circlesIn(count: number, box: Box): Circle[] {
  const half = weight * 0.18;
  const [cx, cy] = [box.x + box.w / 2, box.y + box.h / 2];
  if (count < 3) {
    // Centres 1.25 radii apart: what belongs to both gets three eighths of a circle's width.
    const r = Math.min(box.h / 2, box.w / 3.25) - half;
    return [-0.625, 0.625].map((shift) => ({ x: cx + shift * r, y: cy, r }));
  }
  const apart = 1;
  const rise = (apart * Math.sqrt(3)) / 2;
  const r = Math.min(box.h / (2 + rise), box.w / (2 + apart)) - half;
  const top = cy - (rise / 2) * r;
  return [
    { x: cx - (apart / 2) * r, y: top, r },
    { x: cx + (apart / 2) * r, y: top, r },
    { x: cx, y: top + rise * r, r },
  ];
}

/**
 * The largest cards that find room in each place of a mat of circles, also where only two of three overlap, mm. Of two circles the
 * lens is 0.64 radii wide over a height of 0.62 radii; of three, where only two overlap, 0.66 radii over 0.41 (computed), turned as
 * that place is.
 */
export function largestOnCircles(count: number, box: Box): { readonly maxW: number; readonly maxH: number } {
  const [{ r } = { r: 0 }] = circlesIn(count, box);
  const [w, h] = count < 3 ? [0.64, 0.38] : [0.66, 0.37];
  return { maxW: w * r, maxH: h * r };
}

function circles(piles: readonly SortPile[], box: Box, press: Press): SheetItem[] {
  const all = circlesIn(piles.length, box);
  return all.flatMap((circle, i): SheetItem[] => {
    const pile = piles[i];
    return pile ? [...ring(circle), ...nameIn(pile, nameBox(all, i), press)] : [];
  });
}

/** Height of a name, and its distance from the rings beside it, mm. */
const nameHeight = 16;
const nameClear = 3;

/** Where a circle is alone: towards the outside, and for the third at the foot. */
function nameBox(all: readonly Circle[], i: number): Box {
  const { x, y, r } = all[i] ?? { x: 0, y: 0, r: 0 };
  // Half of what a ring is wide so far above or below its middle.
  const half = (off: number): number => Math.sqrt(Math.max(0, r * r - off * off));
  if (i === 2) {
    const w = half(0.75 * r) - nameClear;
    return { x: x - w, y: y + 0.75 * r - nameHeight, w: 2 * w, h: nameHeight };
  }
  const other = all[1 - i] ?? { x, y, r };
  const top = 0.6 * r;
  const outer = half(top) - nameClear;
  const inner = Math.abs(other.x - x) - half(top - nameHeight) - nameClear;
  return { x: x - (i === 0 ? outer : inner), y: y - top, w: outer + inner, h: nameHeight };
}

function ring({ x, y, r }: Circle): LineItem[] {
  const point = (i: number): readonly [number, number] => {
    const angle = (2 * Math.PI * i) / steps;
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
  };
  return upTo(steps).map((i) => {
    const [[x1, y1], [x2, y2]] = [point(i), point(i + 1)];
    return { type: "line", role: "rule", x1, y1, x2, y2, weight };
  });
}

/** Up to three fields in a row, more in two rows. */
function fields(piles: readonly SortPile[], box: Box, press: Press): SheetItem[] {
  const columns = piles.length <= 3 ? piles.length : Math.ceil(piles.length / 2);
  const rows = Math.ceil(piles.length / columns);
  const [w, h] = [box.w / columns, box.h / rows];
  const rules: SheetItem[] = [];
  const line = (x1: number, y1: number, x2: number, y2: number): void => {
    rules.push({ type: "line", role: "rule", x1, y1, x2, y2, weight });
  };
  for (const i of upTo(columns + 1)) line(box.x + i * w, box.y, box.x + i * w, box.y + box.h);
  for (const i of upTo(rows + 1)) line(box.x, box.y + i * h, box.x + box.w, box.y + i * h);
  const names = piles.flatMap((pile, i) =>
    nameIn(
      pile,
      { x: box.x + (i % columns) * w + 4, y: box.y + Math.floor(i / columns) * h + 4, w: w - 8, h: 24 },
      press,
    ),
  );
  return [...rules, ...names];
}

function nameIn({ name, source, lang }: SortPile, box: Box, press: Press): readonly SheetItem[] {
  const text = { runs: [{ text: name, bold: true }], source, lang };
  return setInBox([{ type: "paragraph", text, align: "middle" }], box, press.typeface, { size: nameSize, least: 9 })
    .items;
}
