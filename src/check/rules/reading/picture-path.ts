import { tiles } from "./food-example";
import { problemRule } from "./problem-rule";

export const picturePath = problemRule({
  code: "picture-path",
  severity: "error",
  title: "A picture that is none: a space in or before its path, or no exclamation mark",
  why: "Markdown reads `![a spoon](my spoon.png)` as text. Nor may a space stand before the round brackets, nor the path in square ones. Without the exclamation mark it is a link, of which the words are printed. In angle brackets, `![a spoon](<my spoon.png>)`, the path may have spaces.",
  example: {
    wrong: `## Table\n\n- ![a spoon](my spoon.png) = a colher\n${tiles}`,
    right: `## Table\n\n- a spoon = a colher\n${tiles}`,
  },
});
