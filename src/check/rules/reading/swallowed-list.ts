import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const swallowedList = problemRule({
  code: "swallowed-list",
  severity: "warning",
  hides: true,
  title: "A list that belongs to the text above it",
  why: "A numbered line that does not begin with 1 goes on the paragraph above it, and a block of HTML takes the lines below it along. A blank line between them makes it an item.",
  example: { wrong: inFood("", "\nThen:\n2. Ela paga.\n"), right: inFood("", "\nThen:\n\n2. Ela paga.\n") },
});
