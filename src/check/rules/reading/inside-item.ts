import { inFood, pairs } from "./food-example";
import { problemRule } from "./problem-rule";

export const insideItem = problemRule({
  code: "inside-item",
  severity: "error",
  title: "An activity or a heading inside an item",
  why: "What is indented below an item belongs to that item. An activity or a heading there is not read; it begins at the beginning of its line.",
  example: {
    wrong: `## Food\n\n${pairs}\n  \`\`\`activity\n  make: tiles\n  \`\`\``,
    right: inFood(""),
  },
});
