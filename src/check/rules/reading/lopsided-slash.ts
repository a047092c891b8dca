import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const lopsidedSlash = problemRule({
  code: "lopsided-slash",
  severity: "warning",
  title:
    "A slash with white space on one side, or on none between words with their articles, two slashes, or a lost backslash",
  why: "Accepted answers are parted by one slash with white space on both sides. Where it has less, or where two slashes stand, they are printed, and both answers are one. A backslash that stands right before no sign is printed too.",
  example: { wrong: inFood("- ovo = egg/ eggs"), right: inFood("- ovo = egg / eggs") },
});
