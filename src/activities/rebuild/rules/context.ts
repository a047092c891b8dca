import type { Press } from "../../contract";
import type { DealtRebuild } from "../model";

export interface RebuildContext {
  readonly dealt: DealtRebuild;
  readonly press: Press;
}

/** At most 60 characters of a text. */
export function shortened(text: string): string {
  const graphemes = [...text];
  return graphemes.length > 60 ? `${graphemes.slice(0, 57).join("").trimEnd()}…` : text;
}
