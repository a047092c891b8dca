import { laterOf } from "../shared-answers";
import type { BoardWord, DealtBoard, DoubleClue } from "./model";

/* Words that a clue fits besides its own, and where they stand. */

/** The word whose clue it is, and the other one that it fits. */
export function doubledWords(
  { words }: DealtBoard,
  { clue, other }: DoubleClue,
): { said?: BoardWord; other?: BoardWord } {
  const [a, b] = [words[clue], words[other]];
  return { ...(a ? { said: a } : {}), ...(b ? { other: b } : {}) };
}

/** Where the later of the two items stands: a named word, else a pair. */
export function placeOf(dealt: DealtBoard, double: DoubleClue): number {
  const { said, other } = doubledWords(dealt, double);
  if (!said?.pair || !other) return -1;
  return other.pair ? laterOf(said.pair, other.pair).range.start : other.shown.source.start;
}

/** Where the items stand of which a clue fits two words: of each there is a finding. */
export function doubledPlaces(dealt: DealtBoard): ReadonlySet<number> {
  return new Set(dealt.doubles.map((double) => placeOf(dealt, double)));
}
