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
}
