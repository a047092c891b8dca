import { heard } from "../../match/heard";
import type { Matching, Worded } from "../../match/look-alikes";
import { answerKey } from "../../match/relation";
import type { BoardDeal, BoardWord, DealtBoard } from "./model";
import { doublesIn } from "./words";

/**
 * Words on the board, what is called for them and what else would answer that. Where the caller says the very word, telling it from
 * its like is the game, but for what nobody hears.
 */
export function boardTexts({ words, targets, options, request }: DealtBoard): Worded[] {
  if (options.clue === "example") return [];
  if (options.clue === options.show) return soundingAlike(words, targets).map(({ shown }) => shown);
  const [side, lang] =
    options.show === "word" ? (["left", request.teaches] as const) : (["right", request.explains] as const);
  return words.flatMap(({ shown, clue, pair }) => {
    const accepted = clue && pair ? pair[side].answers.slice(1).filter(({ picture }) => !picture) : [];
    return [
      ...(shown.picture ? [] : [shown]),
      ...(clue ? [clue] : []),
      ...accepted.map((answer) => ({ key: answerKey(answer), text: answer.text, lang })),
    ];
  });
}

/** Words without pictures that are heard as another one, where one of the two is called. */
function soundingAlike(words: readonly BoardWord[], targets: number): BoardWord[] {
  return words.filter(({ shown }, i) =>
    words.some(
      (other, k) =>
        Math.min(i, k) < targets &&
        !shown.picture &&
        !other.shown.picture &&
        other.shown.key !== shown.key &&
        heard(other.shown.key) === heard(shown.key),
    ),
  );
}

/** Words of the board that one call fits under this matching though they are told apart otherwise. */
export function confusedWords({ words, targets, options }: DealtBoard, _: BoardDeal, matching: Matching): string[] {
  const places = doublesIn(words, targets, matching, options).flatMap(({ clue, other }) => [clue, other]);
  return [...new Set(places)].sort((a, b) => a - b).map((place) => `“${words[place]?.shown.text ?? ""}”`);
}

/** How many words nobody can tell by ear: called, they sound like another one that is called, or on the board where words are called. */
export function unheard({ words, targets, options }: DealtBoard): number {
  if (options.clue === "example") return 0;
  if (options.clue === options.show) return soundingAlike(words, targets).length;
  const called = [...new Set(words.flatMap(({ clue }) => clue?.key ?? []))];
  return called.length - new Set(called.map(heard)).size;
}
