import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const unreadText = problemRule({
  code: "unread-text",
  severity: "warning",
  title: "A paragraph or a quotation under an item",
  why: "Of what stands below an item only bullets are read: an example under a pair, the correction under a false statement, what happens in any order under an event. A second paragraph or a quotation there is on no piece and in no key.",
  example: {
    wrong: inFood("", "\n1. Ela paga.\n\n   Depois sorri.\n"),
    right: inFood("", "\n1. Ela paga. Depois sorri.\n"),
  },
});
