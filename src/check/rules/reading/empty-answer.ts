import { problemRule } from "./problem-rule";

export const emptyAnswer = problemRule({
  code: "empty-answer",
  severity: "error",
  hides: true,
  title: "A side of a pair without anything on it",
  why: "Each side of ` = `, and each answer beside ` / `, needs a word or a picture. An item with an empty side is not used. Words in angle brackets are HTML to Markdown, of which nothing is printed: a backslash before the bracket keeps them.",
  example: { wrong: "## Counting\n\n- dos = two / <!-- by: K7 -->", right: "## Counting\n\n- dos = two" },
});
