import type { Tie } from "../unit/unit";
import { fold } from "./fold";

/**
 * Whether a tied word is a form of a table: the same text. Where the word begins a sentence its capital says nothing, so
 * `[Meço](#medir)` is “meço” there.
 */
export function isForm(tie: Pick<Tie, "text" | "opens">, form: string): boolean {
  const [written, wanted] = [fold(tie.text), fold(form)];
  return written === wanted || (tie.opens === true && isRaised(written, wanted));
}

/** Whether `text` is `other` with a capital. Both ways of changing case are asked: ı and İ change in one of them only. */
function isRaised(text: string, other: string): boolean {
  const [letter = "", small = ""] = [first(text), first(other)];
  if (letter === small || text.slice(letter.length) !== other.slice(small.length)) return false;
  return small.toUpperCase() === letter || letter.toLowerCase().replace("\u0307", "") === small;
}

/** With a capital, as a sentence begins. `lang` is a BCP 47 tag. */
export function raised(text: string, lang: string): string {
  const letter = first(text);
  return letter.toLocaleUpperCase(lang.split("-")[0]) + text.slice(letter.length);
}

function first(text: string): string {
  return [...text.slice(0, 2)][0] ?? "";
}
