import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const meantAsStatement = problemRule({
  code: "meant-as-statement",
  severity: "warning",
  hides: true,
  title: "An item that is nearly a statement",
  why: "A statement begins with `[x]` or `[ ]` and a space. Without the space, with another sign or letter, a word, other brackets or spaces inside it is read as a note.",
  example: { wrong: inFood("- [x]Ela come."), right: inFood("- [x] Ela come.") },
});
