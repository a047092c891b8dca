import type { ActivityKind, Deal, Dealt, Press } from "../activities/contract";
import { setsWanted } from "../activities/copies";
import { upTo } from "../base/seed";
import type { Sheet } from "../page/sheet";
import { forCutting } from "./cutting";
import { copyNumbers } from "./pieces-file";

/** Sheets of pieces that leave the printer together, and the sets on them: one on sheets of its own, or several on one sheet. */
export interface PrintRun {
  /** One for each set on the sheets; a master has no number, and may stand there more than once. */
  readonly copies: readonly (number | undefined)[];
  readonly sheets: readonly Sheet[];
  /** How far below the one before it each set lies, mm. */
  readonly apart: number;
}

/** The runs of a deal in the order in which they are printed. The preview shows the first one: the others are like it. */
export function* printRuns<D extends Deal, T extends Dealt<D>>(
  kind: ActivityKind<D, T>,
  dealt: T,
  deal: D,
  press: Press,
): Generator<PrintRun> {
  const { cutting } = dealt.request.options.value;
  // Whoever cuts with scissors has a sheet of his own.
  const sharing = cutting === "teacher" ? kind.sharing?.(dealt, deal, press) : undefined;
  const most = sharing?.sets ?? 1;
  const all =
    deal.copies === "by copier" ? upTo(mastersOf(dealt, most)).map(() => undefined) : copyNumbers(deal.copies);
  for (let first = 0; first < all.length; first += most) {
    const copies = all.slice(first, first + most);
    const sheets =
      sharing && copies.length > 1
        ? [sharing.sheet(copies)]
        : copies.flatMap((copy) => kind.pieceSheets(dealt, deal, copy, press));
    yield { copies, sheets: forCutting(sheets, cutting), apart: sharing?.apart ?? 0 };
  }
}

/** How many times a master stands on its sheet: as often as there is room, but no more than the largest class needs. */
function mastersOf(dealt: Dealt<Deal>, room: number): number {
  return Math.min(room, setsWanted(dealt) ?? room);
}
