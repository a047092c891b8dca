import type { Rule } from "../../../base/finding";
import type { Pair } from "../../../unit/unit";
import { stop } from "../hide";
import { type RebuildContext, shortened } from "./context";
import { cutAtSlashes } from "./cut-at-slashes";

export const slashedSentence: Rule<RebuildContext> = {
  code: "slashed-sentence",
  severity: "warning",
  title: "A sentence that slashes cut",
  why: "A slash with white space on both sides parts accepted answers, of which only the first is printed. What goes on in small letters behind it and ends there with the sentence was meant as the next part of that: parts are cut by bars.",
  example: {
    wrong: "## Ordering\n\n- Queria um / disco novo. = I'd like a new record.\n\n```activity\nmake: rebuild\n```",
    right: "## Ordering\n\n- Queria um | disco novo. = I'd like a new record.\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) =>
    dealt.sentences
      .filter(({ pair }) => isSlashed(pair))
      .map(({ pair: { left } }) => ({
        range: left.range,
        message: `Of this only “${shortened(left.answers[0].text)}” is printed: slashes part accepted answers, and bars cut a sentence.`,
        fixes: cutAtSlashes(left),
      })),
};

/** Whether the answers are parts of one sentence: only the last one ends as a sentence does, and no second one begins as one. */
function isSlashed({ left: { answers } }: Pair): boolean {
  const texts = answers.map(({ text }) => text);
  if (texts.length < 2 || answers.some(({ parts, picture }) => parts.length > 1 || picture)) return false;
  if (texts.some((text, i) => stop.test(text) !== (i === texts.length - 1))) return false;
  const [first = "", ...others] = texts.map((text) => /\p{L}/u.exec(text)?.[0] ?? "");
  // Without capitals two may be anything.
  return /\p{Lo}/u.test(first)
    ? others.length > 1
    : /\p{Lu}/u.test(first) && others.some((letter) => /\p{Ll}/u.test(letter));
}
