import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const nestedNumber = problemRule({
  code: "nested-number",
  severity: "warning",
  hides: true,
  title: "Numbers under an item",
  why: "Only bullets under an item are read: an example under a pair, a correction under a statement, what happens in any order under an event. Numbered items there are a note.",
  example: {
    wrong: inFood("", "\n1. Ela pede:\n   1. pão\n   2. mel\n"),
    right: inFood("", "\n1. Ela pede:\n   - pão\n   - mel\n"),
  },
});
