import type { Matching, Worded } from "../../match/look-alikes";
import type { BoardDeal, DealtBoard } from "./model";
import { doublesIn } from "./words";

/** Words on the board and what is called for them. Where the caller says the very word, telling it from its like is the game. */
export function boardTexts({ words, options }: DealtBoard): Worded[] {
  if (options.clue === options.show || options.clue === "example") return [];
  return words.flatMap(({ shown, clue }) => [...(shown.picture ? [] : [shown]), ...(clue ? [clue] : [])]);
}

/** Words of the board that one call fits under this matching though they are told apart otherwise. */
export function confusedWords({ words, targets, options }: DealtBoard, _: BoardDeal, matching: Matching): string[] {
  const places = doublesIn(words, targets, matching, options).flatMap(({ clue, other }) => [clue, other]);
  return [...new Set(places)].sort((a, b) => a - b).map((place) => `“${words[place]?.shown.text ?? ""}”`);
}
