import type { LineIndex, Range } from "../base/range";
import type { Run } from "../base/run";

/*
 * What a unit file says, each value with the place it was read from. Reading never fails: what cannot be read becomes a
 * Problem, and everything else stays usable.
 */

export interface Unit {
  readonly text: string;
  readonly lines: LineIndex;
  readonly front: Mapping;
  readonly sections: readonly Section[];
  readonly activities: readonly ActivityBlock[];
  readonly problems: readonly Problem[];
}

/** Something that could not be read as written. `code` is the code of the finding that it becomes. */
export interface Problem {
  readonly code: string;
  readonly range: Range;
  readonly message: string;
  readonly replacement?: { readonly title: string; readonly range: Range; readonly text: string };
}

/** A level-two heading with everything up to the next one. */
export interface Section {
  /** The heading's text without formatting. */
  readonly name: string;
  readonly heading: Range;
  readonly range: Range;
  readonly pairs: readonly Pair[];
  readonly statements: readonly Statement[];
}

export interface Picture {
  /** As written, percent-decoded: a path relative to the unit's folder. */
  readonly path: string;
  readonly alt: string;
  readonly range: Range;
}

/** One accepted answer: styled text, a picture, or a picture with text under it. */
export interface Answer {
  readonly range: Range;
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** The printed characters with bars removed and white space collapsed; the alternative text where only a picture stands. */
  readonly text: string;
  /** Offsets into `text` where a bar cuts it. */
  readonly cuts: readonly number[];
}

export interface Side {
  readonly range: Range;
  /** At least one; the first is printed. */
  readonly answers: readonly [Answer, ...Answer[]];
}

export interface Pair {
  /** The item's own text, without bullet and nested lists. */
  readonly range: Range;
  /** Whole lines of the item with what is nested in it and the final line ending, for taking it out. */
  readonly block: Range;
  readonly left: Side;
  readonly right: Side;
  readonly examples: readonly { readonly range: Range; readonly runs: readonly Run[]; readonly text: string }[];
}

export interface Statement {
  readonly range: Range;
  readonly block: Range;
  /** The `[x]` or `[ ]`. */
  readonly mark: Range;
  readonly truth: boolean;
  readonly runs: readonly Run[];
  readonly text: string;
  readonly correction?: { readonly range: Range; readonly text: string };
}

/** A YAML mapping with places. `value` is plain JSON. */
export interface Mapping {
  readonly range: Range;
  readonly entries: readonly Entry[];
}

export interface Entry {
  readonly key: string;
  readonly keyRange: Range;
  readonly value: unknown;
  readonly valueRange: Range;
  /** Places of a list's items, else empty. */
  readonly items: readonly Range[];
}

/** One fenced `activity` block, as written. */
export interface ActivityBlock {
  /** The whole fence. */
  readonly fence: Range;
  /** Between the fence lines. */
  readonly body: Range;
  readonly options: Mapping;
  /** Index of the section that it stands in, or -1 above the first. */
  readonly section: number;
}
