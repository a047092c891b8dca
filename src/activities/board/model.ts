import type { Range } from "../../base/range";
import type { Run } from "../../base/run";
import type { MatchKey } from "../../match/relation";
import type { Assignment } from "../../prove/items/items";
import type { Proof } from "../../prove/proof";
import type { Pair } from "../../unit/unit";
import type { Deal, Dealt } from "../contract";
import type { Level } from "../options";
import type { Printed } from "../printed";
import { stateOf } from "../sheet-page";
import { isFormPair } from "../supply";
import type { BoardOptions, Grid } from "./options";

/** What the caller says. */
export interface Clue {
  readonly runs: readonly Run[];
  /** As said; the alternative text of a picture alone. */
  readonly text: string;
  readonly key: MatchKey;
  readonly source: Range;
  /** BCP 47 */
  readonly lang: string;
}

/** A word or picture on the board. Those that are called come first. */
export interface BoardWord {
  readonly shown: Printed;
  /** Undefined for words that the options name. */
  readonly pair?: Pair;
  /** Undefined for what is never called. */
  readonly clue?: Clue;
}

export interface BoardDeal extends Deal {
  readonly level: Level;
  /** For each cell, row by row, the index of its word; undefined for a blank cell. */
  readonly cells: readonly (number | undefined)[];
  /** Of the blank cells those that learners write in, as places in `cells`; others just stay blank. */
  readonly writing: readonly number[];
  /** For each clue the word that is meant. */
  readonly proof: Proof<Assignment>;
}

/** A clue that fits a word besides the one that is meant. */
export interface DoubleClue {
  readonly clue: number;
  readonly other: number;
}

export interface DealtBoard extends Dealt<BoardDeal> {
  readonly options: BoardOptions;
  /** Undefined where the words fill none. */
  readonly grid: Grid | undefined;
  /** Targets first, then distractors. */
  readonly words: readonly BoardWord[];
  readonly targets: number;
  /** Words that are wanted and not there. */
  readonly short: Shortage;
  readonly doubles: readonly DoubleClue[];
  /** For each class hour the targets in the order in which they are called. */
  readonly lists: readonly (readonly number[])[];
}

export interface Shortage {
  /** Targets and distractors that are wanted. */
  readonly targets: number;
  readonly distractors: number;
  /** Pairs that can be called, of all pairs; and words found that are never called. */
  readonly callable: number;
  readonly pairs: number;
  readonly spare: number;
}

/** Words on the board of a deal that are never called. */
export function neverIn({ targets }: DealtBoard, { cells }: BoardDeal): number {
  return cells.filter((word) => word !== undefined && word >= targets).length;
}

/** Whether what is called stands for cells of a forms table: a form for its verb and person, or the other way round. */
export function saysForms({ words, targets }: Pick<DealtBoard, "words" | "targets">): "all" | "some" | "none" {
  const called = words.slice(0, targets);
  const forms = called.filter(({ pair }) => pair !== undefined && isFormPair(pair)).length;
  return forms === 0 ? "none" : forms === called.length ? "all" : "some";
}

/** What tells a deal's board from the others of its activity: its level, and its version or its number, and the code. */
export function boardState({ request, options, deals }: DealtBoard, deal: BoardDeal): string[] {
  if (options.boards === "same" || deals.length === 1) return stateOf(request, deal);
  const levels = new Set(deals.map(({ level }) => level)).size;
  return [...(levels > 1 ? [deal.level] : []), `board ${deal.version} of ${deals.length}`, deal.code];
}

/** The numbers under which a word is called, by class hour; empty for what is never called. */
export function callsOf({ lists, targets }: DealtBoard, word: number | undefined): number[] {
  if (word === undefined || word >= targets) return [];
  return lists.map((list) => list.indexOf(word) + 1);
}
