import type { Range } from "../base/range";

/** `error` blocks nothing by itself, but the command line fails on it by default; `hint` is quiet. */
export type Severity = "error" | "warning" | "information" | "hint";

export interface TextEdit {
  readonly range: Range;
  readonly text: string;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** The one that the editor may apply without asking. */
  readonly preferred?: boolean;
}

export interface Related {
  readonly range: Range;
  readonly message: string;
}

/** One diagnostic: one cause, one finding. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly range: Range;
  readonly message: string;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
  /** Index of the activity in the unit that it is about, where there is one. */
  readonly activity?: number;
}
