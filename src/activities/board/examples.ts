import { withoutArticle } from "../../match/articles";
import { fold } from "../../match/fold";
import type { Matching } from "../../match/look-alikes";
import type { Answer } from "../../unit/unit";
import type { BoardWord, Clue } from "./model";
import type { BoardOptions } from "./options";

/* Whether a sentence that is called has a word of the board in it: as that is written there, no other form of it. */

/**
 * A sentence fits a word that stands in it, with its article, another or none, or of which it is an example as well; a gloss, where
 * a word stands in it that it answers.
 */
export function exampleFits(
  { text, key, lang }: Clue,
  { shown, pair }: BoardWord,
  relation: Pick<Matching, "partners">,
  show: BoardOptions["show"],
): boolean {
  if (pair?.examples.some((example) => fold(example.text) === key)) return true;
  const answered =
    show === "gloss" ? [...relation.partners(shown.key)].filter((each) => !each.startsWith("\u0000")) : [];
  // Beside a picture the word stands on the right.
  const words = pair ? [...pair.left.answers, ...(pair.left.answers.some(isPicture) ? pair.right.answers : [])] : [];
  const own = pair ? words.map((answer) => answer.text) : show === "word" ? [shown.text] : [];
  const said = bare(text);
  return [...own, ...answered].some((word) => {
    // What stands in brackets beside a word is no part of it: “copo (m.)”.
    const bareWord = bare(withoutArticle(fold(word.replace(/\s*\([^()]*\)/gu, "")).toLowerCase(), lang));
    return bareWord.trim() !== "" && (said.includes(bareWord) || standsUnspaced(said, bareWord.trim()));
  });
}

function isPicture({ picture }: Answer): boolean {
  return picture !== undefined;
}

/** Words of scripts without spaces; shorter ones of theirs are parts of too many others. */
const unspaced =
  /^(?:[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\u30fc]{2,}|[\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}]{4,})$/u;
const character = /^\p{Script=Han}$/u;

/** Whether a word stands among others without spaces; a single character, where none stands beside it that may belong to it. */
function standsUnspaced(said: string, word: string): boolean {
  if (unspaced.test(word)) return said.includes(word);
  return character.test(word) && new RegExp(`(?<!\\p{Script=Han})${word}(?!\\p{Script=Han})`, "u").test(said);
}

/** The words of a text in lower case, a space before and after each. */
function bare(text: string): string {
  return ` ${text
    .normalize("NFC")
    .toLowerCase()
    .split(/[^\p{L}\p{M}\p{N}]+/u)
    .filter(Boolean)
    .join(" ")} `;
}
