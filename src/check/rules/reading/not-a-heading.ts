import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notAHeading = problemRule({
  code: "not-a-heading",
  severity: "warning",
  title: "A line that is nearly a heading",
  why: "A heading needs an ordinary space behind its number signs. Without it the line is text, and what follows belongs to the section before. Nor is a bold line a heading, or a word with a colon above bullets: it names no pile. A heading without a text has no name.",
  example: { wrong: inFood("", "\n##Drinks\n"), right: inFood("", "\n") },
});
