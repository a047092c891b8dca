import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const starInWord = problemRule({
  code: "star-in-word",
  severity: "warning",
  title: "Two stars within words",
  why: "Markdown takes two stars for the signs of italics, also within words: in “Lehrer*in, Schüler*in” both are gone, and what stands between them is italic. A backslash before each keeps it.",
  example: {
    wrong: inFood("- Lehrer*in, Schüler*in = teacher, pupil"),
    right: inFood("- Lehrer\\\\*in, Schüler\\\\*in = teacher, pupil"),
  },
});
