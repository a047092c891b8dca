import type { Rule } from "../../../base/finding";
import { type RebuildContext, shortened } from "./context";
import { cutsOf } from "./cut-at-slashes";
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
        fixes: [
          ...cutsOf([pair], "Cut it at the slashes"),
          { title: "Take it out", edits: [{ range: pair.block, text: "" }] },
        ],
      }));
  },
};
