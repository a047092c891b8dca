import type { Fix, Rule } from "../base/finding";
import type { Validator } from "../base/generated/validators";
import type { Range } from "../base/range";
import type { Run } from "../base/run";
import type { Steps } from "../base/steps";
import type { Matching, Worded } from "../match/look-alikes";
import type { MatchKey, Relation } from "../match/relation";
import type { Sheet } from "../page/sheet";
import type { Difficulty } from "../prove/difficulty";
import type { Proof } from "../prove/proof";
import type { Typeface } from "../text/typeface";
import type { ActivityBlock, Pair, Picture, Section, Unit } from "../unit/unit";
import type { CommonOptions, OptionSchema, ResolvedOptions } from "./options";
import type { MaterialWords } from "./paper-words";
import type { Verdict } from "./verdict";

/** The name of a kind that is registered in `kinds.ts`; the schemas hold the same names. */
export type KindName = string;

/** What an item of a section is by its shape; forms tables are one too. */
export type ItemShape = "pairs" | "statements" | "events" | "tables";

export type FaceSide = "n" | "e" | "s" | "w" | "front" | "back";

/** What can be looked at: pieces as they are printed, the solution, where there is one a second solution, and the papers. */
export type View = "dealt" | "solved" | "second" | "papers";

/** One arrangement of an activity with its printed texts. Kinds extend it with what they need. */
export interface Deal {
  /** Six characters; changes when the arrangement or a printed text does. */
  readonly code: string;
  readonly level: string;
  /** From 1. */
  readonly version: number;
  /** Where it lies on one of several desks, each of which has a version of its own: the number of the desk, from 1. */
  readonly desk?: number;
  /** Copies to print, or `by copier`: one master whose marks leave the copy out. */
  readonly copies: number | "by copier";
  /** Which attempt of the seed's sequence was taken, from 0. */
  readonly attempt: number;
  readonly proof: Proof<unknown>;
  /** Of pieces that make a circle: those that close a smaller one while others are left over; undefined where none can. */
  readonly smaller?: readonly number[] | undefined;
  /** How hard it is, where the kind measures that and one solution is proven. */
  readonly difficulty?: Difficulty;
}

/** One activity of a unit with its deals; empty where it cannot be dealt (its findings say why). */
export interface DealtActivity {
  /** Index in `Unit.activities`. */
  readonly index: number;
  readonly make: KindName;
  readonly title: string;
  /** In short what it makes, for lists: `4 × 4 tiles`. */
  readonly summary: string;
  readonly deals: readonly Deal[];
  /** Levels of difficulty were asked for: `levelTold`. */
  readonly levels?: CommonOptions["levels"];
}

/** What a kind gets to deal from. */
export interface DealRequest {
  readonly unit: Unit;
  readonly index: number;
  readonly block: ActivityBlock;
  readonly title: string;
  readonly sections: readonly Section[];
  /** Over all pairs of the unit. */
  readonly relation: Relation;
  readonly options: ResolvedOptions<CommonOptions>;
  /** Languages, BCP 47. */
  readonly teaches: string;
  readonly explains: string;
  /** Options that were written but could not be taken: what follows from their absence is nobody's wish. */
  readonly refused: readonly string[];
  /** Learners in each class; empty where the unit does not say. */
  readonly classes: readonly number[];
}

/** What sheets are set with. */
export interface Press {
  readonly typeface: Typeface;
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  readonly unitTitle: string;
}

/** A printed face of a piece: its text and the place in the unit it comes from. */
export interface PieceFace {
  readonly side: FaceSide;
  readonly text: string;
  readonly source?: Range;
}

/** Where a piece stands: a page of the copy's piece sheets from 0, mm from the sheet's top left, quarter turns clockwise. */
export interface PiecePlace {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly turn: number;
  readonly side: "front" | "back";
}

/** One piece of a deal, the same in every copy but for its mark. */
export interface Piece {
  readonly faces: readonly PieceFace[];
  readonly at: readonly PiecePlace[];
  readonly solution: unknown;
  /** The piece of the same copy that comes next: its mark is the solution. */
  readonly next?: number;
  /** For learners to write on: such pieces come after all others. */
  readonly blank?: true;
}

/** What an activity has become: dealt, with what its rules need. */
export interface Dealt<D extends Deal> {
  readonly request: DealRequest;
  readonly summary: string;
  readonly deals: readonly D[];
  /** Pairs that the pieces show; other pairs of the sections are unused. */
  readonly used: readonly Pair[];
  /** Why levels that were asked for do not differ from each other, or from what would be made without them; a part of a sentence. */
  readonly sameLevels?: string;
  /** Which hard deal is measured easier than a gentle one, of whatever version, and why; a sentence without its stop. */
  readonly upsetLevels?: string;
}

/** What may hurt; the guide and the prep sheet say the usual cautions for each. */
export type Caution = "cutter" | "scissors" | "laminator" | "small-parts" | "clear-floor";

/** What a colleague needs to run the activity. Texts are in the language that explains, where the kind has it, else English. */
export interface GuideEntry {
  /** One sentence: what the learners do and what for. */
  readonly summary: string;
  /** What to have at hand, besides the pieces: `a timer`, `pencils`. Learners read it too, on the cards of stations. */
  materials(words: MaterialWords): readonly string[];
  /** Learners at one of the sets that lie on the tables; left out where there is one for all of them. */
  readonly atSet?: number;
  /** Minutes in class, an estimate by the kind where the unit does not say. */
  readonly minutes: number;
  /** One line each, as it may be read out: pairs, orders, piles. */
  readonly answers: readonly (readonly Run[])[];
  readonly cautions: readonly Caution[];
}

/** A label for a packet or bag. */
export interface LabelEntry {
  /** Packet number or sign within the set; undefined for the set's own bag. */
  readonly packet?: string;
  /** What is inside: `16 tiles`. */
  readonly contents: string;
  /** For checking oneself: a translation; undefined for none. */
  readonly translation?: readonly Run[];
  /** A picture in its place, or beside its words. */
  readonly picture?: Picture;
}

/** What becomes of a deal when small differences between words are overlooked. */
export interface Overlooked<D extends Deal, T extends Dealt<D>> {
  /** `tile`, `card`: one of what `confused` names. Left out where nothing lies on the table. */
  readonly piece?: string;
  /** What nothing else tells where a single piece may be mistaken, as a sentence without its stop: for a tile, how it lies. */
  alone?(name: string): string;
  /** What may be done then, as the rest of a sentence: `can lay the tiles in another way`. */
  readonly harm: string;
  /** Whether texts are said aloud: who listens hears neither capitals nor commas. */
  heard?(dealt: T, deal: D, keys: readonly MatchKey[]): boolean;
  /** Another seed puts other words beside them, and so may keep them apart. */
  readonly bySeed?: true;
  /** Other values of options with which less may be mistaken; each is tried before it is offered. */
  calmer?(dealt: T): readonly { readonly title: string; readonly key: string; readonly value: string | number }[];
  /** What learners compare. */
  texts(dealt: T, deal: D): readonly Worded[];
  /**
   * What a text does in a deal: texts that do the same may be taken for one another. Where this is left out or undefined, that is
   * what answers it.
   */
  role?(dealt: T, deal: D, key: MatchKey): string | undefined;
  /** Where such texts stand in the unit, where they are no words of pairs. */
  places?(dealt: T, deal: D, keys: readonly MatchKey[]): readonly Range[];
  /**
   * Names of the pieces that can change places under a matching other than the unit's: none where the deal is proven to stay as it
   * is, undefined where that is not settled.
   */
  confused(dealt: T, deal: D, matching: Matching): readonly string[] | undefined;
  /** What may go wrong although the solution stays the only one, as the end of a sentence; undefined where nothing may. */
  besides?(dealt: T, deal: D, matching: Matching): string | undefined;
}

/** Sets that lie one under the other on a sheet, so that straight cuts part them. */
export interface Sharing {
  /** How many a sheet holds, at least two. */
  readonly sets: number;
  /** How far below the one before it each lies, mm. */
  readonly apart: number;
  /** The sheet of some copies, the first at the top as on a sheet of its own; of a master none has a number. */
  sheet(copies: readonly (number | undefined)[]): Sheet;
}

/**
 * In steps: titles of what is told of an activity that is not told now, errors and warnings, where it is dealt from a changed
 * request; undefined where that cannot be dealt.
 */
export type Foresight = (change: RequestChange) => Steps<readonly string[] | undefined, unknown>;

export type RequestChange = (request: DealRequest) => DealRequest;

/** What the findings of an activity are about. */
export interface RuleContext<T extends Dealt<Deal>> {
  readonly dealt: T;
  readonly press: Press;
  /** Left out where nobody asks for fixes. */
  readonly foresee?: Foresight;
}

/** How a change is tried before it is offered. Bounded, and quick where the same was asked before. */
export interface Trial<D extends Deal, T extends Dealt<D>> {
  /** Whether it can be dealt. */
  deals(request: DealRequest): boolean;
  /** Equal for requests that are dealt alike however their words are spelt; undefined where that is not known. */
  structure(request: DealRequest): string | undefined;
  /** In steps: whether every deal is soon proven to be as it is meant; with what is dealt now, also that no warning comes that is not there. */
  holding(request: DealRequest, now?: T): Steps<boolean, unknown>;
  /** Other options for what is dealt that are shown to hold, the smallest change first. */
  options?(dealt: T): Steps<readonly Fix[], unknown>;
}

/** An option that another one goes before. */
export interface Overruled {
  readonly key: string;
  readonly by: string;
  /** Only with this value of the other. */
  readonly value?: string;
  /** What the other says instead, as the end of a sentence. */
  readonly why: string;
}

/** A kind of activity: one folder, one of these. */
export interface ActivityKind<D extends Deal = Deal, T extends Dealt<D> = Dealt<D>> {
  readonly name: KindName;
  /** What it takes from its sections; tied forms make a table matter to statements at the tie itself. */
  readonly takes: readonly ItemShape[];
  /** The kind's JSON Schema, and the validator made from it. */
  readonly schema: OptionSchema;
  readonly validate: Validator;
  /** What its pieces are called, in the singular; `card` where left out. */
  readonly pieceName?: string;
  /** A piece is a sheet that is handed out whole: nothing cuts it out. */
  readonly wholeSheets?: true;
  /** Words stand at the edges of its pieces, which lie against each other: film must not stand over. */
  readonly edgeToEdge?: true;
  /** Its pieces make a circle, and `smaller` of a deal says whether some of them can close one: a proof of its own. */
  readonly closesCircles?: true;
  /** It sorts the piles of its sections. */
  readonly sortsPiles?: true;
  /** Fewer learners than these cannot use a set; two where left out. */
  leastAtSet?(request: DealRequest): number;
  /** Somebody calls, who does not play. */
  readonly called?: true;
  /** Options that say nothing beside another one. */
  readonly overruled?: readonly Overruled[];
  /** Its own findings tell of pairs on its pieces that share an answer; the general one keeps quiet. */
  readonly tellsShared?: true;
  /** What else lets a deal with several solutions have them, as sentences with a space before; empty where nothing does. */
  elseLoose?(dealt: T): string;
  /** Right sides of its pairs may be alike: they are on no piece. */
  readonly sharesGlosses?: true;
  /** Its pieces show parts of left sides, and its own findings tell of sides that differ in capitals and marks alone. */
  readonly showsParts?: true;
  /** For words that a hurried reader takes for one another. */
  readonly overlooked?: Overlooked<D, T>;
  /** Chooses, arranges and proves. Pure in the request. */
  deal(request: DealRequest): T;
  /** The same in steps, where it may take long; says in a few words how far it is. */
  readonly dealing?: (request: DealRequest) => Steps<T>;
  /**
   * Whether what was dealt hangs on nothing of the unit but its own sections, and what the relation says of their words: it is kept
   * then while other sections change. Where left out, it does not.
   */
  alone?(dealt: T): boolean;
  /** How a change is tried; where left out, by dealing it. */
  readonly trial?: Trial<D, T>;
  /** How much its findings say of words that fit two ways, or that are too few: a change made for other reasons leaves no more. */
  faults?(dealt: T): number;
  /** What is dealt for each class hour, for a single one: a trial print has no use for the others. */
  oneHour?(dealt: T): T;
  /** Sheets of pieces of one copy (`undefined`: the master), dealt. */
  pieceSheets(dealt: T, deal: D, copy: number | undefined, press: Press): readonly Sheet[];
  /** How copies of a deal share sheets where they are cut by a cutter; undefined where each takes sheets of its own. */
  sharing?(dealt: T, deal: D, press: Press): Sharing | undefined;
  /** The solution, or the second one; empty where there is none. */
  solutionSheets(dealt: T, deal: D, view: "solved" | "second", press: Press): readonly Sheet[];
  pieces(dealt: T, deal: D, press: Press): readonly Piece[];
  /** In steps: finds how large pieces and words are, which takes a while the first time, and keeps it for whatever asks later. */
  laying?(dealt: T, press: Press): Steps<unknown, unknown>;
  /** Where a piece belongs, in words, from its `solution` as the pieces file has it; empty where that says nothing. */
  belongs(solution: unknown): string;
  /** Papers besides the key, all that the classes need: caller's lists for each hour, slips. Stock `paper`. */
  papers(dealt: T, press: Press): readonly Sheet[];
  guide(dealt: T, press: Press): GuideEntry;
  /**
   * Built-in steps in a language (BCP 47 primary tag: en, es, fr, de, pt); undefined where there are none. At a station all leave
   * by the clock: nothing is told of what comes after it.
   */
  directions(dealt: T, lang: string, at?: "station"): readonly string[] | undefined;
  /** Labels of one copy. */
  labels(dealt: T, deal: D): readonly LabelEntry[];
  /** Settings and layout worth keeping to print the deal again. */
  record(dealt: T, deal: D, press: Press): unknown;
  /** What its proofs can say, for the reference. */
  readonly verdicts: readonly Verdict[];
  /** The kind's own findings. */
  readonly rules: readonly Rule<RuleContext<T>>[];
}
