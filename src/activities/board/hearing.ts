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
  const said = fold(text);
  if (clue === show) {
    const taken = relation.overlooked?.like(key).has(shown.key) && heard(said) === heard(shown.key);
    return said === fold(shown.text) || taken === true;
  }
  if (key !== said && relation.fits(said, shown.key)) return true;
  const side = clue === "word" ? "left" : "right";
  const pictured = pair?.[side].answers.filter(({ picture }) => picture) ?? [];
  if (pictured.some((answer) => fold(answer.text) === said)) return true;
  // A gloss may be the very word on another cell, over which there may be a picture.
  return shown.runs.length > 0 && said === fold(shown.text);
}
