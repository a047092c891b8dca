/*
 * How the lines of a paragraph were meant as items.
 */

/** A line without the white space before it. */
export interface Line {
  readonly start: number;
  readonly text: string;
}

/** What each line should begin with instead of its first `cut` characters, and where it is to be parted. */
export interface Begin {
  readonly cut: number;
  readonly put: string;
  readonly part?: { readonly start: number; readonly end: number };
}

export interface Style {
  /** One for each line. */
  readonly begins: readonly Begin[];
  /** The first line that is an item, where it is not that of the paragraph. */
  readonly first?: number;
  /** What else may be meant. */
  readonly otherwise?: { readonly title: string; readonly begins: readonly Begin[] };
  /** A sentence. */
  readonly message: string;
  /** They may well be notes. */
  readonly unsure?: true;
  /** What they are, where they matter only if something takes that. */
  readonly as?: "pairs" | "events" | "statements";
}

export const noHyphen = "No bullet stands before this: an item begins with a hyphen and a space.";

export const noPairs = "These are no pairs: each begins with a hyphen and a space, and “ = ” stands between its sides.";
