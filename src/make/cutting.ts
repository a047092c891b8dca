import { cutPiecesOf, cutsOf } from "../page/cards";
import type { Sheet } from "../page/sheet";
import type { Printable, PrintedActivity } from "./printable";

/** Of a cut line that scissors follow by eye, pt; hairlines are for a cutter's rule. Common practice, no source. */
const wide = 0.75;
/** Own estimate: seconds for a straight cut with scissors, the sheet turned in between. */
const secondsACut = 20;

/** Sheets of pieces with the cut lines that whoever cuts them can follow. */
export function forCutting(sheets: readonly Sheet[], cutting: "teacher" | "learners"): readonly Sheet[] {
  if (cutting === "teacher") return sheets;
  return sheets.map((sheet) => ({
    ...sheet,
    items: sheet.items.map((item) => (item.type === "line" && item.role === "cut" ? { ...item, weight: wide } : item)),
  }));
}

/** What learners cut of an activity. */
export interface LearnersCut {
  /** Sheets that one set takes. */
  readonly sheets: number;
  readonly learners: number;
  /** For each of them. */
  readonly cuts: number;
  readonly minutes: number;
}

/**
 * Undefined where the teacher cuts, or nothing of it is cut. Pieces are cut one at a time: one cut fewer than there are pieces,
 * and four along the outer edges (computed).
 */
export function learnersCut({ printable, card, sets }: PrintedActivity): LearnersCut | undefined {
  const fronts = card.filter((sheet) => !sheet.back && cutsOf(sheet) > 0);
  if (!learnersCutPieces(printable) || fronts.length === 0 || sets === 0) return undefined;
  const { dealt } = printable;
  const { classes, options } = dealt.request;
  const { group } = options.value;
  const master = dealt.deals.some(({ copies }) => copies === "by copier");
  // One set for a whole class, as in the room, is cut by all of it.
  const learners = master || classes.length === 0 ? group : Math.max(group, Math.floor(Math.min(...classes) / sets));
  const all = fronts.reduce((sum, sheet) => sum + cutPiecesOf(sheet) + 3, 0);
  const cuts = Math.ceil(all / sets / learners);
  const minutes = Math.max(1, Math.ceil((cuts * secondsACut) / 60));
  return { sheets: Math.ceil(fronts.length / sets), learners, cuts, minutes };
}

export function learnersCutPieces({ dealt }: Printable): boolean {
  return dealt.request.options.value.cutting === "learners";
}
