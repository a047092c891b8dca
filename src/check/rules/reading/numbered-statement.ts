import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const numberedStatement = problemRule({
  code: "numbered-statement",
  severity: "warning",
  hides: true,
  title: "A statement behind a number",
  why: "Numbered items are the events of a story, in their order; `[x]` and `[ ]` mean nothing in them and are printed. Statements stand behind hyphens.",
  example: { wrong: inFood("", "\n1. [x] Ela come.\n"), right: inFood("", "\n- [x] Ela come.\n") },
});
