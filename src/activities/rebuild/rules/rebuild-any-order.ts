import type { Report, Rule } from "../../../base/finding";
import { visibleOrders } from "../proof";
import { type RebuildContext, shortened } from "./context";
import { freeSentences, sparing } from "./troubles";

export const rebuildAnyOrder: Rule<RebuildContext> = {
  code: "rebuild-any-order",
  severity: "warning",
  title: "A sentence of which every order is right",
  why: "Where all cards of a sentence are the same, or each of their orders is accepted, the cards cannot be dealt in a wrong order: there is nothing to find out.",
  example: {
    wrong:
      "## Ordering\n\n- um | café = a coffee\n  - café | um\n- Ela come pão. = She eats bread.\n\n```activity\nmake: rebuild\n```",
    right:
      "## Ordering\n\n- um | café = a coffee\n- Ela come pão. = She eats bread.\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) =>
    [...freeSentences(dealt)].flatMap(([index, deal]): Report[] => {
      const sentence = dealt.sentences[index];
      if (!sentence) return [];
      const count = visibleOrders(sentence, deal.cards[index] ?? []).length;
      const why = count === 1 ? "its cards are all the same" : `all ${count} orders of its cards are accepted`;
      const { range, text } = sentence.pair.left.answers[0];
      return [
        {
          range,
          message: `No order of “${shortened(text)}” is wrong: ${why}.`,
          related: sentence.pair.orders.map((order) => ({ range: order.range, message: "Accepted as well" })),
          fixes: () =>
            sparing(dealt, sentence.pair, {
              title: "Take it out",
              edits: [{ range: sentence.pair.block, text: "" }],
            }),
        },
      ];
    }),
};
