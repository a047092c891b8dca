import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const openComment = problemRule({
  code: "open-comment",
  severity: "warning",
  title: "A comment without an end in an item",
  why: "A comment ends with `-->`. Without it the comment is text and is printed.",
  example: { wrong: inFood("- ovo = egg <!-- by: K7"), right: inFood("- ovo = egg <!-- by: K7 -->") },
});
