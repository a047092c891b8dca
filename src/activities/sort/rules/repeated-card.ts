import type { Rule } from "../../../base/finding";
import { type Item, isPair } from "../../../unit/unit";
import type { SortContext } from "./context";
import { activity, articles } from "./example";

export const repeatedCard: Rule<SortContext> = {
  code: "repeated-card",
  severity: "warning",
  title: "An item that stands twice",
  why: "Under one heading it would give two cards that are alike, as would a pair among those that are right or wrong. Only one of them is made.",
  example: { wrong: `${articles}- conta${activity()}`, right: `${articles}${activity()}` },
  check: ({ dealt }) =>
    (dealt.deals.length > 0 ? dealt.repeated : []).map(({ range, text, item, first }) => ({
      range,
      message: `“${text}” stands twice ${dealt.by === "headings" ? "in this pile" : "here"}; one card is made.`,
      related: [{ range: first, message: "Here it stands first" }],
      fixes: [
        {
          title: "Take this one out",
          edits: [{ range: item.block, text: "" }],
          ...(saysNoMore(dealt, item) ? { preferred: true } : {}),
        },
      ],
    })),
};

/** Whether an item says nothing that its card does not show: of a pair the other side and further answers may be of use elsewhere. */
function saysNoMore({ by, options }: SortContext["dealt"], item: Item): boolean {
  if (!isPair(item)) return true;
  const whole = by === "truth" || options.show === "both";
  return whole && item.left.answers.length === 1 && item.right.answers.length === 1;
}
