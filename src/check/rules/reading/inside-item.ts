import { inFood, pairs } from "./food-example";
import { problemRule } from "./problem-rule";

export const insideItem = problemRule({
  code: "inside-item",
  severity: "error",
  hides: true,
  title: "An activity, a heading or a table inside an item",
  why: "What is indented below an item belongs to that item. An activity, a heading or a table there is not read; each begins at the beginning of its line.",
  example: {
    wrong: `## Food\n\n${pairs}\n  \`\`\`activity\n  make: tiles\n  \`\`\``,
    right: inFood(""),
  },
});
