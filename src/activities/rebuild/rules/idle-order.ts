import type { Report, Rule } from "../../../base/finding";
import { dropLines } from "../../edits";
import { visibleOrders } from "../proof";
import type { RebuildContext } from "./context";

export const idleOrder: Rule<RebuildContext> = {
  code: "idle-order",
  severity: "hint",
  title: "An accepted order that changes nothing",
  why: "On the table this order reads like the sentence, or like another accepted order: only cards with the same text change places. But its line makes the cards hide capitals and punctuation. Take it out.",
  example: {
    wrong:
      "## Ordering\n\n- quanto | mais | melhor | mais = the more the better\n  - quanto | mais | melhor | mais\n\n```activity\nmake: rebuild\n```",
    right: "## Ordering\n\n- quanto | mais | melhor | mais = the more the better\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => {
    const [deal] = dealt.deals;
    return dealt.sentences.flatMap((sentence, index): Report[] => {
      const visible = new Set<unknown>(visibleOrders(sentence, deal?.cards[index] ?? []));
      return sentence.pair.orders.flatMap((order, i): Report[] =>
        visible.has(sentence.orders[i + 1])
          ? []
          : [
              {
                range: order.range,
                message: "This order reads like one that is accepted already.",
                fixes: [
                  {
                    title: "Take this order out",
                    edits: [dropLines(dealt.request.unit.text, order.range)],
                    preferred: true,
                  },
                ],
              },
            ],
      );
    });
  },
};
