import { setsFor } from "../activities/copies";
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

/** What learners of the first class cut of an activity. */
export interface LearnersCut {
  /** Sheets that one set takes. */
  readonly sheets: number;
  readonly learners: number;
  /** For each of them. */
  readonly cuts: number;
  readonly minutes: number;
  /** Sets that are there, and those of them that the first class has learners for. */
  readonly all: number;
  readonly own: number;
  /** How many learners the classes have that need more sets, in their order. */
  readonly larger: readonly number[];
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
  const [first = group * sets] = classes;
  const there = master ? Math.max(1, ...classes.map((learners) => setsFor(learners, group))) : sets;
  const own = Math.min(there, setsFor(first, group));
  // One set for a whole class, as in the room, is cut by all of it.
  const learners = master || classes.length === 0 ? group : Math.max(group, Math.floor(first / own));
  const larger = classes.filter((each) => setsFor(each, group) > own);
  const all = fronts.reduce((sum, sheet) => sum + cutPiecesOf(sheet) + 3, 0);
  const cuts = Math.ceil(all / sets / learners);
  const minutes = Math.max(1, Math.ceil((cuts * secondsACut) / 60));
  return { sheets: Math.ceil(fronts.length / sets), learners, cuts, minutes, all: there, own, larger };
}

/** Who cuts the sets that the first class has no learners for; undefined where it cuts all. */
export function leftUncut({ all, own, larger }: LearnersCut): string | undefined {
  const left = all - own;
  if (left <= 0) return undefined;
  const them = left === 1 ? "it" : "them";
  const who =
    larger.length === 0
      ? `cut ${them} when you need ${them}`
      : larger.length === 1
        ? `the class of ${larger[0]} cuts ${them} when its turn comes, or you do`
        : `larger classes cut ${them} when their turn comes, each what it needs, or you do`;
  return `it cuts ${own} of ${all} sets; ${left === 1 ? "1 stays" : `${left} stay`} whole: ${who}`;
}

export function learnersCutPieces({ dealt }: Printable): boolean {
  return dealt.request.options.value.cutting === "learners";
}
