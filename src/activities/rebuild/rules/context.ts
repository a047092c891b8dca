import type { Pair } from "../../../unit/unit";
import type { Press } from "../../contract";
import { withoutItem } from "../../without-item";
import { dealRebuild } from "../deal";
import type { DealtRebuild } from "../model";

/** Whether something is left to deal without a sentence. */
export function canSpare({ request }: DealtRebuild, pair: Pair): boolean {
  return dealRebuild(withoutItem(request, pair)).deals.length > 0;
}

export interface RebuildContext {
  readonly dealt: DealtRebuild;
  readonly press: Press;
}

/** At most 60 characters of a text. */
export function shortened(text: string): string {
  const graphemes = [...text];
  return graphemes.length > 60 ? `${graphemes.slice(0, 57).join("").trimEnd()}…` : text;
}
