import type { Rule } from "../../../base/finding";
import type { SortContext } from "./context";
import { activity, articles } from "./example";

export const repeatedCard: Rule<SortContext> = {
  code: "repeated-card",
  severity: "warning",
  title: "An item that stands twice under one heading",
  why: "It would give two cards that are alike. Only one of them is made.",
  example: { wrong: `${articles}- conta${activity()}`, right: `${articles}${activity()}` },
  check: ({ dealt }) =>
    (dealt.deals.length > 0 ? dealt.repeated : []).map(({ range, text, item, first }) => ({
      range,
      message: `“${text}” stands twice in this pile; one card is made.`,
      related: [{ range: first, message: "Here it stands first" }],
      fixes: [{ title: "Take this one out", edits: [{ range: item.block, text: "" }], preferred: true }],
    })),
};
