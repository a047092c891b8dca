import type { Fix, Rule } from "../../../base/finding";
import type { Pair } from "../../../unit/unit";
import { type RebuildContext, shortened } from "./context";
import { cutAtSlashes } from "./cut-at-slashes";
import { lacksBars } from "./lacks-bars";

export const onePartSentence: Rule<RebuildContext> = {
  code: "one-part-sentence",
  severity: "warning",
  title: "A sentence of one part",
  why: "A left side of one word, or with a picture and no words, makes one card: there is nothing to rebuild, and it is left out. Keep single words in a section of their own.",
  example: {
    wrong:
      "## Ordering\n\n- Queria um disco. = I'd like a record.\n- Obrigado! = Thank you!\n\n```activity\nmake: rebuild\n```",
    right:
      "## Ordering\n\n- Queria um disco. = I'd like a record.\n- Muito obrigado! = Thank you!\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => {
    if (dealt.sentences.length === 0) return [];
    return dealt.whole
      .filter((pair) => !lacksBars(pair))
      .map((pair) => ({
        range: pair.left.answers[0].range,
        message: `“${shortened(pair.left.answers[0].text)}” is one card only: nothing to rebuild. It is left out.`,
        fixes: [...cutFixes(pair), { title: "Take it out", edits: [{ range: pair.block, text: "" }] }],
      }));
  },
};

/** `Onde / guardas / a chave?`: three answers of one sentence are rarer than bars that became slashes. */
function cutFixes({ left }: Pair): Fix[] {
  const parts = left.answers.map(({ text, picture }) => (picture ? "" : text));
  if (parts.length < 3 || parts.some((text) => text === "")) return [];
  return cutAtSlashes(left);
}
