import { fold } from "../../match/fold";
import { heard } from "../../match/heard";
import type { Matching } from "../../match/look-alikes";
import type { BoardWord, Clue } from "./model";
import type { BoardOptions } from "./options";

/*
 * Who listens hears words: neither the picture that stands over a clue, nor which of two pictures with the same words is meant.
 */

/** Whether the words of a clue, as they are said, call another word as well. */
export function callsToo(
  { text, key }: Clue,
  { shown, pair }: BoardWord,
  relation: Pick<Matching, "fits" | "overlooked">,
  { clue, show }: Pick<BoardOptions, "clue" | "show">,
): boolean {
  const said = wordsOf({ text, key });
  if (clue === show) {
    const taken = relation.overlooked?.like(key).has(shown.key) && heard(said) === heard(shown.key);
    return said === wordsOf(shown) || taken === true;
  }
  if (key !== said && relation.fits(said, shown.key)) return true;
  const side = clue === "word" ? "left" : "right";
  if (pair?.[side].answers.some(({ picture, text }) => picture && fold(text) === said)) return true;
  // A gloss may be the very word on another cell, over which there may be a picture.
  return shown.runs.length > 0 && said === wordsOf(shown);
}

/** What is said of something printed: without a picture its key is just that. */
function wordsOf({ text, key }: Pick<Clue, "text" | "key">): string {
  return key.startsWith("\u0000") ? fold(text) : key;
}

/** What is heard of words that are called and sound like another one that is called. */
export function likeSounds(words: readonly BoardWord[]): ReadonlyMap<BoardWord | undefined, string> {
  const keys = new Map<string, Set<string>>();
  const said = words.flatMap((word) => (word.clue ? [{ word, key: word.clue.key, sound: heard(word.clue.key) }] : []));
  for (const { key, sound } of said) keys.set(sound, (keys.get(sound) ?? new Set<string>()).add(key));
  return new Map(said.flatMap(({ word, sound }) => ((keys.get(sound)?.size ?? 0) > 1 ? [[word, sound] as const] : [])));
}

/** Whether a word that is never called sounds like one that is, where the caller says the very words. */
export function soundsLike(
  { shown }: BoardWord,
  called: readonly BoardWord[],
  { clue, show }: Pick<BoardOptions, "clue" | "show">,
): boolean {
  if (clue !== show || shown.picture) return false;
  const sound = heard(shown.key);
  return called.some((word) => word.shown.key !== shown.key && heard(word.shown.key) === sound);
}
