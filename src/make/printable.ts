import type { ActivityKind, Deal, Dealt } from "../activities/contract";
import type { Sheet } from "../page/sheet";

/** An activity ready to be printed. */
export interface Printable {
  readonly kind: ActivityKind;
  readonly title: string;
  readonly seed: number;
  /** Language that explains, BCP 47. */
  readonly lang: string;
  readonly dealt: Dealt<Deal>;
}

/** What one activity prints, for the counts of the prep sheet. */
export interface PrintedActivity {
  readonly printable: Printable;
  readonly card: readonly Sheet[];
  readonly paper: readonly Sheet[];
  /** Sets that are cut out. */
  readonly sets: number;
  /** The same sheets of pieces and sets run by run; of masters there is one for each deal. */
  readonly runs: readonly Run[];
}

/** Sheets of pieces that leave the printer together. */
export interface Run {
  readonly sheets: readonly Sheet[];
  readonly sets: number;
}
