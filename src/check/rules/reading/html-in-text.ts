import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const htmlInText = problemRule({
  code: "html-in-text",
  severity: "warning",
  title: "HTML in a text",
  why: "Words in angle brackets are HTML to Markdown, and nothing of it is printed: “an <old> egg” becomes “an egg”. A backslash before the bracket keeps the words; underlining, small letters and line breaks are not to be had on pieces.",
  example: { wrong: inFood("- ovo = an <old> egg"), right: inFood("- ovo = an \\\\<old> egg") },
});
