import { blanksOf } from "../../activities/copies";
import { cutPiecesOf, cutsOf } from "../../page/cards";
import type { Sheet } from "../../page/sheet";
import { learnersCutPieces } from "../cutting";
import { copiedSets, copiedSheets } from "../masters";
import type { PrintedActivity } from "../printable";

/*
 * What is laminated or put into sleeves. Film must be sealed at least 2 mm round each piece (trade pages), a pouch is 6 mm larger
 * than its sheet (from memory, no source).
 */

/** Of film round a piece, and of a pouch round its sheet; mm. */
const seal = 2;
const pouchMargin = 6;

/** How a sheet is laminated: as it is, whole for learners to cut, whole and cut afterwards without a rim, or piece by piece. */
type Way = "whole" | "by learners" | "edge to edge" | "cut first";

function laminated(printed: readonly PrintedActivity[]): readonly PrintedActivity[] {
  return printed.filter((each) => reuseOf(each.printable) === "laminate" && filmedSheets(each).length > 0);
}

/** Pouches for everything that is laminated. Pieces that are cut first lie further apart than on their sheet. */
export function pouches(printed: readonly PrintedActivity[]): number {
  return laminated(printed).reduce((sum, activity) => {
    const each = (sheets: readonly Sheet[]): number =>
      sheets.reduce((all, sheet) => all + (wayOf(activity, sheet) === "cut first" ? pouchesFor(sheet) : 1), 0);
    return sum + each(copiedSheets(activity)) + each(slipSheets(activity));
  }, 0);
}

/** Steps before the cutting and after it; each names its activities. */
export function laminating(printed: readonly PrintedActivity[]): { before: string[]; after: string[] } {
  const by = (way: Way, sheets: (activity: PrintedActivity) => readonly Sheet[] = filmedSheets): string =>
    laminated(printed)
      .filter((activity) => sheets(activity).some((sheet) => wayOf(activity, sheet) === way))
      .map(({ printable }) => `“${printable.title}”`)
      .join(", ");
  const [whole, learners] = [by("whole"), by("by learners")];
  const edges = by("edge to edge");
  const [pieces, slips] = [by("cut first", cardFronts), by("cut first", slipSheets)];
  const first = [...(pieces ? [`the pieces of ${pieces}`] : []), ...(slips ? [`the slips of ${slips}`] : [])];
  return {
    before: [
      ...(whole ? [`Laminate the sheets of ${whole} that are not cut.`] : []),
      ...(learners ? [`Laminate the sheets of pieces of ${learners} whole; learners cut them on the lines.`] : []),
      ...(edges
        ? [
            `Laminate the tiles of ${edges} as whole sheets and cut them afterwards without a rim, since they meet at their edges; or do not laminate them.`,
          ]
        : []),
    ],
    after:
      first.length > 0
        ? [
            `Laminate ${first.join(" and ")} after cutting: lay them in the pouches ${2 * seal} mm apart and cut them out again with ${seal} mm of film round each, which seals them. Laminating whole sheets and cutting on the lines is quicker, but leaves the edges open.`,
          ]
        : [],
  };
}

/**
 * Sleeves: one for each slip, each blank piece, and each sheet with blank cells. They are used again from activity to activity: a
 * class writes on the papers of one at a time, also where its groups are at several stations, so that the activity with the most
 * decides. Undefined where nothing goes into one.
 */
export function sleeves(printed: readonly PrintedActivity[]): string | undefined {
  let [slips, sheets, blanks] = [0, 0, 0];
  for (const activity of printed.filter(({ printable }) => reuseOf(printable) === "sleeve")) {
    slips = Math.max(
      slips,
      slipSheets(activity).reduce((sum, sheet) => sum + cutPiecesOf(sheet), 0),
    );
    const { options, classes } = activity.printable.dealt.request;
    if (options.value.blanks === 0 || activity.card.length === 0) continue;
    const fronts = copiedSheets(activity);
    if (fronts.every((sheet) => cutsOf(sheet) === 0)) sheets = Math.max(sheets, fronts.length);
    else blanks = Math.max(blanks, blanksOf(options.value, classes) * copiedSets(activity));
  }
  const parts = [
    ...(slips > 0 ? [`${slips} for slips`] : []),
    ...(sheets > 0 ? [`${sheets} for whole sheets`] : []),
    ...(blanks > 0 ? [`${blanks} for blank pieces`] : []),
  ];
  return parts.length > 0 ? `${parts.join(", ")}, clear, one for each that is written on at a time` : undefined;
}

/** What is written on and used again: its activities want pens that wipe off. */
export function wiped(printed: readonly PrintedActivity[]): boolean {
  return printed.some(
    (activity) =>
      reuseOf(activity.printable) !== "once" &&
      (activity.printable.dealt.request.options.value.blanks > 0 || slipSheets(activity).length > 0),
  );
}

function reuseOf({ dealt }: PrintedActivity["printable"]): "once" | "sleeve" | "laminate" {
  return dealt.request.options.value.reuse;
}

function filmedSheets(activity: PrintedActivity): Sheet[] {
  return [...cardFronts(activity), ...slipSheets(activity)];
}

function cardFronts({ card }: PrintedActivity): Sheet[] {
  return card.filter(({ back }) => !back);
}

/** Papers that are cut are slips to write on; keys and lists are not cut. */
function slipSheets({ paper }: PrintedActivity): Sheet[] {
  return paper.filter((sheet) => !sheet.back && cutsOf(sheet) > 0);
}

function wayOf({ printable }: PrintedActivity, sheet: Sheet): Way {
  if (cutsOf(sheet) === 0) return "whole";
  if (sheet.stock === "card" && learnersCutPieces(printable)) return "by learners";
  return printable.kind.edgeToEdge && sheet.stock === "card" ? "edge to edge" : "cut first";
}

/** One, or two where the pieces of a sheet, each with its rim of film, need more room than one pouch has. */
function pouchesFor(sheet: Sheet): number {
  const lines = sheet.items.flatMap((item) => (item.type === "line" && item.role === "cut" ? [item] : []));
  const across = [...new Set(lines.filter(({ y1, y2 }) => y1 === y2).map(({ y1 }) => y1))];
  const down = [...new Set(lines.filter(({ x1, x2 }) => x1 === x2).map(({ x1 }) => x1))];
  const room = (places: readonly number[]): number =>
    Math.max(...places) - Math.min(...places) + 2 * seal * (places.length - 1);
  return room(down) <= sheet.width + pouchMargin && room(across) <= sheet.height + pouchMargin ? 1 : 2;
}
