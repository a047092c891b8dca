import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const nestedItem = problemRule({
  code: "nested-item",
  severity: "warning",
  hides: true,
  title: "A pair or statement under another item",
  why: "What is nested under a pair is an example sentence, and under a statement its correction; a separator or mark in it is text. Under a note nothing is read. If it is an item of its own, it must not be indented.",
  example: { wrong: inFood("- ovo = egg\n  - uva = grape"), right: inFood("- ovo = egg\n- uva = grape") },
});
