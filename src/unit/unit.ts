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
  /** Headings of other levels above the first section, with all their lines. */
  readonly headingsAbove: readonly { readonly name: string; readonly range: Range }[];
  readonly activities: readonly ActivityBlock[];
  /** Fenced `stations` blocks: plans of rotation. */
  readonly stations: readonly ActivityBlock[];
  readonly problems: readonly Problem[];
  readonly silences: readonly Silence[];
  /** The link references that it defines, as JSON; empty where there are none. */
  readonly references: string;
}

/** Something that could not be read as written. `code` is the code of the finding that it becomes. */
export interface Problem {
  readonly code: string;
  readonly range: Range;
  readonly message: string;
  readonly fixes: readonly {
    readonly title: string;
    readonly edits: readonly { readonly range: Range; readonly text: string }[];
    /** Takes something of the writer's out: never done without being asked for. */
    readonly drops?: true;
    /** The likeliest where activities take nothing but items of this shape. */
    readonly among?: "events";
    /** Something else may be meant as well: not done without being asked for either. */
    readonly unsure?: true;
  }[];
  /**
   * Only worth saying where an activity uses the section, sorts its piles, or takes its pairs, events or statements, or where some take its
   * pairs and none its statements: elsewhere it may well be meant. Or, `unused`, only where none uses the section, and it has items or the unit
   * has no activity.
   */
  readonly trap?: true | "piles" | "pairs" | "events" | "statements" | "pairs alone" | "unused";
}

/** A level-two heading with everything up to the next one. */
export interface Section {
  /** The heading's text without formatting. */
  readonly name: string;
  readonly heading: Range;
  readonly range: Range;
  readonly pairs: readonly Pair[];
  readonly statements: readonly Statement[];
  /** In the order of the story, over all numbered lists of the section. */
  readonly events: readonly StoryEvent[];
  readonly piles: readonly Pile[];
  readonly tables: readonly FormsTable[];
  /** Bullets with text alone: cards below the headings of piles, elsewhere notes. */
  readonly plain: readonly PlainBullet[];
}

/** A bullet that has none of the shapes, with those below it. */
export interface PlainBullet extends Pick<Item, "range" | "block"> {
  readonly nested: readonly Pick<Item, "range" | "block">[];
}

/** Styled text with its place; a picture, or a picture with text under it. */
export interface Phrase {
  readonly range: Range;
  readonly runs: readonly Run[];
  /** The printed characters, white space collapsed; of a bare picture the alternative text, or its path where that is empty. */
  readonly text: string;
  readonly picture?: Picture;
}

export interface Picture {
  /** As written, percent-decoded: a path relative to the unit's folder. */
  readonly path: string;
  readonly alt: string;
  readonly range: Range;
}

/** One accepted answer. */
export interface Answer extends Phrase {
  /** What the bars cut it into, in order; the answer itself where it has none. */
  readonly parts: readonly Phrase[];
}

export interface Side {
  readonly range: Range;
  /** At least one; the first is printed. */
  readonly answers: readonly [Answer, ...Answer[]];
}

/** A link `[form](#column "person")` to a form of a table, as written. */
export interface Tie {
  /** The whole link. */
  readonly range: Range;
  readonly text: string;
  /** Place of `#…` in it, without the angle brackets. */
  readonly target: Range;
  readonly section?: string;
  readonly column: string;
  readonly person?: string;
  /** It stands where a sentence begins. */
  readonly opens?: true;
}

/** What every item has. */
export interface Item {
  /** The item's own text, without bullet, nested lists and the comment at its end. */
  readonly range: Range;
  /** Whole lines of the item with what is nested in it and the final line ending, for taking it out. */
  readonly block: Range;
  /** Code of the learner who wrote it. */
  readonly by?: { readonly code: string; readonly range: Range };
  readonly ties: readonly Tie[];
}

export interface Pair extends Item {
  readonly left: Side;
  readonly right: Side;
  readonly examples: readonly Phrase[];
  /** Further accepted orders of the left side's parts: indices into them. */
  readonly orders: readonly { readonly range: Range; readonly parts: readonly number[] }[];
}

/** Whether what stands among items is a pair. */
export function isPair(item: object): item is Pair {
  return "left" in item && "right" in item;
}

export interface Statement extends Item, Phrase {
  /** The `[x]` or `[ ]`. */
  readonly mark: Range;
  readonly truth: boolean;
  readonly correction?: Phrase;
}

/** A numbered item of a story. */
export interface StoryEvent extends Item, Phrase {
  /** Bullets under it: they come after it, in any order among themselves. */
  readonly free: readonly (Item & Phrase)[];
}

/** Items under a heading deeper than the section's. */
export interface Pile {
  readonly name: string;
  readonly heading: Range;
  readonly members: readonly PileMember[];
}

export type PileMember =
  | { readonly shape: "pair"; readonly item: Pair }
  | { readonly shape: "statement"; readonly item: Statement }
  | { readonly shape: "event"; readonly item: StoryEvent }
  | { readonly shape: "text"; readonly item: Item & Answer };

/** A table with an empty top left cell: rows persons, columns verbs. */
export interface FormsTable {
  readonly range: Range;
  readonly columns: readonly Phrase[];
  readonly persons: readonly Phrase[];
  /** By person, then column; undefined where a cell is empty. */
  readonly forms: readonly (readonly (Answer | undefined)[])[];
}

/** `<!-- allow CODE: reason -->` at the end of an item or heading. */
export interface Silence {
  readonly code: string;
  readonly reason: string;
  /** The comment. */
  readonly range: Range;
  /** Findings that begin in here are meant. */
  readonly scope: Range;
}

/** A YAML mapping with places. `value` is plain JSON. */
export interface Mapping {
  readonly range: Range;
  /** Something in it could not be read, so that an entry may be missing. */
  readonly broken?: true;
  readonly entries: readonly Entry[];
}

export interface Entry {
  readonly key: string;
  readonly keyRange: Range;
  readonly value: unknown;
  readonly valueRange: Range;
  /** Places of a list's items, else empty. */
  readonly items: readonly Range[];
  /** A problem tells already that the value could not be read as written; `value` is what was likely meant. */
  readonly mended?: true;
}

/** One fenced `activity` or `stations` block, as written. */
export interface ActivityBlock {
  /** The whole fence. */
  readonly fence: Range;
  /** Between the fence lines. */
  readonly body: Range;
  readonly options: Mapping;
  /** Index of the section that it stands in, or -1 above the first. */
  readonly section: number;
}
